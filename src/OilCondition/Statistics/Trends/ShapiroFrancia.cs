using MathNet.Numerics.Distributions;

namespace OilCondition.Statistics;

/// <summary>The Shapiro-Francia test: could these values be a sample from a normal distribution?</summary>
/// <remarks>
/// W' is the squared correlation of the sorted values with the normal quantiles at (i − 3/8)/(n + 1/4). ln(1 − W') is about normal with mean
/// −1.2725 + 1.0521 (v − u) and standard deviation 1.0308 − 0.26758 (v + 2/u), u = ln n, v = ln u (Royston 1993). Residuals of a
/// fit pass slightly more often than a sample does.
/// </remarks>
internal static class ShapiroFrancia
{
    /// <summary>Fewest values for which the formula holds.</summary>
    public const int LeastCount = 5;

    /// <summary>Most values for which the formula holds.</summary>
    public const int LargestCount = 5000;

    /// <summary>The probability of a sample that looks as far from normal, were the distribution normal.</summary>
    /// <param name="values">The sample, 5 to 5000 values in any order.</param>
    /// <returns>0 to 1; 1 if all values are equal, since nothing speaks against it.</returns>
    /// <exception cref="ArgumentException">There are fewer than 5 or more than 5000 values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite or beyond 1e100.</exception>
    public static double PValue(ReadOnlySpan<double> values)
    {
        var unexplained = 1 - Statistic(values);
        if (!(unexplained > 0))
        {
            return 1;
        }

        var u = Math.Log(values.Length);
        var v = Math.Log(u);
        var mean = -1.2725 + 1.0521 * (v - u);
        var deviation = 1.0308 - 0.26758 * (v + 2 / u);
        return NormalTail.Probability(-(Math.Log(unexplained) - mean) / deviation);
    }

    /// <summary>The statistic W'.</summary>
    /// <param name="values">The sample, 5 to 5000 values in any order.</param>
    /// <returns>0 to 1; 1 for a sample that is spaced exactly as a normal one, and if all values are equal.</returns>
    /// <exception cref="ArgumentException">There are fewer than 5 or more than 5000 values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite or beyond 1e100.</exception>
    public static double Statistic(ReadOnlySpan<double> values)
    {
        var n = values.Length;
        if (n is < LeastCount or > LargestCount)
        {
            throw new ArgumentException($"values has {n} values; allowed: 5 to 5000.", nameof(values));
        }

        Numbers.Check(values, nameof(values));
        var sorted = values.ToArray();
        Array.Sort(sorted);
        var mean = Numbers.Mean(sorted);
        double products = 0;
        double squares = 0;
        double quantileSquares = 0;
        for (var i = 0; i < n; i++)
        {
            var quantile = Normal.InvCDF(0, 1, (i + 1 - 0.375) / (n + 0.25));
            products += quantile * (sorted[i] - mean);
            squares += (sorted[i] - mean) * (sorted[i] - mean);
            quantileSquares += quantile * quantile;
        }

        return squares > 0 ? Math.Min(1, products * products / (squares * quantileSquares)) : 1;
    }
}
