using System.Runtime.CompilerServices;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>A decay fit together with its readings: profile intervals, residuals, flags and warnings.</summary>
/// <remarks>
/// Intervals are of the profile likelihood: all curves with RSS ≤ RSS_min + t² s² are compatible with the readings (Bates and Watts 1988,
/// Nonlinear Regression Analysis, section 6.1), t being Student's quantile, t² = F(confidence; 1, ν) for both sides. An interval is how far
/// the quantity reaches in that set; for each rate the reach is closed-form. An end that the readings do not bound is missing by name.
/// Measured coverage is in docs/statistics-exponential-fit.md.
/// <para>With weights that depend on the curve (proportional or logarithmic noise, robust) the set is that of the final weights.</para>
/// </remarks>
/// <example>
/// <code>
/// var analysis = ExponentialDecay.Analyze(hours, ppm, new ExponentialDecayOptions(noise: DecayNoise.Proportional));
/// var ready = analysis.TimeTo(target: 100, confidence: 0.9);
/// // ready.HasUpper is false where the readings cannot exclude that 100 is never reached
/// </code>
/// </example>
public sealed partial class ExponentialDecayAnalysis
{
    private readonly double[] times;
    private readonly double[] values;
    private readonly double[] weights;
    private readonly double[] workingWeights;
    private readonly double[] workingValues;

    private readonly IReadOnlyList<DecayClock> clocks = [];
    private (double Confidence, IntervalSide Side) profiledAt;

    /// <summary>Where each reading in order of time was given; null if they were given in that order.</summary>
    private readonly int[]? order;

    private readonly DecayFound found = new();

    /// <summary>What the fit learned of a scatter of two components; null with any other.</summary>
    private readonly DecayShares? shares;

    // Each is computed from what is above when it is first asked for, and never changes: two threads would write the same.
    private DecayResiduals? residuals;
    private DecayCompatible? profile;
    private IReadOnlyList<DecayView>? views;
    private StrongBox<DecayNoise>? suggested;
    private StrongBox<DecayWarnings>? warnings;
    private int[]? flagged;
    private CourseCheck? course;

    internal ExponentialDecayAnalysis(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options
    )
    {
        Options = options;
        this.times = times.ToArray();
        order = Numbers.Ascend(times) ? null : [.. Enumerable.Range(0, times.Length)];
        if (order is not null)
        {
            Array.Sort(this.times, order);
        }

        this.values = Ordered(values);
        this.weights = weights.IsEmpty ? [] : Ordered(weights);
        shares = options.Noise == DecayNoise.TwoComponent ? new DecayShares() : null;
        Fit = FitOf(out workingWeights, out workingValues);
    }

    /// <summary>The same on the clock, one of several, on which one exponential fits best; that choice counts as a fitted part.</summary>
    /// <param name="clocks">Clocks of the same times, in order.</param>
    /// <param name="values">Values in that order.</param>
    /// <param name="options">What is known.</param>
    internal ExponentialDecayAnalysis(
        IReadOnlyList<DecayClock> clocks,
        double[] values,
        ExponentialDecayOptions options
    )
    {
        Options = options;
        this.clocks = clocks;
        this.values = values;
        weights = [];
        Clock = clocks.OrderBy(clock => Plain(clock).ResidualSumOfSquares).First();
        times = [.. Clock.Times];
        shares = options.Noise == DecayNoise.TwoComponent ? new DecayShares() : null;
        Fit = FitOf(out workingWeights, out workingValues);
        if (Fit.DegreesOfFreedom > 1)
        {
            Fit = Fit.WithOneMorePart();
        }

        ExponentialDecay Plain(DecayClock clock) =>
            DecayFitter.Fit(
                [.. clock.Times],
                values,
                default,
                options.Noise == DecayNoise.TwoComponent ? options.With(DecayNoise.Constant) : options,
                default,
                default
            );
    }

    /// <summary>What was known beforehand.</summary>
    public ExponentialDecayOptions Options { get; }

    /// <summary>The best curve.</summary>
    public ExponentialDecay Fit { get; }

    /// <summary>Residuals over the scatter expected of each reading, in the order in which the readings were given.</summary>
    public IReadOnlyList<double> Residuals => Left.InGivenOrder;

    /// <summary>
    /// Positions, from 0, of readings that do not belong to the curve of the others: each is left out in turn, and the one without which the fit is
    /// so much better that scatter alone shows it in fewer than one series of twenty. Then the next, up to a sixth of the readings, and five. A robust
    /// fit is one without them; any other only names them: a slug of water is news, not an error.
    /// </summary>
    public IReadOnlyList<int> FlaggedReadings => flagged ??= Flagged();

    /// <summary>Whether as many readings are flagged as are looked for at most: there may be more of them.</summary>
    public bool MoreFlagsPossible =>
        FlaggedReadings.Count
        == DecayOutliers.MostOf(DecayOutliers.Weights(times.Length, weights).Count(one => one > 0));

    /// <summary>Correlation of each residual with the next in time (lag 1).</summary>
    public double ResidualAutocorrelation => Left.LagOne;

    /// <summary>Whether that correlation is so far above its mean for a fit, which is below 0, as independent scatter shows in one series of fifty.</summary>
    /// <remarks>Every interval then carries a warning: with correlation 0.3 to 0.5 an interval of 90 % covers 63 to 80 %.</remarks>
    public bool IsAutocorrelated => Warnings.IsAutocorrelated;

    /// <summary>Whether the readings agree with one exponential.</summary>
    public CourseCheck Course => course ??= Warnings.Course.Check();

    /// <summary>Whether every interval covers less often than it says: the residuals follow one another, or the course is another one.</summary>
    public bool CoverageInDoubt => Warnings.CoverageInDoubt;

    /// <summary>The noise model that the residuals speak for: the one used, unless another makes the readings clearly more likely (e² times or more).</summary>
    public DecayNoise SuggestedNoise =>
        (suggested ??= new StrongBox<DecayNoise>(DecayNoiseCheck.Suggest(times, values, weights, Options, Fit))).Value;

    /// <summary>The clock of the best curve; null for the plain one.</summary>
    internal DecayClock? Clock { get; }

    /// <summary>When the curve begins, on the plain clock.</summary>
    private double StartTime => Clock?.ToPlain(Fit.StartTime) ?? Fit.StartTime;

    private IReadOnlyList<DecayView> Views => views ??= ViewsOf();

    private DecayResiduals Left => residuals ??= new DecayResiduals(times, values, weights, Fit, order);

    private DecayWarnings Warnings => (warnings ??= new StrongBox<DecayWarnings>(WarningsOf())).Value;

    /// <inheritdoc/>
    public override string ToString() =>
        Fit
        + (
            Course.IsContradicted ? $", {Course}"
            : IsAutocorrelated ? ", residuals follow one another"
            : ""
        );

    /// <summary>Interval for the rate.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>Without a lower end a straight line is compatible, without an upper end a sudden drop.</returns>
    public Interval Rate(double confidence, IntervalSide side = IntervalSide.Both)
    {
        if (Options.Rate.HasValue)
        {
            return Interval.Fixed(Options.Rate.Value, confidence, side);
        }

        if (!TryProfile(confidence, side, out var compatible))
        {
            return Interval.Without(IntervalOutcome.TooFewReadings, confidence, side);
        }

        compatible.Rates(out var least, out var largest);
        return Interval.Between(least, largest, confidence, side, CoverageInDoubt);
    }

    /// <summary>Interval for the half-life, ln 2 / k.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>Without an upper end a straight line is compatible, without a lower end a sudden drop.</returns>
    public Interval HalfLife(double confidence, IntervalSide side = IntervalSide.Both)
    {
        var mirrored =
            side == IntervalSide.Lower ? IntervalSide.Upper
            : side == IntervalSide.Upper ? IntervalSide.Lower
            : side;
        var rate = Rate(confidence, mirrored);
        return rate.Outcome switch
        {
            IntervalOutcome.TooFewReadings => Interval.Without(rate.Outcome, confidence, side),
            IntervalOutcome.Known => Interval.Fixed(Math.Log(2) / rate.Lower!.Value, confidence, side),
            _ => Interval.Between(
                Math.Log(2) / rate.Upper,
                Math.Log(2) / rate.Lower,
                confidence,
                side,
                rate.CoverageInDoubt
            ),
        };
    }

    /// <summary>Interval for the floor.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval, never below the lowest floor.</returns>
    public Interval Floor(double confidence, IntervalSide side = IntervalSide.Both) =>
        Options.Floor.HasValue
            ? Interval.Fixed(Options.Floor.Value, confidence, side)
            : Reached(double.PositiveInfinity, confidence, side);

    /// <summary>Interval for the start.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval.</returns>
    public Interval Start(double confidence, IntervalSide side = IntervalSide.Both) =>
        Options.Start.HasValue
            ? Interval.Fixed(Options.Start.Value, confidence, side)
            : Reached(double.NegativeInfinity, confidence, side);

    /// <summary>Interval for the curve at a time, by profile: wider and more honest far beyond the readings than the band of the fit.</summary>
    /// <param name="time">Time, not before the start time.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite or before the start.</exception>
    public Interval ValueAt(double time, double confidence, IntervalSide side = IntervalSide.Both)
    {
        Guard.InRange(time, StartTime, double.MaxValue, "");
        return Reached(time, confidence, side);
    }

    /// <summary>Interval for the slope of the curve where it passes a value, k (floor − value), in values per unit of time.</summary>
    /// <remarks>At the level that a loop would reach by itself this is what comes in per unit of time.</remarks>
    /// <param name="value">The value; the curve need not pass it within the readings.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval; an end is missing where the readings do not bound the rate from above.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public Interval SlopeAt(double value, double confidence, IntervalSide side = IntervalSide.Both)
    {
        Guard.Finite(value, "");
        if (!TryProfile(confidence, side, out var compatible))
        {
            return Interval.Without(IntervalOutcome.TooFewReadings, confidence, side);
        }

        compatible.Slopes(value, out var least, out var largest);
        return Interval.Between(least, largest, confidence, side, CoverageInDoubt);
    }

    /// <summary>When the falling curve reaches a value.</summary>
    /// <param name="target">The value to reach.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <returns>
    /// On the clock of the readings: already where the curve begins at or below the value, at its start time; not before, without a latest
    /// time, where the readings do not show that it is ever reached.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The target is not finite, or the level outside its range.</exception>
    public Arrival<double> TimeTo(double target, double confidence)
    {
        var reach = Reach(target, confidence);
        return reach.Outcome == TimeToValueOutcome.AlreadyReached
            ? new Arrival<double>.Already(
                StartTime,
                reach.HasUpper && reach.Upper <= StartTime,
                confidence,
                CoverageInDoubt
            )
            : reach.ToArrival();
    }

    /// <summary>The same with one end or both, and with an estimate where only the late end is missing.</summary>
    internal TimeToValueInterval Reach(double target, double confidence, IntervalSide side = IntervalSide.Both)
    {
        Guard.Finite(target, "");
        if (!TryProfile(confidence, side, out var compatible))
        {
            return TimeToValueInterval.TooFew(confidence, side);
        }

        compatible.Crossings(target, out var first, out var last, out var never);
        var falls = Fit.Start > Fit.Floor;
        var hasEstimate = Fit.TryTimeTo(target, out var estimate) && falls;
        var outcome =
            Fit.Start <= target ? TimeToValueOutcome.AlreadyReached
            : !first.HasValue ? TimeToValueOutcome.NeverReached
            : !never ? TimeToValueOutcome.Reached
            : TimeToValueOutcome.NotDemonstrated;
        return new TimeToValueInterval(
            outcome,
            hasEstimate,
            hasEstimate ? Clock?.ToPlain(estimate) ?? estimate : 0,
            side == IntervalSide.Upper ? null : first,
            side == IntervalSide.Lower || never ? null : last,
            confidence,
            side,
            CoverageInDoubt
        );
    }

    /// <summary>The lowest level that the readings leave, also where a second, slower fall is allowed beside the first; null where they do not tell.</summary>
    internal double? LowestLevel(double confidence)
    {
        if (Course.IsContradicted || Floor(confidence, IntervalSide.Lower).Lower is not { } alone)
        {
            return null;
        }

        var design = DecayDesign.Of(times, workingValues, workingWeights, Fit, Options, new DecayStore());
        var change = design.FloorChange(degrees =>
            IntervalLevel.StudentQuantile(confidence, IntervalSide.Lower, degrees)
        );
        return change is { } below ? Math.Min(alone, Fit.Floor + below) : null;
    }

    private DecayWarnings WarningsOf() =>
        Fit.Status == ExponentialDecayStatus.TooFewReadings
            ? DecayWarnings.None
            : DecayWarnings.Of(
                times,
                workingValues,
                workingWeights,
                Fit,
                Options,
                shares,
                DecayStore.ToWorkIn(times.Length)
            );

    private ExponentialDecay FitOf(out double[] working, out double[] workingOn)
    {
        working = weights;
        workingOn = values;
        if (Options.Noise == DecayNoise.Constant && !Options.Robust)
        {
            return DecayFitter.Fit(times, values, weights, Options, default, default, null, found);
        }

        working = new double[times.Length];
        workingOn = new double[times.Length];
        return DecayFitter.Fit(times, values, weights, Options, working, workingOn, shares, found);
    }

    private double[] Ordered(ReadOnlySpan<double> from)
    {
        var to = from.ToArray();
        for (var i = 0; order is not null && i < to.Length; i++)
        {
            to[i] = from[order[i]];
        }

        return to;
    }

    private int[] Flagged() =>
        [.. DecayOutliers.Find(times, values, weights, Options).Select(i => order?[i] ?? i).OrderBy(i => i)];

    private Interval Reached(double time, double confidence, IntervalSide side)
    {
        if (!TryProfile(confidence, side, out var compatible))
        {
            return Interval.Without(IntervalOutcome.TooFewReadings, confidence, side);
        }

        compatible.Values(time, out var least, out var largest);
        return Interval.Between(
            least.HasValue && double.IsPositiveInfinity(time) ? Options.FloorOf(least.Value, Fit.Start) : least,
            largest,
            confidence,
            side,
            CoverageInDoubt
        );
    }
}
