namespace OilCondition;

/// <summary>The records of the charge that is in the machine, up to now.</summary>
internal sealed class ChargeRecords
{
    private readonly OilSample[] samples;
    private MeasurandSeries? latest;

    public ChargeRecords(OilHistory history, DateTimeOffset asOf)
    {
        History = history;
        AsOf = asOf;
        Charge = history.ChargeAt(asOf);
        foreach (var sample in history.Samples)
        {
            // Of two at one moment the first says in which zone it is told.
            if (sample.TakenAt > LatestSampleAt && sample.TakenAt <= asOf)
            {
                LatestSampleAt = sample.TakenAt;
            }
        }

        samples = history.SamplesIn(Charge.Since, asOf);
        Runs = history.Events.OfType<TreatmentRun>().Where(run => run.At >= Charge.Since && run.At <= AsOf).ToArray();
        RunUnderWay = Runs.LastOrDefault(run => run.IsUnderWay(AsOf));
    }

    public OilHistory History { get; }

    /// <summary>The latest sample of the charge that is not suspect and is as asked; null where none is.</summary>
    public OilSample? Latest(Predicate<OilSample> isAsked) =>
        Array.FindLast(samples, one => isAsked(one) && !History.IsSuspect(one));

    public DateTimeOffset AsOf { get; }

    public OilCharge Charge { get; }

    public IReadOnlyList<TreatmentRun> Runs { get; }

    /// <summary>When the latest sample was taken, suspect or not.</summary>
    public DateTimeOffset LatestSampleAt { get; }

    /// <summary>The treatment that is under way; the latest when several are.</summary>
    public TreatmentRun? RunUnderWay { get; }

    public bool IsBeingTreated(Measurand measurand) => AffectedBy(RunUnderWay, measurand);

    /// <summary>
    /// Laboratory readings since the oil change, or since the last finished treatment that changed this measurand, with top-ups corrected.
    /// </summary>
    public TopUpCorrection Trend(Measurand measurand) =>
        TopUpCorrection.Of(Samples(measurand, TrendStart(measurand)), History, AsOf);

    /// <summary>The laboratory readings of the charge and, where it is later, the latest sensor reading: what is compared with the limits.</summary>
    public MeasurandSeries Readings(Measurand measurand)
    {
        var read = Samples(measurand, Charge.Since);
        if (History.SensorReadings.Count == 0)
        {
            return read;
        }

        return
            SensorReadings(measurand, Charge.Since).LastOrDefault() is { } sensor
            && (read.Sources is not [.., var last] || sensor.At > last.Origin.At)
            ? read.WithPoints([.. read.Sources, sensor])
            : read;
    }

    /// <summary>What limits and trends rest on is the same series, unless a treatment lies between.</summary>
    private MeasurandSeries Samples(Measurand measurand, DateTimeOffset since) =>
        latest is not null && latest.Measurand.Equals(measurand) && latest.Origin == since ? latest
        : since == Charge.Since ? latest = History.SeriesOf(measurand, since, samples)
        : latest = History.SampleSeries(measurand, since, AsOf);

    /// <summary>The last finished treatment that had a target for a measurand; null when there was none.</summary>
    public TreatmentRun? LastFinishedRun(Measurand measurand)
    {
        TreatmentRun? last = null;
        foreach (var run in Runs)
        {
            last = run.EndedAt <= AsOf && run.Measurand.Equals(measurand) ? run : last;
        }

        return last;
    }

    /// <summary>Whether a finished treatment changed a measurand.</summary>
    public bool WasTreated(Measurand measurand) => Runs.Any(run => run.EndedAt <= AsOf && AffectedBy(run, measurand));

    public bool FollowsTreatment(Measurand measurand) => TrendStart(measurand) > Charge.Since;

    /// <summary>The latest reading of a measurand: of a sample that is not suspect, or of a sensor.</summary>
    public SeriesPoint? Latest(Measurand measurand) =>
        Readings(measurand).Sources is [.., var last] ? last.PointOf(measurand) : null;

    /// <summary>Sensor readings of a measurand from a moment on.</summary>
    public IEnumerable<SeriesPoint> SensorReadings(Measurand measurand, DateTimeOffset from) =>
        SensorPoints.Of(History, measurand, from, AsOf);

    private DateTimeOffset TrendStart(Measurand measurand)
    {
        var start = Charge.Since;
        foreach (var run in Runs)
        {
            if (run.EndedAt is { } end && end > start && end <= AsOf && AffectedBy(run, measurand))
            {
                start = end;
            }
        }

        return start;
    }

    /// <summary>Whether a treatment changes a measurand: the one it has a target for, and what tells of the same water or the same particles.</summary>
    public static bool AffectedBy(TreatmentRun? run, Measurand measurand) =>
        run is not null
        && (
            run.Measurand.Equals(measurand)
            || (
                run.Measurand.Topic == measurand.Topic
                && measurand.Topic is MeasurandTopic.Water or MeasurandTopic.Particles
            )
        );
}
