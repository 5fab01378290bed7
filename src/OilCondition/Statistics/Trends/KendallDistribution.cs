namespace OilCondition.Statistics;

/// <summary>The distribution of Kendall's score S when nothing is tied and every order of the values is equally likely.</summary>
/// <remarks>
/// S = N − 2K with N = n(n − 1)/2 pairs and K inversions. The chance of K inversions among n values is the mean of the chances of
/// K, K − 1, … K − n + 1 inversions among n − 1 values (Kendall 1938; the recursion is exact). With ties it does not hold.
/// </remarks>
internal static class KendallDistribution
{
    /// <summary>Largest number of values for which the distribution is offered; far above it the normal one is as good.</summary>
    public const int LargestCount = 100;

    /// <summary>The chance of a score as large as a given one, or larger.</summary>
    /// <param name="count">Number of values, n, 1 to 100.</param>
    /// <param name="score">S.</param>
    /// <returns>P(S ≥ score), 0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number of values is not 1 to 100.</exception>
    public static double AtLeast(int count, int score)
    {
        Numbers.InRange(count, 1, LargestCount, nameof(count));
        var pairs = count * (count - 1) / 2;
        if (score <= -pairs || score > pairs)
        {
            return score > pairs ? 0 : 1;
        }

        // Halving towards fewer inversions: S has the parity of N, and 'at least' rounds up.
        var inversions = (pairs - score) / 2;
        return 2 * inversions < pairs
            ? AtMostInversions(count, inversions)
            : 1 - (inversions >= pairs ? 0 : AtMostInversions(count, pairs - inversions - 1));
    }

    /// <summary>P(K ≤ most), for at most half of the pairs, where the recursion only adds what it later needs.</summary>
    private static double AtMostInversions(int count, int most)
    {
        var chance = new double[most + 1];
        var next = new double[most + 1];
        chance[0] = 1;
        for (var n = 2; n <= count; n++)
        {
            double window = 0;
            for (var k = 0; k <= most; k++)
            {
                window += chance[k];
                if (k >= n)
                {
                    window -= chance[k - n];
                }

                next[k] = Math.Max(window, 0) / n;
            }

            (chance, next) = (next, chance);
        }

        double sum = 0;
        foreach (var c in chance)
        {
            sum += c;
        }

        return Math.Min(sum, 1);
    }
}
