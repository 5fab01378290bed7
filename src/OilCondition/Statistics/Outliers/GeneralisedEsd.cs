namespace OilCondition.Statistics;

/// <summary>The generalised extreme studentised deviate test: how many outliers, up to a given number, are in a normal sample without trend?</summary>
/// <remarks>
/// Step i takes out the value most distant from the mean, R_i = distance/standard deviation of those left. λ_i = (m − 1) t/sqrt((m − 2 + t²) m) with
/// m = n − i + 1 values left and t the Student quantile of m − 2 degrees for significance/(2m). The number of outliers is the largest i with
/// R_i > λ_i, though earlier steps may fail: outliers mask each other (Rosner 1983; NIST/SEMATECH e-Handbook, section 1.3.5.17.3). Accurate
/// from about 25 values, fair from 15. Test residuals, never a series with a trend. An outlier is a question to the laboratory, not
/// an error to be wiped away: flag it and keep it.
/// </remarks>
internal static class GeneralisedEsd
{
    private const int MostOnStack = 128;

    /// <summary>Looks for outliers.</summary>
    /// <param name="values">The sample, three or more.</param>
    /// <param name="maximum">Most outliers looked for, 1 to two fewer than there are values; too few can hide them all.</param>
    /// <param name="significance">Chance of any outlier in a sound sample, above 0 and below 0.5.</param>
    /// <returns>Steps and outliers.</returns>
    /// <exception cref="ArgumentException">There are fewer than three values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static GeneralisedEsdResult Find(ReadOnlySpan<double> values, int maximum, double significance = 0.05)
    {
        Numbers.AtLeast(values.Length, 3, nameof(values));
        Numbers.Check(values, nameof(values));
        Numbers.InRange(maximum, 1, values.Length - 2, nameof(maximum));
        if (!(significance > 0 && significance < 0.5))
        {
            throw new ArgumentOutOfRangeException(
                nameof(significance),
                $"significance is {significance:G7}; allowed: above 0 and below 0.5."
            );
        }

        var left = values.Length <= MostOnStack ? stackalloc double[values.Length] : new double[values.Length];
        var indexes = values.Length <= MostOnStack ? stackalloc int[values.Length] : new int[values.Length];
        values.CopyTo(left);
        for (var i = 0; i < indexes.Length; i++)
        {
            indexes[i] = i;
        }

        var steps = new EsdStep[maximum];
        for (var step = 0; step < maximum; step++)
        {
            var count = left.Length - step;
            var rest = left[..count];
            var mean = Numbers.Mean(rest);
            var deviation = Math.Sqrt(Numbers.SumOfSquaresAbout(rest, mean) / (count - 1));
            var most = 0;
            for (var i = 1; i < count; i++)
            {
                most = Math.Abs(left[i] - mean) > Math.Abs(left[most] - mean) ? i : most;
            }

            var statistic = deviation > 0 ? Math.Abs(left[most] - mean) / deviation : 0;
            steps[step] = new EsdStep(indexes[most], statistic, CriticalValue(count, significance / (2.0 * count)));
            left[most] = left[count - 1];
            indexes[most] = indexes[count - 1];
        }

        return new GeneralisedEsdResult(steps);
    }

    /// <summary>The distance from the mean, in standard deviations, that the most distant of n sound values passes with a chance of n times the tail on either side.</summary>
    public static double CriticalValue(int count, double tail)
    {
        var t = StudentDistribution.Quantile(1 - tail, count - 2);
        return (count - 1) / Math.Sqrt(count) * Math.Sqrt(t * t / (count - 2 + t * t));
    }
}
