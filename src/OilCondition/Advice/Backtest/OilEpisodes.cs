namespace OilCondition;

/// <summary>What came: the readings of a machine, cut where its oil was changed or treated.</summary>
internal sealed class OilEpisodes
{
    private readonly OilHistory known;
    private readonly ChargeRecords records;
    private readonly IReadOnlyList<DateTimeOffset> changes;
    private readonly List<TreatmentRun> runs;

    public OilEpisodes(OilHistory known, DateTimeOffset to)
    {
        this.known = known;
        records = new ChargeRecords(known, to);
        changes = OilCharge.Starts(known.Events);
        runs = [.. known.Events.OfType<TreatmentRun>()];
    }

    /// <summary>
    /// All readings of a measurand in order of time: of samples that are not suspect, and of sensors. By whichever method: a reading beyond a limit
    /// was one, even where the trend later went on with another method.
    /// </summary>
    public IReadOnlyList<SeriesPoint> Readings(Measurand measurand) =>
        [
            .. known
                .Samples.Where(sample => !known.IsSuspect(sample) && sample.Readings.ContainsKey(measurand))
                .Select(sample => new SeriesPoint(sample.Origin, sample.Readings[measurand]))
                .Concat(records.SensorReadings(measurand, DateTimeOffset.MinValue))
                .OrderBy(point => point.At),
        ];

    /// <summary>
    /// Which stretch between oil changes and treatments a moment belongs to; null while a treatment of this measurand runs. A sample at the start of
    /// a treatment shows what it met, one at its end what it left.
    /// </summary>
    public (int Changes, int Treatments)? StretchAt(Measurand measurand, DateTimeOffset at)
    {
        var before = changes.Count(change => change <= at);
        var since = before == 0 ? DateTimeOffset.MinValue : changes[before - 1];
        var ofThisCharge = runs.Where(run =>
                run.At >= since && run.At <= at && ChargeRecords.AffectedBy(run, measurand)
            )
            .ToList();
        return ofThisCharge.Exists(run => run.At < at && run.IsUnderWay(at))
            ? null
            : (before, ofThisCharge.Count(run => run.EndedAt <= at));
    }

    /// <summary>When the oil was next changed, or treated for this measurand, from a day on; null when that never came.</summary>
    public DateTimeOffset? ActedOnAfter(Measurand measurand, DateTimeOffset day)
    {
        if (StretchAt(measurand, day) is null)
        {
            return day;
        }

        var acts = changes
            .Where(change => change > day)
            .Concat(runs.Where(run => run.At >= day && ChargeRecords.AffectedBy(run, measurand)).Select(run => run.At))
            .ToList();
        return acts.Count == 0 ? null : acts.Min();
    }
}
