using System.Globalization;

namespace OilCondition;

/// <summary>One filling of a machine, from one oil change to the next.</summary>
/// <remarks>
/// A charge is known by the day on which it went in, not by its number: a change that is entered late, or a history of the last two years only,
/// leaves the other charges their names. Oil changes within <see cref="Together"/> of each other are one: a change that two people
/// entered, or a flushing.
/// </remarks>
public sealed record OilCharge
{
    /// <summary>Changes no further apart than this are one change (our choice).</summary>
    internal static readonly TimeSpan Together = TimeSpan.FromHours(24);

    internal OilCharge(DateTimeOffset since, bool isDated)
    {
        Since = since;
        IsDated = isDated;
    }

    /// <summary>When it went in; where that is not known the first record, or the moment asked for where there is none.</summary>
    public DateTimeOffset Since { get; }

    /// <summary>Whether an oil change is on record that began it.</summary>
    public bool IsDated { get; }

    /// <summary>When each charge went in, of oil changes in order of time: of changes that belong together, the last.</summary>
    internal static IReadOnlyList<DateTimeOffset> Starts(IEnumerable<OilEvent> events)
    {
        var starts = new List<DateTimeOffset>();
        foreach (var change in events.OfType<OilChange>())
        {
            if (starts.Count > 0 && change.At - starts[starts.Count - 1] < Together)
            {
                starts.RemoveAt(starts.Count - 1);
            }

            starts.Add(change.At);
        }

        return starts;
    }

    /// <summary>The word used in alert keys: the day on which it went in, in UTC so that another offset in a file changes nothing.</summary>
    /// <returns>For example <c>2026-03-14</c>; <c>undated</c> where no oil change is on record.</returns>
    public override string ToString() =>
        IsDated ? Since.UtcDateTime.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "undated";
}
