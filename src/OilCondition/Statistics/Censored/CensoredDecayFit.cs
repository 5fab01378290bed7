using MathNet.Numerics.LinearAlgebra;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>The most likely decay for readings of which some are only known to lie below a limit.</summary>
/// <remarks>
/// Intervals are of the profile likelihood: 2 (ℓ_max − ℓ) ≤ m ln(1 + t²/(m − p)) with m readings above their limit and p fitted parts, which is the least-squares profile of
/// <see cref="ExponentialDecayAnalysis"/> where nothing is below a limit. Standard errors are from the observed information.
/// </remarks>
internal sealed class CensoredDecayFit
{
    private readonly CensoredSeries? series;
    private readonly Matrix<double>? covariance;
    private readonly CensoredLikelihood? likelihood;
    private readonly CensoredPoint point;
    private readonly double logScaledRate;
    private readonly double constantPart;
    private readonly double perSquare;
    private readonly DecayDesign? design;

    internal CensoredDecayFit(ExponentialDecayStatus status, ExponentialDecayOptions options, int count, int aboveCount)
    {
        Status = status;
        Options = options;
        Count = count;
        AboveLimitCount = aboveCount;
    }

    internal CensoredDecayFit(CensoredSeries series, ExponentialDecayOptions options)
    {
        this.series = series;
        Options = options;
        likelihood = new CensoredLikelihood(series);
        point = CensoredLikelihood.Anywhere;
        Count = series.Count;
        AboveLimitCount = series.AboveCount;
        LogLikelihood = CensoredSearch.Global(series, likelihood, ref point, out logScaledRate, out var atBound);
        if (options.Noise == DecayNoise.Proportional)
        {
            LogLikelihood = CensoredSearch.Proportional(series, likelihood, ref point, ref logScaledRate, out atBound);
        }
        else if (options.Noise == DecayNoise.TwoComponent)
        {
            (LogLikelihood, constantPart, perSquare) = CensoredSearch.TwoComponents(
                series,
                likelihood,
                ref point,
                ref logScaledRate,
                out atBound
            );
        }

        var sigma = 1 / point.InverseScatter;
        StartTime = series.Origin;
        Span = series.Span;
        Floor = options.Floor ?? series.Centre + series.Unit * point.Floor * sigma;
        Start = options.Start ?? Floor + series.Unit * point.Amplitude * sigma;
        Rate = options.Rate ?? Math.Exp(logScaledRate) / series.Span;
        StandardDeviation = options.Noise == DecayNoise.Proportional ? sigma : series.Unit * sigma;
        ResidualAutocorrelation = SerialCorrelation.LagOne(series.Residuals(point, logScaledRate));
        Status =
            series.Known.HasRate ? Shape(atBound)
            : logScaledRate < DecayScan.LogLowest + 1e-6 ? ExponentialDecayStatus.StraightLine
            : logScaledRate > series.Top - 1e-6 ? ExponentialDecayStatus.FasterThanSampling
            : Shape(atBound);
        var made = series.Design(point, logScaledRate, DecayParts.Of(Status, options));
        design = made;
        Course = made.Course(Status, Start >= Floor).Check();
        if (
            Status is ExponentialDecayStatus.StraightLine or ExponentialDecayStatus.FasterThanSampling
            || CensoredInformation.Covariance(series, point, logScaledRate, atBound) is not { } found
        )
        {
            return;
        }

        covariance = found;
        HasStandardErrors = true;
        FloorStandardError = atBound || series.Known.HasFloor ? 0 : series.Unit * Math.Sqrt(covariance[0, 0]);
        StartStandardError = series.Known.HasStart ? 0 : series.Unit * Math.Sqrt(covariance[1, 1]);
        RateStandardError = series.Known.HasRate ? 0 : Rate * Math.Sqrt(covariance[2, 2]);
    }

    /// <summary>What the fit could tell. With too few readings the numbers below are 0.</summary>
    public ExponentialDecayStatus Status { get; }

    /// <summary>What was known beforehand, and how the scatter was taken to go with the value.</summary>
    public ExponentialDecayOptions Options { get; }

    /// <summary>Number of readings, n.</summary>
    public int Count { get; }

    /// <summary>Number of readings above their limit.</summary>
    public int AboveLimitCount { get; }

    /// <summary>Time at which the start holds: that of the first reading, or as given with a known start.</summary>
    public double StartTime { get; }

    /// <summary>Time from the start to the last reading.</summary>
    public double Span { get; }

    /// <summary>Value at the start time, c_0.</summary>
    public double Start { get; }

    /// <summary>Value approached, c_inf.</summary>
    public double Floor { get; }

    /// <summary>Rate, k, per unit of time.</summary>
    public double Rate { get; }

    /// <summary>
    /// Standard deviation of the scatter, σ, with proportional noise as a fraction of the value, with two components the root mean square: the
    /// maximum-likelihood value, without a correction for fitted parts.
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

    /// <summary>Whether that correlation is so far above its mean for a fit as independent scatter shows in one series of fifty.</summary>
    public bool IsAutocorrelated => design is not null && SerialCorrelation.IsClear(design.Value.LagOneDeviate);

    /// <summary>Whether the readings agree with one exponential.</summary>
    public CourseCheck Course { get; } = CourseCheck.Untested;

    /// <summary>Whether every interval covers less often than it says.</summary>
    public bool CoverageInDoubt => IsAutocorrelated || Course.IsContradicted;

    /// <summary>How many time constants the readings span.</summary>
    public double ObservedTimeConstants => Rate * Span;

    /// <summary>The curve at a time.</summary>
    /// <param name="time">Time, in the unit and from the zero of the readings.</param>
    /// <returns>The value.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite or more than 200 time constants before the start.</exception>
    public double ValueAt(double time)
    {
        Guard.InRange(time, Rate > 0 ? StartTime - 200 / Rate : double.MinValue, double.MaxValue, "");
        return Floor + (Start - Floor) * Math.Exp(-Rate * (time - StartTime));
    }

    /// <summary>Interval for the rate.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval.</returns>
    public Interval RateInterval(double confidence, IntervalSide side = IntervalSide.Both)
    {
        if (Options.Rate.HasValue)
        {
            return Interval.Fixed(Options.Rate.Value, confidence, side);
        }

        if (Profile(confidence, side) is not { } compatible)
        {
            return Interval.Without(IntervalOutcome.TooFewReadings, confidence, side);
        }

        var (lower, upper) = compatible.LogRates(HasStandardErrors ? RateStandardError / Rate : 0.1);
        return Interval.Between(
            lower.HasValue ? Math.Exp(lower.Value) / Span : null,
            upper.HasValue ? Math.Exp(upper.Value) / Span : null,
            confidence,
            side,
            CoverageInDoubt
        );
    }

    /// <summary>Interval for the floor.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval, never below the lowest floor.</returns>
    public Interval FloorInterval(double confidence, IntervalSide side = IntervalSide.Both)
    {
        if (Options.Floor.HasValue)
        {
            return Interval.Fixed(Options.Floor.Value, confidence, side);
        }

        return Profile(confidence, side) is { } compatible
            ? Unscaled(
                compatible.Floors(FloorStandardError > 0 ? FloorStandardError / series!.Unit : 0.05),
                confidence,
                side
            )
            : Interval.Without(IntervalOutcome.TooFewReadings, confidence, side);
    }

    /// <summary>Interval for the curve at a time.</summary>
    /// <param name="time">Time, not before the start time.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite or before the start time.</exception>
    public Interval ValueInterval(double time, double confidence, IntervalSide side = IntervalSide.Both)
    {
        Guard.InRange(time, StartTime, double.MaxValue, "");
        if (Profile(confidence, side) is not { } compatible)
        {
            return Interval.Without(IntervalOutcome.TooFewReadings, confidence, side);
        }

        return time == StartTime && Options.Start.HasValue
            ? Interval.Fixed(Options.Start.Value, confidence, side)
            : Unscaled(compatible.Values((time - StartTime) / Span, series!.Scaled(ValueAt(time))), confidence, side);
    }

    /// <summary>When the falling curve reaches a value.</summary>
    /// <param name="target">The value to reach; it may lie below the limit of the readings.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>Estimate and interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The target is not finite.</exception>
    public TimeToValueInterval Reach(double target, double confidence, IntervalSide side = IntervalSide.Both)
    {
        Guard.Finite(target, "");
        if (Profile(confidence, side) is not { } compatible)
        {
            return TimeToValueInterval.TooFew(confidence, side);
        }

        double? reached =
            Start > target && target > Floor && Rate > 0
                ? Math.Log((Start - Floor) / (target - Floor)) / Rate / Span
                : null;
        var (first, last) = compatible.Crossings(
            series!.Scaled(target),
            series.Scaled(Start),
            series.Scaled(Floor),
            reached
        );
        var outcome =
            Start <= target ? TimeToValueOutcome.AlreadyReached
            : !first.HasValue ? TimeToValueOutcome.NeverReached
            : !last.HasValue ? TimeToValueOutcome.NotDemonstrated
            : TimeToValueOutcome.Reached;
        return new TimeToValueInterval(
            outcome,
            reached.HasValue,
            reached.HasValue ? StartTime + reached.Value * Span : 0,
            side == IntervalSide.Upper ? null : StartTime + first * Span,
            side == IntervalSide.Lower ? null : StartTime + last * Span,
            confidence,
            side,
            CoverageInDoubt
        );
    }

    /// <summary>The same of a reading where the curve stands at a value, in the unit of the values.</summary>
    internal double ScatterAt(double value) =>
        StandardDeviation
        * Options.Noise switch
        {
            DecayNoise.Proportional => Math.Abs(value),
            DecayNoise.TwoComponent => Math.Sqrt(constantPart + perSquare * value * value),
            _ => 1,
        };

    /// <summary>The lowest level that the readings leave, also where a second, slower fall is allowed beside the first; null where they do not tell.</summary>
    internal double? LowestLevel(double confidence)
    {
        if (
            design is null
            || Course.IsContradicted
            || FloorInterval(confidence, IntervalSide.Lower).Lower is not { } alone
        )
        {
            return null;
        }

        // Only readings above their limit tell the scatter.
        var change = design.Value.FloorChange(_ =>
            IntervalLevel.StudentQuantile(
                confidence,
                IntervalSide.Lower,
                Math.Max(1, AboveLimitCount - Options.FreeParts - 1)
            )
        );
        return change is { } below ? Math.Min(alone, Floor + series!.Unit * below) : null;
    }

    /// <summary>Covariance of start, floor and ln k; 0 for what is known, at its bound or not determined.</summary>
    internal DecayCovariance Covariance
    {
        get
        {
            if (covariance is null)
            {
                return default;
            }

            var start = StartStandardError > 0 ? series!.Unit : 0;
            var floor = FloorStandardError > 0 ? series!.Unit : 0;
            var rate = RateStandardError > 0 ? 1 : 0;
            return new DecayCovariance(
                start * start * covariance[1, 1],
                floor * floor * covariance[0, 0],
                rate * covariance[2, 2],
                start * floor * covariance[0, 1],
                start * rate * covariance[1, 2],
                floor * rate * covariance[0, 2]
            );
        }
    }

    private ExponentialDecayStatus Shape(bool atBound) =>
        Start < Floor ? ExponentialDecayStatus.Rising
        : atBound ? ExponentialDecayStatus.AtFloorBound
        : ExponentialDecayStatus.Determined;

    private Interval Unscaled((double? Lower, double? Upper) ends, double confidence, IntervalSide side) =>
        Interval.Between(
            series!.Centre + series.Unit * ends.Lower,
            series.Centre + series.Unit * ends.Upper,
            confidence,
            side,
            CoverageInDoubt
        );

    /// <summary>The curves close enough; only readings above their limit tell the scatter, so that they alone count as degrees of freedom.</summary>
    private CensoredProfile? Profile(double confidence, IntervalSide side)
    {
        var degrees = AboveLimitCount - Options.FreeParts;
        var quantile = IntervalLevel.StudentQuantile(confidence, side, degrees);
        return likelihood is null
            ? null
            : new CensoredProfile(
                series!,
                likelihood,
                point,
                logScaledRate,
                LogLikelihood,
                0.5 * AboveLimitCount * Math.Log(1 + quantile * quantile / degrees)
            );
    }
}
