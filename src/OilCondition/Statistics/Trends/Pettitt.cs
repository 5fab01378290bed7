namespace OilCondition.Statistics;

/// <summary>Pettitt's rank test for one change of level at an unknown place.</summary>
/// <remarks>
/// U_k = 2 Σ_(i ≤ k) r_i − k (n + 1) with the ranks r (ties share theirs); K = max |U_k|; p ≈ 2 exp(−6 K²/(n³ + n²)) (Pettitt 1979). It takes a
/// steady trend for a change as well: look for a trend first, or use <see cref="LineStep"/>. Values must be independent.
/// </remarks>
public static class Pettitt
{
    /// <summary>Finds the likeliest change and its probability.</summary>
    /// <param name="values">Values in the order of time, two or more.</param>
    /// <returns>Place, K and probability; where all values are equal K is 0 and the probability 1.</returns>
    /// <exception cref="ArgumentException">There are fewer than two values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite or beyond 1e100.</exception>
    public static PettittResult Test(ReadOnlySpan<double> values)
    {
        Numbers.AtLeast(values.Length, 2, nameof(values));
        Numbers.Check(values, nameof(values));
        var n = values.Length;
        var ranks = Ranks(values);
        double sum = 0;
        double largest = 0;
        var firstAfter = 1;
        for (var k = 1; k < n; k++)
        {
            sum += ranks[k - 1];
            var u = Math.Abs(2 * sum - k * (n + 1.0));
            if (u > largest)
            {
                largest = u;
                firstAfter = k;
            }
        }

        var pValue = 2 * Math.Exp(-6 * largest * largest / ((n + 1.0) * n * n));
        return new PettittResult(n, firstAfter, largest, Math.Min(1, pValue));
    }

    /// <summary>Ranks from 1; equal values share the mean of theirs.</summary>
    private static double[] Ranks(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        var places = new int[sorted.Length];
        for (var i = 0; i < places.Length; i++)
        {
            places[i] = i;
        }

        Array.Sort(sorted, places);
        var ranks = new double[sorted.Length];
        for (var start = 0; start < sorted.Length; )
        {
            var end = start + 1;
            while (end < sorted.Length && sorted[end] <= sorted[start])
            {
                end++;
            }

            for (var i = start; i < end; i++)
            {
                ranks[places[i]] = (start + 1 + end) / 2.0;
            }

            start = end;
        }

        return ranks;
    }
}
