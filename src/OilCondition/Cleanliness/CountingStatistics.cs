using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace OilCondition.Cleanliness;

/// <summary>Quantiles and tails of counts. Above 10 000 the library's series and fractions no longer converge reliably; there a limit law is used.</summary>
internal static class CountingStatistics
{
    private const long LargestExact = 10_000;

    /// <summary>Quantile of the gamma distribution of whole shape and rate 1; Wilson and Hilferty (1931) above the exact range.</summary>
    public static double GammaQuantile(long shape, double chance)
    {
        if (shape <= LargestExact)
        {
            return Gamma.InvCDF(shape, 1, chance);
        }

        var root = 1 - (1 / (9.0 * shape)) + (Normal.InvCDF(0, 1, chance) / (3 * Math.Sqrt(shape)));
        return shape * root * root * root;
    }

    /// <summary>Chance of at most so many successes in so many trials; normal with continuity correction above the exact range.</summary>
    public static double BinomialAtMost(long successes, long trials, double chance)
    {
        if (successes < 0)
        {
            return 0;
        }

        if (successes >= trials)
        {
            return 1;
        }

        return trials <= LargestExact
            ? SpecialFunctions.BetaRegularized(trials - successes, successes + 1, 1 - chance)
            : Normal.CDF(0, 1, (successes + 0.5 - (trials * chance)) / Math.Sqrt(trials * chance * (1 - chance)));
    }
}
