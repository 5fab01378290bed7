using MathNet.Numerics.Distributions;

namespace OilCondition.Statistics;

/// <summary>Grubbs' test for one outlier in a normal sample without trend.</summary>
/// <remarks>
/// G = distance of the most distant value from the mean/standard deviation. Critical value (n − 1)/sqrt(n) × sqrt(t²/(n − 2 + t²)) with t the
/// Student quantile of n − 2 degrees for significance/(2n) on both sides, significance/n on one (Grubbs 1969; NIST/SEMATECH e-Handbook,
/// section 1.3.5.17.1). Test residuals, never a series with a trend; where there may be several outliers, they hide each other: use
/// <see cref="GeneralisedEsd"/>.
/// </remarks>
public static class Grubbs
{
    /// <summary>Tests the most distant value.</summary>
    /// <param name="values">The sample, three or more.</param>
    /// <param name="side">On which side an outlier is looked for.</param>
    /// <param name="significance">Chance of calling a sound sample's value an outlier, above 0 and below 0.5.</param>
    /// <returns>The value, its distance and the critical one; distance 0 where all values are equal.</returns>
    /// <exception cref="ArgumentException">There are fewer than three values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static GrubbsResult Test(
        ReadOnlySpan<double> values,
        OutlierSide side = OutlierSide.Both,
        double significance = 0.05
    )
    {
        Numbers.AtLeast(values.Length, 3, nameof(values));
        Numbers.Check(values, nameof(values));
        var critical = CriticalValue(values.Length, side, significance);
        var mean = Numbers.Mean(values);
        var deviation = Math.Sqrt(Numbers.SumOfSquaresAbout(values, mean) / (values.Length - 1));
        var index = 0;
        var largest = double.MinValue;
        for (var i = 0; i < values.Length; i++)
        {
            var distance = side switch
            {
                OutlierSide.Largest => values[i] - mean,
                OutlierSide.Smallest => mean - values[i],
                _ => Math.Abs(values[i] - mean),
            };
            if (distance > largest)
            {
                largest = distance;
                index = i;
            }
        }

        return new GrubbsResult(index, deviation > 0 ? largest / deviation : 0, critical);
    }

    /// <summary>The distance from the mean, in standard deviations, that the most distant of n sound values passes with the given chance.</summary>
    /// <param name="count">Number of values, n, 3 or more.</param>
    /// <param name="side">On which side an outlier is looked for.</param>
    /// <param name="significance">The chance, above 0 and below 0.5.</param>
    /// <returns>The critical value of G.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double CriticalValue(int count, OutlierSide side = OutlierSide.Both, double significance = 0.05)
    {
        Numbers.InRange(count, 3, int.MaxValue, nameof(count));
        CheckSignificance(significance);
        return CriticalDistance(count, significance / (side == OutlierSide.Both ? 2.0 * count : count));
    }

    internal static double CheckSignificance(double significance) =>
        significance > 0 && significance < 0.5
            ? significance
            : throw new ArgumentOutOfRangeException(
                nameof(significance),
                $"significance is {significance:G7}; allowed: above 0 and below 0.5."
            );

    internal static double CriticalDistance(int count, double tail)
    {
        var t = StudentT.InvCDF(0, 1, count - 2, 1 - tail);
        return (count - 1) / Math.Sqrt(count) * Math.Sqrt(t * t / (count - 2 + t * t));
    }
}
