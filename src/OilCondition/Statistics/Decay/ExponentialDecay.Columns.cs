using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Fits many series at once that lie end to end in columns, on all cores.</summary>
public readonly partial record struct ExponentialDecay
{
    /// <summary>Fits every series; each result is the one that <see cref="ExponentialDecay"/> gives for the series alone.</summary>
    /// <param name="offsets">Where each series begins in the columns, ascending, and at the end the length of the columns: one more than there are series.</param>
    /// <param name="times">Times of all series, one after the other.</param>
    /// <param name="values">Values of all series, one after the other.</param>
    /// <param name="options">Noise, bound, known parts, robustness, the same for all; null for the defaults.</param>
    /// <param name="cancellationToken">Stops the work between two groups of series.</param>
    /// <returns>One fit a series, in order.</returns>
    /// <exception cref="ArgumentException">The columns differ in length, or the offsets do not ascend from 0 to that length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or beyond 1e100, as in a single fit.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ExponentialDecay[] FitColumns(
        ReadOnlyMemory<int> offsets,
        ReadOnlyMemory<double> times,
        ReadOnlyMemory<double> values,
        ExponentialDecayOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        var stated = options ?? ExponentialDecayOptions.Default;
        SeriesColumns.Check(offsets.Span, times.Length);

        // All numbers are checked before any thread starts, so that an error is the plain one and not a bundle.
        ExponentialDecay.Check(times.Span, values.Span, default, stated);
        return SeriesColumns.Map(
            offsets,
            times,
            values,
            (t, y) => DecayFitter.Fit(t, y, default, stated, default, default),
            cancellationToken
        );
    }

    /// <summary>Fits every series and gives the intervals of its parts; each result is the one of <see cref="Analyze"/> for the series alone.</summary>
    /// <remarks>
    /// Intervals are of the profile likelihood, with a warning where residuals follow one another or contradict one exponential. Constant, proportional and logarithmic
    /// noise allocate nothing a series; a search for outliers and scatter of two components do, as without intervals.
    /// </remarks>
    /// <param name="offsets">Where each series begins in the columns, ascending, and at the end the length of the columns: one more than there are series.</param>
    /// <param name="times">Times of all series, one after the other.</param>
    /// <param name="values">Values of all series, one after the other.</param>
    /// <param name="confidence">Two-sided confidence level of each interval, above 0 and below 1.</param>
    /// <param name="options">Noise, bound, known parts, robustness, the same for all; null for the defaults.</param>
    /// <param name="cancellationToken">Stops the work between two groups of series.</param>
    /// <returns>One fit with its intervals a series, in order.</returns>
    /// <exception cref="ArgumentException">The columns differ in length, or the offsets do not ascend from 0 to that length.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or beyond 1e100, as in a single fit, or the level outside its range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static WithIntervals[] FitColumns(
        ReadOnlyMemory<int> offsets,
        ReadOnlyMemory<double> times,
        ReadOnlyMemory<double> values,
        double confidence,
        ExponentialDecayOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        var stated = options ?? ExponentialDecayOptions.Default;
        Guard.OpenUnitInterval(confidence);
        SeriesColumns.Check(offsets.Span, times.Length);
        ExponentialDecay.Check(times.Span, values.Span, default, stated);
        return SeriesColumns.Map<WithIntervals>(
            offsets,
            times,
            values,
            () => new DecayIntervals(stated, confidence).Of,
            cancellationToken
        );
    }
}
