using OilCondition.Guards;

namespace OilCondition.Statistics;

/// <summary>Maximum-likelihood fit of y(t) = c_inf + (c_0 − c_inf) exp(−k (t − t_0)) where some readings are only known to lie below a limit.</summary>
/// <remarks>
/// Readings above their limit count with the normal density, the others with the chance Φ((limit − curve)/σ) of lying below it (Tobin
/// 1958). For a fixed rate the likelihood is concave in floor/σ, amplitude/σ and 1/σ (Olsen 1978), so that damped Newton steps find
/// its one maximum from any start; the rate is searched over all octaves and then by its derivative. With proportional noise the standard
/// deviation of each reading is σ times the curve, iterated until the two agree.
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
public static class CensoredDecay
{
    /// <summary>Fewest readings above their limit: fewer cannot tell start, floor, rate and scatter apart.</summary>
    public const int FewestAboveLimit = 4;

    private const double LargestMagnitude = 1e100;

    /// <summary>Fits the curve.</summary>
    /// <param name="times">Times, any unit and order; n values.</param>
    /// <param name="values">Values, or the limit where <paramref name="belowLimit"/> says so; n values.</param>
    /// <param name="belowLimit">Whether a reading is only known to be below its value; n values.</param>
    /// <param name="lowestFloor">Lowest floor allowed, 0 by default; null for no bound.</param>
    /// <param name="noise">How the scatter goes with the size of a reading: constant or proportional.</param>
    /// <returns>The most likely curve; too few readings are a named status.</returns>
    /// <exception cref="ArgumentException">The spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A number is not finite or beyond 1e100, or the noise is logarithmic: a limit says nothing about the logarithm's scatter that
    /// proportional noise does not say as well.
    /// </exception>
    public static CensoredDecayFit Fit(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<bool> belowLimit,
        double? lowestFloor = 0,
        DecayNoise noise = DecayNoise.Constant
    )
    {
        if (noise is not (DecayNoise.Constant or DecayNoise.Proportional))
        {
            throw new ArgumentOutOfRangeException(
                nameof(noise),
                $"noise is {noise}; allowed: {DecayNoise.Constant} or {DecayNoise.Proportional} where readings lie below a limit."
            );
        }

        Guard.SameLength(values.Length, times.Length, nameof(values), nameof(times));
        Guard.SameLength(belowLimit.Length, times.Length, nameof(belowLimit), nameof(times));
        if (lowestFloor.HasValue)
        {
            Guard.InRange(lowestFloor.Value, -LargestMagnitude, LargestMagnitude, "", nameof(lowestFloor));
        }

        var above = new HashSet<double>();
        var aboveCount = 0;
        for (var i = 0; i < times.Length; i++)
        {
            Guard.InRange(times[i], -LargestMagnitude, LargestMagnitude, "", nameof(times));
            Guard.InRange(values[i], -LargestMagnitude, LargestMagnitude, "", nameof(values));
            if (!belowLimit[i])
            {
                aboveCount++;
                above.Add(times[i]);
            }
        }

        if (aboveCount < FewestAboveLimit || above.Count < 3)
        {
            var status =
                times.Length < FewestAboveLimit || aboveCount == times.Length
                    ? ExponentialDecayStatus.TooFewReadings
                    : ExponentialDecayStatus.TooFewAboveLimit;
            return new CensoredDecayFit(status, noise, times.Length, aboveCount);
        }

        return new CensoredDecayFit(
            new CensoredSeries(times.ToArray(), values.ToArray(), belowLimit.ToArray(), lowestFloor),
            noise
        );
    }
}
