using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>Whether two particle counts differ by more than counting scatter.</summary>
/// <remarks>
/// <para>
/// Given m₁ + m₂ = n particles in all, m₂ of equal oils is binomial with p = v₂/(v₁ + v₂), v = V/d the volume of oil analysed. The
/// chance is twice the smaller tail, at most 1: exact up to 10 000 particles in all, by the normal law with continuity correction above.
/// </para>
/// <para>z = (m₂ − n·p)/√(n·p·(1 − p)); with equal volumes (m₂ − m₁)/√(m₁ + m₂).</para>
/// <para>
/// Sampling and calibration scatter are not in it: a difference found here may still be one of bottles or counters; none found here
/// is none.
/// </para>
/// <para>Source: conditional test of two Poisson means, Przyborowski and Wilenski, Biometrika 31 (1940) 313 (from memory).</para>
/// </remarks>
internal sealed record CountDifference
{
    private CountDifference(double z, double chance)
    {
        Z = z;
        Chance = chance;
    }

    /// <summary>Difference over its standard deviation; positive when the second oil holds more. 0 when none was counted.</summary>
    public double Z { get; }

    /// <summary>Chance of a difference at least as unlikely if both oils are equally dirty, two-sided.</summary>
    public double Chance { get; }

    /// <summary>Compares two counts at the same size.</summary>
    /// <param name="firstCount">The first count.</param>
    /// <param name="secondCount">The second count.</param>
    /// <returns>The difference.</returns>
    /// <exception cref="ArgumentNullException">A count is missing.</exception>
    public static CountDifference Between(ParticleCount firstCount, ParticleCount secondCount)
    {
        Guard.NotNull(firstCount);
        Guard.NotNull(secondCount);
        var trials = firstCount.Counted + secondCount.Counted;
        if (trials == 0)
        {
            return new CountDifference(0, 1);
        }

        var firstOil = firstCount.Volume.Milliliters / firstCount.Dilution;
        var secondOil = secondCount.Volume.Milliliters / secondCount.Dilution;
        var share = secondOil / (firstOil + secondOil);
        var second = secondCount.Counted;
        var atMost = CountingStatistics.BinomialAtMost(second, trials, share);
        var atLeast = CountingStatistics.BinomialAtMost(trials - second, trials, 1 - share);
        var z = (second - (trials * share)) / Math.Sqrt(trials * share * (1 - share));
        return new CountDifference(z, Math.Min(1, 2 * Math.Min(atMost, atLeast)));
    }
}
