namespace OilCondition.Statistics;

/// <summary>Many series that lie end to end in columns, worked on by all cores.</summary>
internal static class SeriesColumns
{
    private const int SeriesAtOnce = 128;

    public delegate TResult OfSeries<out TResult>(ReadOnlySpan<double> times, ReadOnlySpan<double> values);

    public static void Check(ReadOnlySpan<int> offsets, int length)
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

    public static TResult[] Map<TResult>(
        ReadOnlyMemory<int> offsets,
        ReadOnlyMemory<double> times,
        ReadOnlyMemory<double> values,
        OfSeries<TResult> work,
        CancellationToken cancellationToken
    ) => Map(offsets, times, values, () => work, cancellationToken);

    /// <summary>With work that has memory of its own, made once a thread.</summary>
    public static TResult[] Map<TResult>(
        ReadOnlyMemory<int> offsets,
        ReadOnlyMemory<double> times,
        ReadOnlyMemory<double> values,
        Func<OfSeries<TResult>> ofThread,
        CancellationToken cancellationToken
    )
    {
        var results = new TResult[offsets.Length - 1];
        var groups = (results.Length + SeriesAtOnce - 1) / SeriesAtOnce;
        Parallel.For(
            0,
            groups,
            new ParallelOptions { CancellationToken = cancellationToken },
            ofThread,
            (group, _, work) =>
            {
                var starts = offsets.Span;
                var last = Math.Min(results.Length, (group + 1) * SeriesAtOnce);
                for (var i = group * SeriesAtOnce; i < last; i++)
                {
                    var length = starts[i + 1] - starts[i];
                    results[i] = work(times.Span.Slice(starts[i], length), values.Span.Slice(starts[i], length));
                }

                return work;
            },
            _ => { }
        );
        return results;
    }
}
