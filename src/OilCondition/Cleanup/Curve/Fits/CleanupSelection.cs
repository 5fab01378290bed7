namespace OilCondition.Cleanup;

/// <summary>Which readings belong to the exponential stage of a run, in order of time, and which are left out and why.</summary>
/// <remarks>Markers come first: a stated start, the last reading at saturation, the last above the content of free water. The shape is asked only where there is none.</remarks>
internal sealed class CleanupSelection
{
    public CleanupSelection(
        IReadOnlyList<DateTimeOffset> moments,
        IReadOnlyList<Reading> readings,
        double?[] celsius,
        CleanupOptions options
    )
    {
        // A tie in time keeps the larger reading first, so that the order of the rows changes nothing.
        List<int> left =
        [
            .. Enumerable
                .Range(0, moments.Count)
                .OrderBy(i => moments[i])
                .ThenByDescending(i => readings[i].Value)
                .ThenBy(i => readings[i].Qualifier),
        ];
        var leftOut = new List<int>();
        var reasons = new List<InitialPhaseReason>();
        void LeaveOut(int count, InitialPhaseReason reason)
        {
            leftOut.AddRange(left.Take(count));
            reasons.AddRange(Enumerable.Repeat(reason, count));
            left.RemoveRange(0, count);
        }

        if (options.StartedAt is { } from)
        {
            LeaveOut(left.Count(i => moments[i] < from), InitialPhaseReason.BeforeStatedStart);
        }

        LeaveOut(
            1 + left.FindLastIndex(i => readings[i].Qualifier == Qualifier.GreaterThan),
            InitialPhaseReason.UpToLastSaturated
        );
        if (options.FreeWaterAbove is { } limit)
        {
            LeaveOut(
                1 + left.FindLastIndex(i => readings[i].Value > limit && readings[i].Qualifier != Qualifier.LessThan),
                InitialPhaseReason.UpToLastFreeWater
            );
        }

        var marked = options.StartedAt.HasValue || options.Start.HasValue || leftOut.Count > 0;
        if (options.DetectsSlowStart && !marked && !WarmingClocks.Move([.. left.Select(i => celsius[i])]))
        {
            var plain = left.Where(i => readings[i].Qualifier != Qualifier.LessThan).ToList();
            var slow = SlowStart.Count(
                [.. plain.Select(i => (moments[i] - moments[plain[0]]).TotalHours)],
                [.. plain.Select(i => readings[i].Value)],
                options.Decay
            );
            LeaveOut(slow == 0 ? 0 : 1 + left.IndexOf(plain[slow - 1]), InitialPhaseReason.SlowStart);
        }

        Used = left;
        LeftOut = leftOut;
        Reasons = reasons;
        Begins = left.Count == 0 ? options.StartedAt ?? default : moments[left[0]];
        Origin = options.Start.HasValue ? options.StartedAt ?? Begins : Begins;
        Ends = left.Count == 0 ? Origin : moments[left[left.Count - 1]];
    }

    /// <summary>Positions in the lists given.</summary>
    public IReadOnlyList<int> Used { get; }

    /// <summary>Positions in the lists given.</summary>
    public IReadOnlyList<int> LeftOut { get; }

    /// <summary>Why, one for each reading left out.</summary>
    public IReadOnlyList<InitialPhaseReason> Reasons { get; }

    /// <summary>The first reading used.</summary>
    public DateTimeOffset Begins { get; }

    /// <summary>Where the curve begins.</summary>
    public DateTimeOffset Origin { get; }

    /// <summary>The last reading used.</summary>
    public DateTimeOffset Ends { get; }
}
