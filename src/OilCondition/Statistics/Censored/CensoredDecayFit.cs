using MathNet.Numerics.LinearAlgebra;
using OilCondition.Guards;

namespace OilCondition.Statistics;

/// <summary>The most likely decay for readings of which some are only known to lie below a limit.</summary>
/// <remarks>
/// Intervals are of the profile likelihood: 2 (ℓ_max − ℓ) ≤ m ln(1 + t²/(m − 3)) with m readings above their limit, which is the least-squares profile of
/// <see cref="ExponentialDecayAnalysis"/> where nothing is below a limit. Standard errors are from the observed information.
/// </remarks>
public sealed class CensoredDecayFit
{
    private readonly CensoredSeries? series;
    private readonly Matrix<double>? covariance;
    private readonly CensoredLikelihood? likelihood;
    private readonly CensoredPoint point;
    private readonly double logScaledRate;

    internal CensoredDecayFit(ExponentialDecayStatus status, DecayNoise noise, int count, int aboveCount)
    {
        Status = status;
        Noise = noise;
        Count = count;
        AboveLimitCount = aboveCount;
    }

    internal CensoredDecayFit(CensoredSeries series, DecayNoise noise)
    {
        this.series = series;
        Noise = noise;
        likelihood = new CensoredLikelihood(series);
        point = CensoredLikelihood.Anywhere;
        Count = series.Count;
        AboveLimitCount = series.AboveCount;
        LogLikelihood = CensoredSearch.Global(series, likelihood, ref point, out logScaledRate, out var atBound);
        if (noise == DecayNoise.Proportional)
        {
            LogLikelihood = CensoredSearch.Proportional(series, likelihood, ref point, ref logScaledRate, out atBound);
        }

        var sigma = 1 / point.InverseScatter;
        StartTime = series.Origin;
        Span = series.Span;
        Floor = series.Centre + series.Unit * point.Floor * sigma;
        Start = Floor + series.Unit * point.Amplitude * sigma;
        Rate = Math.Exp(logScaledRate) / series.Span;
        StandardDeviation = series.Unit * sigma / (noise == DecayNoise.Proportional ? series.Unit : 1);
        ResidualAutocorrelation = Autocorrelation.LagOne(series.Residuals(point, logScaledRate));
        Status =
            logScaledRate < CensoredSeries.Bottom + 1e-6 ? ExponentialDecayStatus.StraightLine
            : logScaledRate > series.Top - 1e-6 ? ExponentialDecayStatus.FasterThanSampling
            : point.Amplitude < 0 ? ExponentialDecayStatus.Rising
            : atBound ? ExponentialDecayStatus.AtFloorBound
            : ExponentialDecayStatus.Determined;
        if (
            Status is ExponentialDecayStatus.StraightLine or ExponentialDecayStatus.FasterThanSampling
            || CensoredInformation.Covariance(series, point, logScaledRate, atBound) is not { } found
        )
        {
            return;
        }

        covariance = found;
        HasStandardErrors = true;
        FloorStandardError = atBound ? 0 : series.Unit * Math.Sqrt(covariance[0, 0]);
        StartStandardError = series.Unit * Math.Sqrt(covariance[1, 1]);
        RateStandardError = Rate * Math.Sqrt(covariance[2, 2]);
    }

    /// <summary>What the fit could tell. With too few readings the numbers below are 0.</summary>
    public ExponentialDecayStatus Status { get; }

    /// <summary>How the scatter was taken to go with the value.</summary>
    public DecayNoise Noise { get; }

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

    /// <summary>
    /// Standard deviation of the scatter, σ, with proportional noise as a fraction of the value: the maximum-likelihood value, without a
    /// correction for fitted parts.
    /// </summary>
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

    /// <summary>
    /// Correlation of each residual with the next in time (lag 1). A reading below its limit counts with the residual expected of it,
    /// −φ(r)/Φ(r), which varies less than its own: with many of them the check sees less.
    /// </summary>
    public double ResidualAutocorrelation { get; }

    /// <summary>Whether that correlation is above 1.645/sqrt(n); every interval then carries a warning.</summary>
    public bool IsAutocorrelated => Autocorrelation.IsDoubtful(ResidualAutocorrelation, likelihood is null ? 0 : Count);

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
        var bottom = CensoredSeries.Bottom - 30 * Math.Log(2);
        var step = HasStandardErrors ? RateStandardError / Rate : 0.1;
        var lower = Edge(Inside, logScaledRate, bottom, step, limit);
        var upper = Edge(Inside, logScaledRate, series!.Top, step, limit);
        return ProfileInterval.Between(
            lower.HasValue ? Math.Exp(lower.Value) / Span : null,
            upper.HasValue ? Math.Exp(upper.Value) / Span : null,
            confidence,
            side,
            IsAutocorrelated
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

        var profile = Profile(CensoredCondition.Floor, limit);
        var here = point.Floor / point.InverseScatter;
        var bound = series!.LowestFloor;
        var step = HasStandardErrors && FloorStandardError > 0 ? FloorStandardError / series.Unit : 0.05;
        var lower = double.IsInfinity(bound)
            ? Edge(profile, here, here - 1e4, step, limit)
            : Edge(profile, here, bound, step, limit) ?? bound;
        var upper = Edge(Profile(CensoredCondition.Floor, limit), here, here + 1e4, step, limit);
        return ProfileInterval.Between(Unscaled(lower), Unscaled(upper), confidence, side, IsAutocorrelated);
    }

    /// <summary>Interval for the curve at a time.</summary>
    /// <param name="time">Time, not before the first reading.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite or before the first reading.</exception>
    public ProfileInterval ValueInterval(double time, double confidence, IntervalSide side = IntervalSide.Both)
    {
        Guard.InRange(time, StartTime, double.MaxValue, "", nameof(time));
        if (!TryLimit(confidence, side, out var limit))
        {
            return ProfileInterval.Without(IntervalOutcome.TooFewReadings, confidence, side);
        }

        var at = (time - StartTime) / Span;
        Func<double, double> Inside() => Profile(value => CensoredCondition.At(at, value), limit);
        var here = (ValueAt(time) - series!.Centre) / series.Unit;
        var lower = Edge(Inside(), here, here - 1e4, 0.05, limit);
        var upper = Edge(Inside(), here, here + 1e4, 0.05, limit);
        return ProfileInterval.Between(Unscaled(lower), Unscaled(upper), confidence, side, IsAutocorrelated);
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

        var scaled = (target - series!.Centre) / series.Unit;
        var never =
            Floor >= target || scaled < series.LowestFloor || Profile(CensoredCondition.Floor, limit)(scaled) >= 0;
        var reaches = Start > target && target > Floor && Rate > 0;
        var estimate = reaches ? Math.Log((Start - Floor) / (target - Floor)) / Rate / Span : 0;
        Func<double, double> Crossing() => Profile(time => CensoredCondition.At(time, scaled), limit);

        // Far beyond the readings the crossing is that of the floor.
        const double Far = 1e3;
        double? first = null;
        double? last = null;
        var already = Start <= target;
        var from = reaches ? estimate : Far;
        if (already || Crossing()(from) >= 0)
        {
            first = already ? 0 : Edge(Crossing(), from, 0, 0.05, limit) ?? 0;
            last = never ? null : Edge(Crossing(), already ? 0 : from, Far, 0.05, limit);
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
            IsAutocorrelated
        );
    }

    /// <summary>Standard error of any function of the curve from its derivatives by start, floor and ln k (delta method).</summary>
    internal double StandardErrorOf(double byStart, double byFloor, double byLogRate)
    {
        if (covariance is null)
        {
            return 0;
        }

        var unit = series!.Unit;
        double[] gradient = [byFloor * (FloorStandardError > 0 ? unit : 0), byStart * unit, byLogRate];
        double variance = 0;
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
            {
                variance += gradient[i] * covariance[i, j] * gradient[j];
            }
        }

        return Math.Sqrt(Math.Max(0, variance));
    }

    private double? Edge(Func<double, double> inside, double from, double to, double step, double limit) =>
        CensoredReach.Edge(inside, LogLikelihood - limit, from, to, step);

    /// <summary>ln of the likelihood under a condition less the limit; each call starts from where the last one ended.</summary>
    private Func<double, double> Profile(Func<double, CensoredCondition> condition, double limit)
    {
        var (found, u) = (point, logScaledRate);
        return value =>
            CensoredSearch.Local(series!, likelihood!, condition(value), ref found, ref u, out _, 1e-7) - limit;
    }

    private double? Unscaled(double? value) => value.HasValue ? series!.Centre + series.Unit * value.Value : null;

    /// <summary>Only readings above their limit tell the scatter: they alone count as degrees of freedom.</summary>
    private bool TryLimit(double confidence, IntervalSide side, out double limit)
    {
        var degrees = AboveLimitCount - 3;
        var quantile = IntervalLevel.StudentQuantile(confidence, side, degrees);
        limit = LogLikelihood - 0.5 * AboveLimitCount * Math.Log(1 + quantile * quantile / Math.Max(1, degrees));
        return likelihood is not null;
    }
}
