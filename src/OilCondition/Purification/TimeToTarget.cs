using OilCondition.Guards;

namespace OilCondition.Purification;

/// <summary>When a cleanup reaches its target: exactly one of the nested cases.</summary>
/// <remarks>The interval is a profile-likelihood interval at the confidence level asked for; each bound is a moment in time.</remarks>
public abstract class TimeToTarget
{
    private TimeToTarget() { }

    /// <summary>The target is expected within bounds.</summary>
    public sealed class Expected : TimeToTarget
    {
        internal Expected(DateTimeOffset earliest, DateTimeOffset estimate, DateTimeOffset latest)
        {
            Earliest = earliest;
            Estimate = estimate;
            Latest = latest;
        }

        /// <summary>Earliest moment compatible with the readings.</summary>
        public DateTimeOffset Earliest { get; }

        /// <summary>When the best curve reaches the target.</summary>
        public DateTimeOffset Estimate { get; }

        /// <summary>Latest moment compatible with the readings.</summary>
        public DateTimeOffset Latest { get; }
    }

    /// <summary>The target may be reached from some moment on, but the readings do not show that it will be.</summary>
    public sealed class NotDemonstrated : TimeToTarget
    {
        internal NotDemonstrated(DateTimeOffset earliest) => Earliest = earliest;

        /// <summary>Earliest moment compatible with the readings.</summary>
        public DateTimeOffset Earliest { get; }
    }

    /// <summary>Every curve compatible with the readings levels off above the target.</summary>
    public sealed class OutOfReach : TimeToTarget
    {
        internal OutOfReach(double floor) => Floor = floor;

        /// <summary>Where the best curve levels off, in the unit of the readings.</summary>
        public double Floor { get; }
    }

    /// <summary>The fitted curve is at or below the target already.</summary>
    public sealed class Reached : TimeToTarget
    {
        internal Reached(DateTimeOffset at) => At = at;

        /// <summary>When the best curve reached the target; the start of the run when it began below.</summary>
        public DateTimeOffset At { get; }
    }

    /// <summary>There are too few readings for a curve.</summary>
    public sealed class TooFewReadings : TimeToTarget
    {
        internal TooFewReadings(int count, int needed)
        {
            Count = Math.Max(0, count);
            Needed = (int)Guard.Positive(needed, "", nameof(needed));
        }

        /// <summary>Readings there are.</summary>
        public int Count { get; }

        /// <summary>Readings needed.</summary>
        public int Needed { get; }
    }
}
