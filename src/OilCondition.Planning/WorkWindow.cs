using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>A stretch of time: an outage, reachable hours, a shift of a crew, or hours in which the unit is away.</summary>
public sealed class WorkWindow
{
    /// <summary>States a stretch of time.</summary>
    /// <param name="from">Its begin.</param>
    /// <param name="to">Its end, after the begin.</param>
    /// <exception cref="ArgumentOutOfRangeException">The end is not after the begin, or a moment is outside 1900 to 2199.</exception>
    public WorkWindow(DateTimeOffset from, DateTimeOffset to)
    {
        From = Guard.Moment(from);
        To = Guard.Moment(to);
        if (to <= from)
        {
            throw new ArgumentOutOfRangeException(
                nameof(to),
                $"to is {PlainText.Time(to)}; allowed: after from, {PlainText.Time(from)}."
            );
        }
    }

    /// <summary>Begin.</summary>
    public DateTimeOffset From { get; }

    /// <summary>End.</summary>
    public DateTimeOffset To { get; }

    /// <summary>How long it is.</summary>
    public TimeSpan Length => To - From;

    /// <inheritdoc/>
    public override string ToString() => $"{PlainText.Time(From)} to {PlainText.Time(To)}";

    /// <summary>The same hours on each of several days, such as the shift of a crew.</summary>
    /// <param name="from">Begin on the first day.</param>
    /// <param name="to">End on the first day, after the begin.</param>
    /// <param name="count">Number of days in a row, 1 to 3660. The offset of the first day is kept.</param>
    /// <returns>One window a day.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A moment or the number of days is out of range.</exception>
    public static IReadOnlyList<WorkWindow> Daily(DateTimeOffset from, DateTimeOffset to, int count)
    {
        Guard.InRange(count, 1, 3660, "days");
        return [.. Enumerable.Range(0, count).Select(day => new WorkWindow(from.AddDays(day), to.AddDays(day)))];
    }
}
