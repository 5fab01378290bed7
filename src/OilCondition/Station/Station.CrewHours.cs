using OilCondition.Text;

namespace OilCondition;

public sealed partial class Station
{
    /// <summary>The hours of a day, and the days of a week, in which the plant's crew can connect a unit and take it off.</summary>
    public sealed record CrewHours
    {
        /// <summary>States the hours.</summary>
        /// <param name="from">Begin of the shift after midnight, 0 to 24 h.</param>
        /// <param name="to">Its end after midnight, after the begin, at most 24 h.</param>
        /// <param name="days">The days, at least one; null for every day.</param>
        /// <exception cref="ArgumentException">There is no day.</exception>
        /// <exception cref="ArgumentOutOfRangeException">An hour is out of range, or the end is not after the begin.</exception>
        public CrewHours(TimeSpan from, TimeSpan to, IReadOnlyList<DayOfWeek>? days = null)
        {
            Guard.InRange(from.TotalHours, 0, 24, "h", nameof(from));
            Guard.InRange(to.TotalHours, 0, 24, "h", nameof(to));
            if (to <= from)
            {
                throw new ArgumentOutOfRangeException(
                    nameof(to),
                    $"to is {PlainText.Number(to.TotalHours)} h; allowed: after {PlainText.Number(from.TotalHours)} h, and at most 24 h."
                );
            }

            if (days is { Count: 0 })
            {
                throw new ArgumentException("days is empty; at least one is expected.", nameof(days));
            }

            From = from;
            To = to;
            Days = days is null ? JsonEntry.Members<DayOfWeek>() : [.. days.Distinct()];
        }

        /// <summary>Begin of the shift after midnight.</summary>
        public TimeSpan From { get; }

        /// <summary>Its end after midnight.</summary>
        public TimeSpan To { get; }

        /// <summary>The days.</summary>
        public IReadOnlyList<DayOfWeek> Days { get; }

        /// <summary>Hours and number of days.</summary>
        /// <returns>For example <c>7 to 17 h on 5 days a week</c>.</returns>
        public override string ToString() =>
            $"{PlainText.Number(From.TotalHours)} to {PlainText.Number(To.TotalHours)} h on {Days.Count} days a week";
    }
}
