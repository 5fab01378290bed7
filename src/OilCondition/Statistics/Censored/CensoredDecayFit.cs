using OilCondition.Guards;

namespace OilCondition.Statistics;

/// <summary>The most likely decay for readings of which some are only known to lie below a limit.</summary>
/// <remarks>
/// Intervals are of the profile likelihood: 2 (ℓ_max − ℓ) ≤ n ln(1 + t²/(n − 3)), which is the least-squares profile of
/// <see cref="ExponentialDecayAnalysis"/> where nothing is below a limit. Standard errors are from the observed information.
/// </remarks>
public sealed class CensoredDecayFit
{
    private readonly CensoredLikelihood? likelihood;
    private readonly CensoredPoint point;
    private readonly double logScaledRate;

    internal CensoredDecayFit(ExponentialDecayStatus status, int count, int aboveCount)
    {
        Status = status;
        Count = count;
        AboveLimitCount = aboveCount;
    }

    internal CensoredDecayFit(CensoredLikelihood likelihood)
    {
        this.likelihood = likelihood;
        point = CensoredLikelihood.Anywhere;
        Count = likelihood.Count;
        AboveLimitCount = likelihood.AboveCount;
        LogLikelihood = likelihood.Maximum(CensoredCondition.None, ref point, out logScaledRate, out var atBound);
        var sigma = 1 / point.InverseScatter;
        StartTime = likelihood.Origin;
        Span = likelihood.Span;
        Floor = likelihood.Centre + likelihood.Unit * point.Floor * sigma;
        Start = Floor + likelihood.Unit * point.Amplitude * sigma;
        Rate = Math.Exp(logScaledRate) / likelihood.Span;
        StandardDeviation = likelihood.Unit * sigma;
        Status =
            logScaledRate < CensoredLikelihood.Bottom + 1e-6 ? ExponentialDecayStatus.StraightLine
            : logScaledRate > likelihood.Top - 1e-6 ? ExponentialDecayStatus.FasterThanSampling
            : point.Amplitude < 0 ? ExponentialDecayStatus.Rising
            : atBound ? ExponentialDecayStatus.AtFloorBound
            : ExponentialDecayStatus.Determined;
        if (
            Status is ExponentialDecayStatus.StraightLine or ExponentialDecayStatus.FasterThanSampling
            || likelihood.Covariance(point, logScaledRate, atBound) is not { } covariance
        )
        {
            return;
        }

        HasStandardErrors = true;
        FloorStandardError = atBound ? 0 : likelihood.Unit * Math.Sqrt(covariance[0, 0]);
        StartStandardError = likelihood.Unit * Math.Sqrt(covariance[1, 1]);
        RateStandardError = Rate * Math.Sqrt(covariance[2, 2]);
    }

    /// <summary>What the fit could tell. With too few readings the numbers below are 0.</summary>
    public ExponentialDecayStatus Status { get; }

    /// <summary>Number of readings, n.</summary>
    public int Count { get; }

    /// <summary>Number of readings above their limit.</summary>
    public int AboveLimitCount { get; }

    /// <summary>Time of the first reading.</summary>
    public double StartTime { get; }

    /// <summary>Time from the first reading to the last.</summary>
    public double Span { get; }

    /// <summary>Value at the start time, c_0.</summary>
    public double Start { get; }

    /// <summary>Value approached, c_inf.</summary>
    public double Floor { get; }

    /// <summary>Rate, k, per unit of time.</summary>
    public double Rate { get; }

    /// <summary>Standard deviation of the scatter, σ: the maximum-likelihood value, without a correction for fitted parts.</summary>
    public double StandardDeviation { get; }

    /// <summary>ln of the largest likelihood, in the unit of the values.</summary>
    public double LogLikelihood { get; }

    /// <summary>Whether the observed information gives standard errors.</summary>
    public bool HasStandardErrors { get; }

    /// <summary>Standard error of the start, or 0.</summary>
    public double StartStandardError { get; }

    /// <summary>Standard error of the floor, or 0.</summary>
    public double FloorStandardError { get; }

    /// <summary>Standard error of the rate, or 0.</summary>
    public double RateStandardError { get; }

    /// <summary>How many time constants the readings span.</summary>
    public double ObservedTimeConstants => Rate * Span;

    /// <summary>The curve at a time.</summary>
    /// <param name="time">Time, in the unit and from the zero of the readings.</param>
    /// <returns>The value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite or more than 200 time constants before the start.</exception>
    public double ValueAt(double time)
    {
        Guard.InRange(time, Rate > 0 ? StartTime - 200 / Rate : double.MinValue, double.MaxValue, "", nameof(time));
        return Floor + (Start - Floor) * Math.Exp(-Rate * (time - StartTime));
    }

    /// <summary>Interval for the rate.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval.</returns>
    public ProfileInterval RateInterval(double confidence, IntervalSide side = IntervalSide.Both)
    {
        if (!TryLimit(confidence, side, out var limit))
        {
            return ProfileInterval.Without(IntervalOutcome.TooFewReadings, confidence, side);
        }

        var none = CensoredCondition.None;
        var found = point;
        double Inside(double u) => likelihood!.AtRate(u, none, ref found, out _, out _) - limit;

        // ln κ from 30 octaves below the slowest rate that differs from a straight line, to the step.
        var bottom = CensoredLikelihood.Bottom - 30 * Math.Log(2);
        var lower = Edge(Inside, logScaledRate, bottom);
        var upper = Edge(Inside, logScaledRate, likelihood!.Top);
        return ProfileInterval.Between(
            lower.HasValue ? Math.Exp(lower.Value) / Span : null,
            upper.HasValue ? Math.Exp(upper.Value) / Span : null,
            confidence,
            side,
            coverageInDoubt: false
        );
    }

    /// <summary>Interval for the floor.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval, never below the lowest floor.</returns>
    public ProfileInterval FloorInterval(double confidence, IntervalSide side = IntervalSide.Both)
    {
        if (!TryLimit(confidence, side, out var limit))
        {
            return ProfileInterval.Without(IntervalOutcome.TooFewReadings, confidence, side);
        }

        double Inside(double floor) => Profile(CensoredCondition.Floor(floor)) - limit;
        var here = point.Floor / point.InverseScatter;
        var bound = likelihood!.LowestFloor;
        var lower = double.IsInfinity(bound) ? Edge(Inside, here, here - 1e4) : Edge(Inside, here, bound) ?? bound;
        var upper = Edge(Inside, here, here + 1e4);
        return ProfileInterval.Between(Unscaled(lower), Unscaled(upper), confidence, side, coverageInDoubt: false);
    }

    /// <summary>When the falling curve reaches a value.</summary>
    /// <param name="target">The value to reach; it may lie below the limit of the readings.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>Estimate and interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The target is not finite.</exception>
    public TimeToValueInterval TimeTo(double target, double confidence, IntervalSide side = IntervalSide.Both)
    {
        Guard.Finite(target, "", nameof(target));
        if (!TryLimit(confidence, side, out var limit))
        {
            return TimeToValueInterval.TooFew(confidence, side);
        }

        var scaled = (target - likelihood!.Centre) / likelihood.Unit;
        var never =
            Floor >= target || scaled < likelihood.LowestFloor || Profile(CensoredCondition.Floor(scaled)) >= limit;
        var reaches = Start > target && target > Floor && Rate > 0;
        var estimate = reaches ? Math.Log((Start - Floor) / (target - Floor)) / Rate / Span : 0;
        double Inside(double time) => Profile(CensoredCondition.At(time, scaled)) - limit;

        // Far beyond the readings the crossing is that of the floor.
        const double Far = 1e3;
        double? first = null;
        double? last = null;
        var already = Start <= target;
        var from = reaches ? estimate : Far;
        if (already || Inside(from) >= 0)
        {
            first = already ? 0 : Edge(Inside, from, 0) ?? 0;
            last = never ? null : Edge(Inside, already ? 0 : from, Far);
        }

        var outcome =
            already ? TimeToValueOutcome.AlreadyReached
            : !first.HasValue ? TimeToValueOutcome.NeverReached
            : never || !last.HasValue ? TimeToValueOutcome.NotDemonstrated
            : TimeToValueOutcome.Reached;
        return new TimeToValueInterval(
            outcome,
            reaches,
            reaches ? StartTime + estimate * Span : 0,
            side == IntervalSide.Upper ? null : StartTime + first * Span,
            side == IntervalSide.Lower ? null : StartTime + last * Span,
            confidence,
            side,
            coverageInDoubt: false
        );
    }

    /// <summary>Where a function that is not negative inside passes zero on the way outside; null if it never does.</summary>
    private static double? Edge(Func<double, double> inside, double from, double to)
    {
        if (inside(to) >= 0)
        {
            return null;
        }

        // Doubling steps first: the outer end may be a thousand times farther than the edge.
        var step = Math.Sign(to - from) * Math.Min(Math.Abs(to - from), 0.05);
        var outside = from + step;
        while (Math.Abs(outside - from) < Math.Abs(to - from) && inside(outside) >= 0)
        {
            from = outside;
            step *= 2;
            outside = from + step;
        }

        outside = Math.Abs(outside - from) < Math.Abs(to - from) ? outside : to;
        for (var i = 0; i < 60 && Math.Abs(outside - from) > 1e-8 * (1 + Math.Abs(from)); i++)
        {
            var middle = (from + outside) / 2;
            if (inside(middle) >= 0)
            {
                from = middle;
            }
            else
            {
                outside = middle;
            }
        }

        return from;
    }

    private double Profile(in CensoredCondition condition)
    {
        var found = point;
        return likelihood!.Maximum(condition, ref found, out _, out _);
    }

    private double? Unscaled(double? value) =>
        value.HasValue ? likelihood!.Centre + likelihood.Unit * value.Value : null;

    private bool TryLimit(double confidence, IntervalSide side, out double limit)
    {
        var degrees = Count - 3;
        var quantile = IntervalLevel.StudentQuantile(confidence, side, degrees);
        limit = LogLikelihood - 0.5 * Count * Math.Log(1 + quantile * quantile / Math.Max(1, degrees));
        return likelihood is not null;
    }
}
