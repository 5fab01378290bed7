using MathNet.Numerics.Distributions;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Percentiles of a sample, and how well the sample knows them.</summary>
public static class Quantiles
{
    /// <summary>How a quantile is read between sorted values x_1 … x_n (Hyndman and Fan 1996). The rules differ most in the tails.</summary>
    /// <remarks>For the 95 % point of one sample of 40 skewed readings type 7 gives 39.4, type 8 44.2 and type 6 46.6 ppm: state the rule beside the figure.</remarks>
    public enum Rule
    {
        /// <summary>Position p (n − 1) + 1: what spreadsheets and most numerical libraries do; too low in the upper tail of small samples.</summary>
        Type7,

        /// <summary>Position p (n + 1): the mean rank; on average p of new readings lie below. Beyond the extremes it stays at the extreme.</summary>
        Type6,

        /// <summary>Position p (n + 1/3) + 1/3: about median-unbiased for any distribution; recommended by Hyndman and Fan.</summary>
        Type8,
    }

    /// <summary>Quantile of a sample.</summary>
    /// <param name="values">The sample, one value or more, in any order.</param>
    /// <param name="probability">Share of values below, 0 to 1.</param>
    /// <param name="rule">How to read between two values.</param>
    /// <returns>The quantile, in the unit of the values.</returns>
    /// <exception cref="ArgumentException">There are no values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double Of(ReadOnlySpan<double> values, double probability, Rule rule = Rule.Type7)
    {
        Numbers.AtLeast(values.Length, 1, nameof(values));
        Numbers.Check(values, nameof(values));
        Guard.InRange(probability, 0, 1, "");
        double n = values.Length;
        var rank = rule switch
        {
            Rule.Type6 => probability * (n + 1),
            Rule.Type8 => probability * (n + 1.0 / 3) + 1.0 / 3,
            _ => probability * (n - 1) + 1,
        };

        // A product such as 0.95 × 40 may miss a whole rank by rounding.
        var whole = Math.Round(rank);
        rank = Math.Abs(rank - whole) < 1e-9 ? whole : rank;
        return Selection.AtRank(values.ToArray(), Math.Min(Math.Max(rank, 1), n));
    }

    /// <summary>Confidence that the population's quantile lies between two values of a sample, whatever its distribution.</summary>
    /// <remarks>Σ C(n, i) p^i (1 − p)^(n − i) for i from the lower rank to the upper one less 1 (Conover 1980, section 3.2).</remarks>
    /// <param name="count">Number of values, n, 2 or more.</param>
    /// <param name="probability">Which quantile: share of the population below it, above 0 and below 1.</param>
    /// <param name="lowerOrder">Rank of the lower value, 1 for the smallest.</param>
    /// <param name="upperOrder">Rank of the upper value, above the lower one and up to n.</param>
    /// <returns>The confidence, 0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    internal static double BracketConfidence(int count, double probability, int lowerOrder, int upperOrder)
    {
        Numbers.InRange(count, 2, int.MaxValue, nameof(count));
        Guard.OpenUnitInterval(probability);
        Numbers.InRange(lowerOrder, 1, count - 1, nameof(lowerOrder));
        Numbers.InRange(upperOrder, lowerOrder + 1, count, nameof(upperOrder));
        return Math.Max(
            0,
            Binomial.CDF(probability, count, upperOrder - 1) - Binomial.CDF(probability, count, lowerOrder - 1)
        );
    }

    /// <summary>The narrowest pair of ranks, ends taken in turn, that holds a quantile with a confidence, whatever the distribution.</summary>
    /// <param name="values">The sample, in any order.</param>
    /// <param name="probability">Which quantile: share of the population below it, above 0 and below 1.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; each end may miss with half of the rest.</param>
    /// <returns>The pair, with the confidence that it has, which is at least the one asked for; or that the sample is too small.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static Interval IntervalOf(ReadOnlySpan<double> values, double probability, double confidence)
    {
        Numbers.Check(values, nameof(values));
        Guard.OpenUnitInterval(probability);
        Guard.OpenUnitInterval(confidence);
        var miss = (1 - confidence) / 2;
        var n = values.Length;

        // Lower rank l: chance that l − 1 values or fewer lie below the quantile. Upper rank u: chance that u or more do.
        var lower = 0;
        while (lower < n && Binomial.CDF(probability, n, lower) <= miss)
        {
            lower++;
        }

        var upper = n + 1;
        while (upper > 1 && 1 - Binomial.CDF(probability, n, upper - 2) <= miss)
        {
            upper--;
        }

        if (lower < 1 || upper > n || upper <= lower)
        {
            return Interval.Without(IntervalOutcome.TooFewReadings, confidence, IntervalSide.Both);
        }

        var sorted = values.ToArray();
        Array.Sort(sorted);
        return Interval.Between(sorted[lower - 1], sorted[upper - 1], BracketConfidence(n, probability, lower, upper));
    }
}
