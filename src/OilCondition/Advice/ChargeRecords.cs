using OilCondition.Text;
using UnitsNet;

namespace OilCondition;

/// <summary>The records of the charge that is in the machine, up to now.</summary>
internal sealed class ChargeRecords
{
    /// <summary>
    /// A moisture sensor within half a percent of saturation may sit in free water: it then only says 'at least'.
    /// (Common practice, no source; capacitive sensors in oil are good to 0.02 to 0.03.)
    /// </summary>
    private const double SaturatedPercent = 100 * (1 - PhysicalRange.RelativeSaturationGrace);

    public ChargeRecords(OilHistory history, DateTimeOffset asOf)
    {
        History = history;
        AsOf = asOf;
        Charge = history.ChargeAt(asOf);
        Runs = [.. history.Events.OfType<TreatmentRun>().Where(run => run.At >= Charge.Since && run.At <= asOf)];
    }

    public OilHistory History { get; }

    public DateTimeOffset AsOf { get; }

    public OilCharge Charge { get; }

    public IReadOnlyList<TreatmentRun> Runs { get; }

    /// <summary>When the latest sample was taken, suspect or not.</summary>
    public DateTimeOffset LatestSampleAt =>
        History.Samples.Where(sample => sample.TakenAt <= AsOf).Select(sample => sample.TakenAt).DefaultIfEmpty().Max();

    /// <summary>The treatment that is under way; the latest when several are.</summary>
    public TreatmentRun? RunUnderWay => Runs.LastOrDefault(run => run.IsUnderWay(AsOf));

    public bool IsBeingTreated(Measurand measurand) => AffectedBy(RunUnderWay, measurand);

    /// <summary>
    /// Laboratory readings since the oil change, or since the last finished treatment that changed this measurand, with top-ups corrected.
    /// </summary>
    public TopUpCorrection Trend(Measurand measurand) =>
        TopUpCorrection.Of(History.SampleSeries(measurand, TrendStart(measurand), AsOf), History, AsOf);

    /// <summary>The laboratory readings of the charge and, where it is later, the latest sensor reading: what is compared with the limits.</summary>
    public MeasurandSeries Readings(Measurand measurand)
    {
        var samples = History.SampleSeries(measurand, Charge.Since, AsOf);
        return
            SensorPoints(measurand, Charge.Since).LastOrDefault() is { } sensor
            && (samples.Points.Count == 0 || sensor.At > samples.Points[samples.Points.Count - 1].At)
            ? samples.WithPoints([.. samples.Points, sensor])
            : samples;
    }

    /// <summary>The last finished treatment that had a target for a measurand; null when there was none.</summary>
    public TreatmentRun? LastFinishedRun(Measurand measurand) =>
        Runs.LastOrDefault(run => run.EndedAt <= AsOf && run.Measurand.Equals(measurand));

    /// <summary>Whether a finished treatment changed a measurand.</summary>
    public bool WasTreated(Measurand measurand) => Runs.Any(run => run.EndedAt <= AsOf && AffectedBy(run, measurand));

    public bool FollowsTreatment(Measurand measurand) => TrendStart(measurand) > Charge.Since;

    /// <summary>The latest reading of a measurand: of a sample that is not suspect, or of a sensor.</summary>
    public SeriesPoint? Latest(Measurand measurand)
    {
        var points = Readings(measurand).Points;
        return points.Count > 0 ? points[points.Count - 1] : null;
    }

    /// <summary>
    /// Sensor readings of a measurand from a moment on. Water content comes from relative saturation and temperature by the oil's
    /// curve; at saturation it is a lower bound, because a sensor sees dissolved water only.
    /// </summary>
    public IEnumerable<SeriesPoint> SensorPoints(Measurand measurand, DateTimeOffset from)
    {
        var rows = History.SensorReadings.Where(row => row.At >= from && row.At <= AsOf);
        return measurand.Equals(Measurands.WaterContent)
            ? rows.Select(WaterContent).OfType<SeriesPoint>()
            : rows.Where(row => row.Readings.ContainsKey(measurand))
                .Select(row => new SeriesPoint(row.At, row.Readings[measurand], ""));
    }

    private SeriesPoint? WaterContent(SensorReading row)
    {
        if (row.Readings.TryGetValue(Measurands.WaterContent, out var content))
        {
            return new SeriesPoint(row.At, content, "");
        }

        if (
            History.Machine.Oil.SaturationCurve is not { } curve
            || !row.Readings.TryGetValue(Measurands.RelativeSaturation, out var saturation)
            || !row.Readings.TryGetValue(Measurands.OilTemperature, out var temperature)
            || saturation.IsCensored
            || temperature.IsCensored
        )
        {
            return null;
        }

        var dissolved = curve.DissolvedAt(
            Ratio.FromPercent(saturation.Value),
            Temperature.FromDegreesCelsius(temperature.Value)
        );
        var qualifier = saturation.Value >= SaturatedPercent ? Qualifier.GreaterThan : Qualifier.Approximately;
        return new SeriesPoint(row.At, new Reading(dissolved.PartsPerMillion, qualifier), "");
    }

    private DateTimeOffset TrendStart(Measurand measurand) =>
        Runs.Where(run => run.EndedAt is { } end && end <= AsOf && AffectedBy(run, measurand))
            .Select(run => run.EndedAt!.Value)
            .Append(Charge.Since)
            .Max();

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
