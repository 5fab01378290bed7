using System.Diagnostics.CodeAnalysis;
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
public sealed class ExponentialDecayAnalysis
{
    private const int MostOnStack = 1024;

    private readonly double[] times;
    private readonly double[] values;
    private readonly double[] weights;
    private readonly double[] workingWeights;
    private readonly double[] workingValues;

    /// <summary>Where each reading in order of time was given; null if they were given in that order.</summary>
    private readonly int[]? order;

    // Each is computed from what is above when it is first asked for, and never changes: two threads would write the same.
    private DecayResiduals? residuals;
    private DecayProfile? profile;
    private StrongBox<DecayNoise>? suggested;

    internal ExponentialDecayAnalysis(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options
    )
    {
        Options = options;
        this.times = times.ToArray();
        order = InOrder(times) ? null : [.. Enumerable.Range(0, times.Length)];
        if (order is not null)
        {
            Array.Sort(this.times, order);
        }

        this.values = Ordered(values);
        this.weights = weights.IsEmpty ? [] : Ordered(weights);
        if (options.Noise == DecayNoise.Constant && !options.Robust)
        {
            workingWeights = this.weights;
            workingValues = this.values;
            Fit = DecayFitter.Fit(this.times, this.values, this.weights, options, default, default);
        }
        else
        {
            workingWeights = new double[times.Length];
            workingValues = new double[times.Length];
            Fit = DecayFitter.Fit(this.times, this.values, this.weights, options, workingWeights, workingValues);
        }
    }

    /// <summary>What was known beforehand.</summary>
    public ExponentialDecayOptions Options { get; }

    /// <summary>The best curve.</summary>
    public ExponentialDecay Fit { get; }

    /// <summary>Residuals over the scatter expected of each reading, in the order in which the readings were given.</summary>
    public IReadOnlyList<double> Residuals => Left.InGivenOrder;

    /// <summary>
    /// Positions, from 0, of readings more than 3.5 standard deviations from the curve. Only a robust fit is not itself drawn
    /// towards them. They are flagged, never removed: a slug of water is news, not an error.
    /// </summary>
    public IReadOnlyList<int> FlaggedReadings => Left.Flagged();

    /// <summary>Correlation of each residual with the next in time (lag 1).</summary>
    public double ResidualAutocorrelation => Left.LagOne;

    /// <summary>Whether that correlation is above 1.645/sqrt(n), which independent scatter exceeds in fewer than one series of twenty.</summary>
    /// <remarks>Every interval then carries a warning: with correlation 0.3 to 0.5 an interval of 90 % covers 63 to 80 %.</remarks>
    public bool IsAutocorrelated => Left.IsAutocorrelated;

    /// <summary>The noise model that the residuals speak for: the one used, unless another makes the readings clearly more likely (e² times or more).</summary>
    public DecayNoise SuggestedNoise =>
        (suggested ??= new StrongBox<DecayNoise>(DecayNoiseCheck.Suggest(times, values, weights, Options, Fit))).Value;

    private DecayResiduals Left => residuals ??= new DecayResiduals(times, values, weights, Fit, order);

    /// <inheritdoc/>
    public override string ToString() => Fit + (IsAutocorrelated ? ", residuals follow one another" : "");

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

        return Interval.Between(
            compatible.HasNoLowestRate ? null : Math.Exp(compatible.Lowest) / Fit.Span,
            compatible.HasNoHighestRate ? null : Math.Exp(compatible.Highest) / Fit.Span,
            confidence,
            side,
            IsAutocorrelated
        );
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
            : ScaledValue(double.PositiveInfinity, confidence, side);

    /// <summary>Interval for the start.</summary>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval.</returns>
    public Interval Start(double confidence, IntervalSide side = IntervalSide.Both) =>
        Options.Start.HasValue
            ? Interval.Fixed(Options.Start.Value, confidence, side)
            : ScaledValue(0, confidence, side);

    /// <summary>Interval for the curve at a time, by profile: wider and more honest far beyond the readings than the band of the fit.</summary>
    /// <param name="time">Time, not before the start time.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is not finite or before the start.</exception>
    public Interval ValueAt(double time, double confidence, IntervalSide side = IntervalSide.Both)
    {
        Guard.InRange(time, Fit.StartTime, double.MaxValue, "");
        return ScaledValue(Fit.Span > 0 ? (time - Fit.StartTime) / Fit.Span : 0, confidence, side);
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
        return Interval.Between(least / Fit.Span, largest / Fit.Span, confidence, side, IsAutocorrelated);
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
                Fit.StartTime,
                reach.HasUpper && reach.Upper <= Fit.StartTime,
                confidence,
                IsAutocorrelated
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

        compatible.Crossings(compatible.Scaled(target), out var first, out var last, out var never);
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
            hasEstimate ? estimate : 0,
            side == IntervalSide.Upper ? null : Fit.StartTime + first * Fit.Span,
            side == IntervalSide.Lower || never ? null : Fit.StartTime + last * Fit.Span,
            confidence,
            side,
            IsAutocorrelated
        );
    }

    private static bool InOrder(ReadOnlySpan<double> times)
    {
        for (var i = 1; i < times.Length; i++)
        {
            if (times[i] < times[i - 1])
            {
                return false;
            }
        }

        return true;
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

    private Interval ScaledValue(double scaledTime, double confidence, IntervalSide side)
    {
        if (!TryProfile(confidence, side, out var compatible))
        {
            return Interval.Without(IntervalOutcome.TooFewReadings, confidence, side);
        }

        compatible.Values(scaledTime, out var least, out var largest);
        return Interval.Between(
            least.HasValue ? NotBelowBound(compatible.Unscaled(least.Value), scaledTime) : null,
            largest.HasValue ? compatible.Unscaled(largest.Value) : null,
            confidence,
            side,
            IsAutocorrelated
        );
    }

    /// <summary>A floor at its bound is the bound itself, to the last digit.</summary>
    private double NotBelowBound(double value, double scaledTime) =>
        double.IsInfinity(scaledTime) && value < Options.Bound + 1e-9 * Math.Abs(Fit.Start - Options.Bound)
            ? Options.Bound
            : value;

    [SkipLocalsInit]
    private bool TryProfile(double confidence, IntervalSide side, [NotNullWhen(true)] out DecayProfile? compatible)
    {
        var quantile = IntervalLevel.StudentQuantile(confidence, side, Fit.DegreesOfFreedom);
        compatible = profile;
        if (Fit.Status == ExponentialDecayStatus.TooFewReadings)
        {
            return false;
        }

        if (compatible?.Quantile != quantile)
        {
            var need = DecayColumns.Scratch(times.Length);
            var scratch = need <= MostOnStack ? stackalloc double[need] : new double[need];
            var columns = new DecayColumns(scratch, times, workingValues, workingWeights, Fit.StartTime);
            compatible = new DecayProfile(
                columns,
                new DecayShape(columns, Options.Start, Options.Floor, Options.Bound),
                Fit.Rate * Fit.Span,
                quantile,
                Fit.ResidualStandardDeviation,
                Options.Rate.HasValue
            );
            profile = compatible;
        }

        return true;
    }
}
