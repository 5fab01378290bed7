namespace OilCondition.Statistics;

/// <summary>Fits many series at once that lie end to end in columns, on all cores.</summary>
public static class ExponentialDecayColumns
{
    private const int SeriesAtOnce = 128;

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
    public static ExponentialDecayFit[] Fit(
        ReadOnlyMemory<int> offsets,
        ReadOnlyMemory<double> times,
        ReadOnlyMemory<double> values,
        ExponentialDecayOptions? options = null,
        CancellationToken cancellationToken = default
    )
    {
        var stated = options ?? ExponentialDecayOptions.Default;
        CheckOffsets(offsets.Span, times.Length);

        // All numbers are checked before any thread starts, so that an error is the plain one and not a bundle.
        ExponentialDecay.Check(times.Span, values.Span, default, stated);
        var fits = new ExponentialDecayFit[offsets.Length - 1];
        var groups = (fits.Length + SeriesAtOnce - 1) / SeriesAtOnce;
        Parallel.For(
            0,
            groups,
            new ParallelOptions { CancellationToken = cancellationToken },
            group =>
            {
                var starts = offsets.Span;
                var last = Math.Min(fits.Length, (group + 1) * SeriesAtOnce);
                for (var i = group * SeriesAtOnce; i < last; i++)
                {
                    var length = starts[i + 1] - starts[i];
                    fits[i] = DecayFitter.Fit(
                        times.Span.Slice(starts[i], length),
                        values.Span.Slice(starts[i], length),
                        default,
                        stated,
                        default,
                        default
                    );
                }
            }
        );
        return fits;
    }

    private static void CheckOffsets(ReadOnlySpan<int> offsets, int length)
    {
        var ascends = offsets.Length > 0 && offsets[0] == 0 && offsets[offsets.Length - 1] == length;
        for (var i = 1; ascends && i < offsets.Length; i++)
        {
            ascends = offsets[i] >= offsets[i - 1];
        }

        if (!ascends)
        {
            throw new ArgumentException(
                $"offsets must ascend from 0 to the length of the columns, {length}.",
                nameof(offsets)
            );
        }
    }
}
