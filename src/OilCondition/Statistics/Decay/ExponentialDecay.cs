using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Least-squares fit of y(t) = c_inf + (c_0 − c_inf) exp(−k (t − t_0)) by variable projection: no start value is needed.</summary>
/// <remarks>
/// c_0: value at the start time t_0 (that of the first reading unless a known start says otherwise), c_inf: floor, k: rate per unit of time.
/// For a fixed k the curve is linear in the other two (Golub and Pereyra 1973), so that only k is searched: over all octaves from k = 1/64 of
/// the reciprocal span to 12 of the reciprocal first gap, then by Newton's method in ln k, kept in a bracket, around every local minimum. The
/// result is the global optimum to the precision of the scan. Nothing is allocated for up to 256 readings.
/// <para>Valid for independent scatter. Readings need no order. Values and times must be finite and below 1e100 in size.</para>
/// </remarks>
/// <example>
/// <code>
/// double[] hours = [0, 2, 4, 8, 16, 24];
/// double[] ppm = [1216, 1019, 805, 494, 246, 183];
/// var fit = ExponentialDecay.Fit(hours, ppm);     // fit.Rate, fit.Floor, fit.Status
/// </code>
/// </example>
public readonly partial record struct ExponentialDecay
{
    private const double LargestMagnitude = 1e100;

    /// <summary>Fits the curve with constant scatter and nothing known but the lowest floor.</summary>
    /// <param name="times">Times, any unit; n values.</param>
    /// <param name="values">Values; n values.</param>
    /// <param name="lowestFloor">The lowest floor allowed, 0 for contents and counts, which cannot be negative.</param>
    /// <returns>The best curve and what it is worth.</returns>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or beyond 1e100.</exception>
    public static ExponentialDecay Fit(ReadOnlySpan<double> times, ReadOnlySpan<double> values, double lowestFloor = 0)
    {
        Guard.Finite(lowestFloor, "");
        return Fit(
            times,
            values,
            default,
            lowestFloor == 0 ? ExponentialDecayOptions.Default : new(lowestFloor: lowestFloor)
        );
    }

    /// <summary>Fits the curve with what is known beforehand.</summary>
    /// <param name="times">Times, any unit; n values.</param>
    /// <param name="values">Values; n values.</param>
    /// <param name="options">Noise, bound, known parts, robustness.</param>
    /// <returns>The best curve and what it is worth.</returns>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentNullException">There are no options.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, a time is before the start time, or a value not above 0 with logarithmic noise.</exception>
    public static ExponentialDecay Fit(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ExponentialDecayOptions options
    ) => Fit(times, values, default, options);

    /// <summary>Fits the curve with given weights.</summary>
    /// <param name="times">Times, any unit; n values.</param>
    /// <param name="values">Values; n values.</param>
    /// <param name="weights">Weights in proportion to 1/variance, 0 for readings that do not count; n values, or none for equal weights.</param>
    /// <param name="options">Noise, bound, known parts, robustness.</param>
    /// <returns>The best curve and what it is worth.</returns>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentNullException">There are no options.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite, a weight negative, a time before the start time, or a value not above 0 with logarithmic noise.</exception>
    public static ExponentialDecay Fit(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options
    )
    {
        Check(times, values, weights, options);
        return DecayFitter.Fit(times, values, weights, options, default, default);
    }

    /// <summary>Fits the curve and keeps the readings, for profile intervals, residual checks and flags of outliers.</summary>
    /// <param name="times">Times, any unit; n values.</param>
    /// <param name="values">Values; n values.</param>
    /// <param name="options">Noise, bound, known parts, robustness; null for the defaults.</param>
    /// <param name="weights">Weights as in the fit, or none for equal weights.</param>
    /// <returns>The analysis.</returns>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">As for the fit.</exception>
    public static ExponentialDecayAnalysis Analyze(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ExponentialDecayOptions? options = null,
        ReadOnlySpan<double> weights = default
    )
    {
        var stated = options ?? ExponentialDecayOptions.Default;
        Check(times, values, weights, stated);
        return new ExponentialDecayAnalysis(times, values, weights, stated);
    }

    /// <summary>When the curve reaches a value, with the profile-likelihood interval.</summary>
    /// <param name="fit">The fit of these readings; it decides nothing but the estimate.</param>
    /// <param name="times">The times that were fitted.</param>
    /// <param name="values">The values that were fitted.</param>
    /// <param name="target">The value to reach, below the start.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="lowestFloor">The lowest floor allowed, as in the fit.</param>
    /// <param name="side">Both ends, or one: Upper for 'done by'.</param>
    /// <returns>Estimate and interval.</returns>
    /// <exception cref="ArgumentException">There are too few readings, or the target is not finite.</exception>
    internal static TimeToValueInterval TimeToValue(
        in ExponentialDecay fit,
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double target,
        double confidence,
        double lowestFloor = 0,
        IntervalSide side = IntervalSide.Both
    )
    {
        if (fit.Status == ExponentialDecayStatus.TooFewReadings)
        {
            throw new ArgumentException("Too few readings were fitted; there is no time to a value.", nameof(fit));
        }

        return Analyze(times, values, new ExponentialDecayOptions(lowestFloor: lowestFloor))
            .Reach(target, confidence, side);
    }

    internal static void Check(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        ExponentialDecayOptions options
    )
    {
        Guard.NotNull(options);
        Guard.SameLength(values.Length, times.Length, nameof(values), nameof(times));
        if (!weights.IsEmpty)
        {
            Guard.SameLength(weights.Length, times.Length, nameof(weights), nameof(times));
        }

        if (
            LaneMath.AreWithin(times, options.StartTime ?? -LargestMagnitude, LargestMagnitude)
            && LaneMath.AreWithin(
                values,
                options.Noise == DecayNoise.Logarithmic ? double.Epsilon : -LargestMagnitude,
                LargestMagnitude
            )
            && LaneMath.AreWithin(weights, 0, LargestMagnitude)
        )
        {
            return;
        }

        // Something is wrong: which reading, and how?
        for (var i = 0; i < times.Length; i++)
        {
            Guard.InRange(times[i], options.StartTime ?? -LargestMagnitude, LargestMagnitude, "", nameof(times));
            Guard.InRange(values[i], -LargestMagnitude, LargestMagnitude, "", nameof(values));
            if (!weights.IsEmpty)
            {
                Guard.InRange(weights[i], 0, LargestMagnitude, "", nameof(weights));
            }

            if (options.Noise == DecayNoise.Logarithmic)
            {
                Guard.Positive(values[i], "", nameof(values));
            }
        }
    }
}
