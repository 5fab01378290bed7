using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>A part of the target with its readings, its curve and its hold.</summary>
internal sealed class RunPart
{
    /// <summary>What a reading is good to where no curve tells its scatter: between laboratories (common practice, no source).</summary>
    private const double UnknownScatter = 0.1;

    /// <summary>Coverage factor with it, about 95 %.</summary>
    private const double UnknownCoverage = 2;

    private readonly IReadOnlyList<DateTimeOffset> moments;
    private readonly IReadOnlyList<double> values;
    private readonly bool isLogarithmic;
    private readonly CleanupStatus status;

    /// <param name="measurand">What is followed.</param>
    /// <param name="curve">Its curve.</param>
    /// <param name="target">What is to be reached, in the unit of the curve.</param>
    /// <param name="hold">Whether it holds.</param>
    /// <param name="moments">When the readings were taken that were given to the curve.</param>
    /// <param name="readings">These readings.</param>
    /// <param name="celsius">Oil temperature of each of them, where it was read.</param>
    /// <param name="status">The run.</param>
    public RunPart(
        Measurand measurand,
        CleanupCurve curve,
        double target,
        HoldCourse hold,
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<Reading> readings,
        IReadOnlyList<double?> celsius,
        CleanupStatus status
    )
    {
        Measurand = measurand;
        Curve = curve;
        Target = target;
        Hold = hold;
        this.status = status;
        this.moments = [.. curve.UsedReadings.Select(i => moments[i])];
        values = [.. curve.UsedReadings.Select(i => readings[i].Value)];
        isLogarithmic = curve.Options.Noise is DecayNoise.Logarithmic or DecayNoise.Proportional;
        Look = new StallLook(measurand, curve, target, moments, readings, celsius, status);
        IsMet = hold.IsMet && IsShown(hold.HeldFrom, status.AsOf, isNow: true);
        ReboundAt =
            hold.ReboundAt is { } lost && hold.LostFrom is { } from && IsShown(from, lost, isNow: false) ? lost : null;
    }

    public Measurand Measurand { get; }

    public CleanupCurve Curve { get; }

    public double Target { get; }

    public HoldCourse Hold { get; }

    /// <summary>Whether it has held for long enough, and the readings show that it is there: a lucky run of readings does not.</summary>
    public bool IsMet { get; }

    /// <summary>When it was lost after it had been met; null where it was not.</summary>
    public DateTimeOffset? ReboundAt { get; }

    /// <summary>Whether it stalls, and what shows that.</summary>
    public StallLook Look { get; }

    /// <summary>Median time between the readings of the curve, in hours; 0 with fewer than two.</summary>
    public double UsualGapHours
    {
        get
        {
            double[] gaps =
            [
                .. moments
                    .Skip(1)
                    .Select((at, i) => (at - moments[i]).TotalHours)
                    .Where(gap => gap > 0)
                    .OrderBy(gap => gap),
            ];
            return gaps.Length == 0 ? 0 : gaps[gaps.Length / 2];
        }
    }

    /// <summary>Standard deviation of a reading where the curve stands at a value.</summary>
    public double ScatterAt(double value) => Curve.ScatterAt(value);

    public bool IsStalled => Look.Sign != StallSign.None;

    /// <summary>What two samples, or a sample and the mean of some, can differ by.</summary>
    public static double ApartFor(double one, double other, int count = 1) =>
        UnknownCoverage * UnknownScatter * Math.Sqrt(one * one + other * other / count);

    /// <summary>Whether the content is at the target or below for certain, however often the run is looked at.</summary>
    /// <remarks>
    /// The curve at the last reading, or the mean of the readings of a hold, lies below by <see cref="SequentialLevel"/> standard errors; without a curve by
    /// two, with a tenth of the target as the scatter of a reading.
    /// </remarks>
    private bool IsShown(DateTimeOffset from, DateTimeOffset until, bool isNow)
    {
        double Scaled(double value) => isLogarithmic ? Math.Log(Math.Max(1e-12, value)) : value;
        if (isNow && SequentialLevel.ShowsBelow(Curve, Target, status.Confidence))
        {
            return true;
        }

        double[] held =
        [
            .. Enumerable
                .Range(0, moments.Count)
                .Where(i => moments[i] >= from && (isNow || moments[i] < until))
                .Select(i => Scaled(values[i])),
        ];
        if (held.Length == 0)
        {
            // What holds is another source, or lies in an initial phase: its own readings are all that there is.
            return true;
        }

        var mean = held.Average();
        var scatter =
            Curve.HasCurve && isLogarithmic ? ScatterAt(Math.Max(1e-12, Target)) / Math.Max(1e-12, Target)
            : Curve.HasCurve ? ScatterAt(Target)
            : isLogarithmic ? UnknownScatter
            : UnknownScatter * Target;
        var cover = Curve.HasCurve ? SequentialLevel.Z(status.Confidence, Curve.Count) : UnknownCoverage;
        return mean + cover * scatter / Math.Sqrt(held.Length) <= Scaled(Target);
    }
}
