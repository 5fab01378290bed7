using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Maximum-likelihood fit of y(t) = c_inf + (c_0 − c_inf) exp(−k (t − t_0)) where some readings are only known to lie below a limit.</summary>
/// <remarks>
/// Readings above their limit count with the normal density, the others with the chance Φ((limit − curve)/σ) of lying below it (Tobin
/// 1958). For a fixed rate the likelihood is concave in floor/σ, amplitude/σ and 1/σ (Olsen 1978), so that damped Newton steps find
/// its one maximum from any start; the rate is searched over all octaves and then by its derivative. With proportional noise the standard
/// deviation of each reading is σ times the curve, iterated until the two agree. Known parts hold in the likelihood itself.
/// <para>Replacing '&lt;10' by 5 or leaving it out shifts rate and floor by a bias that more readings do not remove.</para>
/// </remarks>
/// <example>
/// <code>
/// double[] hours = [0, 4, 8, 12, 20, 28, 36];
/// double[] ppm = [200, 118, 71, 40, 17, 10, 10];
/// bool[] below = [false, false, false, false, false, true, true];   // the last two are '&lt;10'
/// var fit = CensoredDecay.Fit(hours, ppm, below);
/// </code>
/// </example>
internal static class CensoredDecay
{
    /// <summary>Fewest readings above their limit with nothing known: fewer cannot tell start, floor, rate and scatter apart. Each known part spares one.</summary>
    public const int FewestAboveLimit = 4;

    private const double LargestMagnitude = 1e100;

    /// <summary>Fits the curve.</summary>
    /// <param name="times">Times, any unit and order; n values.</param>
    /// <param name="values">Values, or the limit where <paramref name="belowLimit"/> says so; n values.</param>
    /// <param name="belowLimit">Whether a reading is only known to be below its value; n values.</param>
    /// <param name="options">Noise, lowest floor and known parts; null for constant noise, a floor of 0 or more and nothing known.</param>
    /// <returns>The most likely curve; too few readings are a named status.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or the options state logarithmic noise or robustness.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or beyond 1e100, or a time is before that of the known start.</exception>
    public static CensoredDecayFit Fit(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<bool> belowLimit,
        ExponentialDecayOptions? options = null
    )
    {
        var stated = options ?? ExponentialDecayOptions.Default;
        CheckKnownTo(stated);
        Guard.SameLength(values.Length, times.Length, nameof(values), nameof(times));
        Guard.SameLength(belowLimit.Length, times.Length, nameof(belowLimit), nameof(times));
        var earliest = double.PositiveInfinity;
        var latest = double.NegativeInfinity;
        for (var i = 0; i < times.Length; i++)
        {
            Guard.InRange(times[i], stated.StartTime ?? -LargestMagnitude, LargestMagnitude, "", nameof(times));
            Guard.InRange(values[i], -LargestMagnitude, LargestMagnitude, "", nameof(values));
            earliest = Math.Min(earliest, times[i]);
            latest = Math.Max(latest, times[i]);
        }

        var origin = stated.StartTime ?? earliest;
        var telling = new HashSet<double>();
        var aboveCount = 0;
        for (var i = 0; i < times.Length; i++)
        {
            if (belowLimit[i])
            {
                continue;
            }

            aboveCount++;

            // At the origin a curve of known start has nothing to learn.
            if (!(stated.Start.HasValue && times[i] == origin))
            {
                telling.Add(times[i]);
            }
        }

        var parts = stated.FreeParts;
        if (aboveCount <= parts || telling.Count < parts || !(latest - origin >= DecayColumns.Least))
        {
            var status =
                times.Length <= parts || aboveCount == times.Length
                    ? ExponentialDecayStatus.TooFewReadings
                    : ExponentialDecayStatus.TooFewAboveLimit;
            return new CensoredDecayFit(status, stated, times.Length, aboveCount);
        }

        return new CensoredDecayFit(
            new CensoredSeries(times.ToArray(), values.ToArray(), belowLimit.ToArray(), stated),
            stated
        );
    }

    private static void CheckKnownTo(ExponentialDecayOptions options)
    {
        if (options.Noise == DecayNoise.Logarithmic)
        {
            throw new ArgumentException(
                "The noise is Logarithmic and some readings lie below a limit; state Proportional noise, which is nearly the same scatter, or leave those readings out.",
                nameof(options)
            );
        }

        if (options.Robust)
        {
            throw new ArgumentException(
                "Robust weights are not known for readings below a limit; fit without them, or leave those readings out.",
                nameof(options)
            );
        }
    }
}
