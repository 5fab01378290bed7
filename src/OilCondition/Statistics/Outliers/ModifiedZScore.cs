using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Distances from the median in units of the median absolute deviation: a score that outliers do not spoil.</summary>
/// <remarks>
/// M = 0.6745 (x − median)/MAD, MAD the median of |x − median|; 0.6745 makes M a standard normal score for normal data. Values beyond 3.5 are
/// usually flagged (Iglewicz and Hoaglin 1993). For samples without trend.
/// </remarks>
public static class ModifiedZScore
{
    /// <summary>The usual mark: beyond it a value is flagged.</summary>
    public const double UsualMark = 3.5;

    /// <summary>Scores every value.</summary>
    /// <param name="values">The sample, one or more.</param>
    /// <param name="scores">Receives a score for each value; all 0 where there is none.</param>
    /// <returns>False where more than half of the values are equal, so that the MAD is 0 and there is no score.</returns>
    /// <exception cref="ArgumentException">There are no values, or the spans differ in length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite or beyond 1e100.</exception>
    public static bool TryScores(ReadOnlySpan<double> values, Span<double> scores)
    {
        Numbers.AtLeast(values.Length, 1, nameof(values));
        Numbers.Check(values, nameof(values));
        Guard.SameLength(scores.Length, values.Length, nameof(scores), nameof(values));
        var median = Numbers.Median(values);
        var deviation = Numbers.MedianAbsoluteDeviation(values, median);
        for (var i = 0; i < values.Length; i++)
        {
            scores[i] = deviation > 0 ? 0.6745 * (values[i] - median) / deviation : 0;
        }

        return deviation > 0;
    }
}
