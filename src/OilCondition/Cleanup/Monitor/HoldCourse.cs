namespace OilCondition.Cleanup;

/// <summary>Whether one part of a target holds, has held, and was lost again: read from the marks in order of time.</summary>
internal sealed class HoldCourse
{
    public HoldCourse(IEnumerable<HoldMarks> cells, TimeSpan holdFor, TimeSpan longestGap)
    {
        DateTimeOffset last = default;
        foreach (var cell in cells)
        {
            if (cell.Above is { } above)
            {
                // A cell with readings on both sides is above: the hold begins with the next one.
                if (IsMet)
                {
                    ReboundAt = above;
                    LostFrom = HeldFrom;
                }

                IsMet = false;
                Since = null;
            }
            else if (cell.IsCold)
            {
                Since = null;
            }
            else if (cell is { FirstBelow: { } first, LastBelow: { } latest })
            {
                Since = Since is null || (first - last).TotalHours > longestGap.TotalHours ? first : Since;
                last = latest;
                if (!IsMet && (latest - Since.Value).TotalHours >= holdFor.TotalHours)
                {
                    IsMet = true;
                    MetAt = Since.Value.AddHours(holdFor.TotalHours);
                    HeldFrom = Since.Value;
                }
            }
        }
    }

    /// <summary>Since when it holds; null where it does not.</summary>
    public DateTimeOffset? Since { get; }

    /// <summary>Whether it has held for long enough and was not lost since; whether that shows that it is there is another matter.</summary>
    public bool IsMet { get; }

    /// <summary>When it last came to be met.</summary>
    public DateTimeOffset MetAt { get; }

    /// <summary>Since when it had held then.</summary>
    public DateTimeOffset HeldFrom { get; }

    /// <summary>Since when it had held before that.</summary>
    public DateTimeOffset? LostFrom { get; }

    /// <summary>When it was last above the target after having been met.</summary>
    public DateTimeOffset? ReboundAt { get; }
}
