using OilCondition.Statistics;

namespace OilCondition.Cleanup;

/// <summary>A part of the target with its readings, its curve and its hold.</summary>
internal sealed class RunPart
{
    /// <summary>Readings without which nothing is said about a run without a fall (ours).</summary>
    public const int FewestReadings = 6;

    private const double FallOver = 0.1;
    private const double NoFallBelow = 0.5;

    private readonly IReadOnlyList<DateTimeOffset> moments;
    private readonly IReadOnlyList<double> values;
    private readonly bool isCensored;
    private readonly bool isLogarithmic;

    /// <param name="measurand">What is followed.</param>
    /// <param name="curve">Its curve.</param>
    /// <param name="target">What is to be reached, in the unit of the curve.</param>
    /// <param name="hold">Whether it holds.</param>
    /// <param name="moments">When the readings were taken that were given to the curve.</param>
    /// <param name="readings">These readings.</param>
    /// <param name="status">The run.</param>
    public RunPart(
        Measurand measurand,
        CleanupCurve curve,
        double target,
        HoldCourse hold,
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<Reading> readings,
        CleanupStatus status
    )
    {
        Measurand = measurand;
        Curve = curve;
        Target = target;
        Hold = hold;
        this.moments = [.. curve.UsedReadings.Select(i => moments[i])];
        Reading[] used = [.. curve.UsedReadings.Select(i => readings[i])];
        values = [.. used.Select(one => one.Value)];
        isCensored = used.Any(one => one.IsCensored);
        isLogarithmic = curve.Options.Noise is DecayNoise.Logarithmic or DecayNoise.Proportional;
        Sign = SignOf(status.Options.StallAfter.TotalHours, status.AsOf, status.Confidence, out var evidence);
        StallEvidence = evidence;
    }

    public Measurand Measurand { get; }

    public CleanupCurve Curve { get; }

    public double Target { get; }

    public HoldCourse Hold { get; }

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

    /// <summary>How it shows that it stalls.</summary>
    public StallSign Sign { get; }

    public bool IsStalled => Sign != StallSign.None;

    /// <summary>The figures that say so.</summary>
    public IReadOnlyList<EvidenceItem> StallEvidence { get; }

    private StallSign SignOf(
        double stallAfterHours,
        DateTimeOffset asOf,
        double confidence,
        out IReadOnlyList<EvidenceItem> evidence
    )
    {
        evidence = [];
        if (!Curve.HasCurve)
        {
            return StallSign.None;
        }

        var lowest = Curve.Fall.FloorInterval(0.5 + confidence / 2, IntervalSide.Lower);
        if (
            lowest.Lower is { } floor
            && floor > Target
            && Curve.ValueAt(asOf) - Curve.Floor <= FallOver * Math.Max(0, Curve.Start - Curve.Floor)
        )
        {
            evidence =
            [
                EvidenceItem.Number("target", Target, Unit),
                EvidenceItem.Number("observed level", Curve.Floor, Unit),
                EvidenceItem.Number("lower end of the level", floor, Unit),
            ];
            return StallSign.LevelsOff;
        }

        return ShowsNoFall(stallAfterHours, confidence, out evidence) ? StallSign.ShowsNoFall : StallSign.None;
    }

    /// <summary>
    /// A line through the readings, of the logarithm of counts. Not only 'no fall is shown', which few or poor readings always say, but also
    /// 'half of the way to the target is excluded'.
    /// </summary>
    private bool ShowsNoFall(double stallAfterHours, double confidence, out IReadOnlyList<EvidenceItem> evidence)
    {
        evidence = [];
        var hours = moments.Count == 0 ? 0 : (moments[moments.Count - 1] - moments[0]).TotalHours;
        if (
            isCensored
            || moments.Count < FewestReadings
            || hours < stallAfterHours
            || (isLogarithmic && (Target <= 0 || values.Any(value => value <= 0)))
        )
        {
            return false;
        }

        double Scaled(double value) => isLogarithmic ? Math.Log(value) : value;
        double[] at = [.. moments.Select(moment => (moment - moments[0]).TotalHours)];
        var line = StraightLine.Fit(at, values.Select(Scaled).ToArray());
        var slope = line.SlopeInterval(confidence);
        var missing = line.ValueAt(0) - Scaled(Target);
        var most = -slope.Lower!.Value * hours;
        if (missing <= 0 || most >= NoFallBelow * missing || -slope.Upper * hours > FallOver * missing)
        {
            return false;
        }

        double Fall(double scaled) => isLogarithmic ? 100 * (1 - Math.Exp(-scaled)) : scaled;
        var unit = isLogarithmic ? "%" : Unit;
        evidence =
        [
            EvidenceItem.Number("target", Target, Unit),
            EvidenceItem.Number("readings without a fall", moments.Count, ""),
            EvidenceItem.Number("over", hours, "h"),
            EvidenceItem.Number("mean", isLogarithmic ? Math.Exp(line.MeanValue) : line.MeanValue, Unit),
            EvidenceItem.Number("fall by a straight line", Fall(-line.Slope * hours), unit),
            EvidenceItem.Number("upper end of the fall", Fall(most), unit),
        ];
        return true;
    }

    private string Unit => Measurand.Unit;
}
