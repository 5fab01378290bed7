using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Trends of many series at once that lie end to end in columns, on all cores: one result a series, that of the series alone.</summary>
/// <remarks>
/// All take <c>offsets</c>: where each series begins in the columns, ascending, and at the end the length of the columns, one more than there are
/// series. All numbers are checked before any work starts; a series too short to say anything has a result that says so.
/// </remarks>
public static class TrendColumns
{
    /// <summary>Straight lines, as <see cref="StraightLine.Fit"/>.</summary>
    /// <param name="offsets">Where each series begins in the columns, and the end.</param>
    /// <param name="times">Times of all series, one after the other.</param>
    /// <param name="values">Values of all series, one after the other.</param>
    /// <param name="cancellationToken">Stops the work between two groups of series.</param>
    /// <returns>One fit a series, in order.</returns>
    /// <exception cref="ArgumentException">The columns differ in length, or the offsets do not ascend from 0 to that length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or beyond 1e100.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static StraightLineFit[] Lines(
        ReadOnlyMemory<int> offsets,
        ReadOnlyMemory<double> times,
        ReadOnlyMemory<double> values,
        CancellationToken cancellationToken = default
    )
    {
        Check(offsets.Span, times.Span, values.Span, int.MaxValue);
        return SeriesColumns.Map(offsets, times, values, StraightLine.Fit, cancellationToken);
    }

    /// <summary>Theil-Sen lines, as <see cref="TheilSen.Fit"/>.</summary>
    /// <param name="offsets">Where each series begins in the columns, and the end; at most 5000 readings a series.</param>
    /// <param name="times">Times of all series, one after the other.</param>
    /// <param name="values">Values of all series, one after the other.</param>
    /// <param name="confidence">Two-sided confidence level of the intervals, above 0 and below 1.</param>
    /// <param name="rankRule">How the ends are read from the sorted slopes.</param>
    /// <param name="cancellationToken">Stops the work between two groups of series.</param>
    /// <returns>One fit a series, in order.</returns>
    /// <exception cref="ArgumentException">The columns differ in length, a series is too long, or the offsets do not ascend from 0 to that length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or beyond 1e100, or the confidence out of range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static TheilSenFit[] TheilSenLines(
        ReadOnlyMemory<int> offsets,
        ReadOnlyMemory<double> times,
        ReadOnlyMemory<double> values,
        double confidence = 0.95,
        TheilSenRankRule rankRule = TheilSenRankRule.Interpolated,
        CancellationToken cancellationToken = default
    )
    {
        Guard.OpenUnitInterval(confidence);
        Check(offsets.Span, times.Span, values.Span, TheilSen.LargestCount);
        return SeriesColumns.Map(
            offsets,
            times,
            values,
            (t, y) => TheilSen.Fit(t, y, default, confidence, rankRule),
            cancellationToken
        );
    }

    /// <summary>Mann-Kendall tests, as <see cref="MannKendall.Test"/>.</summary>
    /// <param name="offsets">Where each series begins in the columns, and the end; at most 20 000 readings a series.</param>
    /// <param name="times">Times of all series, one after the other.</param>
    /// <param name="values">Values of all series, one after the other.</param>
    /// <param name="cancellationToken">Stops the work between two groups of series.</param>
    /// <returns>One result a series, in order.</returns>
    /// <exception cref="ArgumentException">The columns differ in length, a series is too long, or the offsets do not ascend from 0 to that length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or beyond 1e100.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static MannKendallResult[] MannKendallTests(
        ReadOnlyMemory<int> offsets,
        ReadOnlyMemory<double> times,
        ReadOnlyMemory<double> values,
        CancellationToken cancellationToken = default
    )
    {
        Check(offsets.Span, times.Span, values.Span, MannKendall.LargestCount);
        return SeriesColumns.Map(offsets, times, values, (t, y) => MannKendall.Test(t, y), cancellationToken);
    }

    private static void Check(
        ReadOnlySpan<int> offsets,
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        int largestCount
    )
    {
        Numbers.CheckPairs(times, values, nameof(times), nameof(values));
        SeriesColumns.Check(offsets, times.Length);
        for (var i = 1; i < offsets.Length; i++)
        {
            if (offsets[i] - offsets[i - 1] > largestCount)
            {
                throw new ArgumentException(
                    $"offsets holds a series of {offsets[i] - offsets[i - 1]} readings; allowed: up to {largestCount}.",
                    nameof(offsets)
                );
            }
        }
    }
}
