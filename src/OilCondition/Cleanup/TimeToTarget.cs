using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Cleanup;

/// <summary>When a cleanup reaches its target: exactly one of the nested cases.</summary>
/// <remarks>
/// The ends are of the profile likelihood at the level asked for; each is a moment in time. Ends more than ten years after the start of
/// the curve are given as ten years.
/// </remarks>
public abstract class TimeToTarget
{
    private readonly Basis basis;

    private TimeToTarget(in Basis basis) => this.basis = basis;

    /// <summary>Confidence level.</summary>
    public double Confidence => basis.Confidence;

    /// <summary>Which ends were asked for.</summary>
    public IntervalSide Side => basis.Side;

    /// <summary>Whether the readings follow one another so closely that the ends hold less often than stated.</summary>
    public bool CoverageInDoubt => basis.CoverageInDoubt;

    /// <summary>How many time constants the readings span. Below about two an open end is the usual and right answer.</summary>
    public double ObservedTimeConstants => basis.ObservedTimeConstants;

    internal readonly record struct Basis(
        double Confidence,
        IntervalSide Side,
        bool CoverageInDoubt,
        double ObservedTimeConstants
    );

    /// <summary>The target is expected within bounds; both ends were asked for.</summary>
    public sealed class Expected : TimeToTarget
    {
        internal Expected(in Basis basis, DateTimeOffset earliest, DateTimeOffset estimate, DateTimeOffset latest)
            : base(basis)
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

    /// <summary>The target is expected to be reached by a moment; only the late end was asked for.</summary>
    public sealed class DoneBy : TimeToTarget
    {
        internal DoneBy(in Basis basis, DateTimeOffset estimate, DateTimeOffset latest)
            : base(basis)
        {
            Estimate = estimate;
            Latest = latest;
        }

        /// <summary>When the best curve reaches the target.</summary>
        public DateTimeOffset Estimate { get; }

        /// <summary>Latest moment compatible with the readings.</summary>
        public DateTimeOffset Latest { get; }
    }

    /// <summary>The target is not reached before a moment; only the early end was asked for.</summary>
    public sealed class NotBefore : TimeToTarget
    {
        internal NotBefore(in Basis basis, DateTimeOffset earliest, bool hasEstimate, DateTimeOffset estimate)
            : base(basis)
        {
            Earliest = earliest;
            HasEstimate = hasEstimate;
            Estimate = hasEstimate ? estimate : earliest;
        }

        /// <summary>Earliest moment compatible with the readings.</summary>
        public DateTimeOffset Earliest { get; }

        /// <summary>Whether the best curve reaches the target.</summary>
        public bool HasEstimate { get; }

        /// <summary>When the best curve reaches the target; the earliest moment where it does not.</summary>
        public DateTimeOffset Estimate { get; }
    }

    /// <summary>The target may be reached from some moment on, but the readings do not show that it will be.</summary>
    public sealed class NotDemonstrated : TimeToTarget
    {
        internal NotDemonstrated(in Basis basis, DateTimeOffset earliest)
            : base(basis) => Earliest = earliest;

        /// <summary>Earliest moment compatible with the readings.</summary>
        public DateTimeOffset Earliest { get; }
    }

    /// <summary>Every curve compatible with the readings levels off above the target.</summary>
    public sealed class OutOfReach : TimeToTarget
    {
        internal OutOfReach(in Basis basis, double floor)
            : base(basis) => Floor = floor;

        /// <summary>Where the best curve levels off, in the unit of the readings.</summary>
        public double Floor { get; }
    }

    /// <summary>The fitted curve is at or below the target already.</summary>
    public sealed class Reached : TimeToTarget
    {
        internal Reached(in Basis basis, DateTimeOffset at, bool isDemonstrated)
            : base(basis)
        {
            At = at;
            IsDemonstrated = isDemonstrated;
        }

        /// <summary>When the best curve reached the target; the start of the curve when it began below.</summary>
        public DateTimeOffset At { get; }

        /// <summary>
        /// Whether every curve compatible with the readings is at or below the target at the last of them: with scatter the best curve
        /// passes the target before that is shown.
        /// </summary>
        public bool IsDemonstrated { get; }
    }

    /// <summary>There are too few readings for a curve.</summary>
    public sealed class TooFewReadings : TimeToTarget
    {
        internal TooFewReadings(in Basis basis, int count, int needed)
            : base(basis)
        {
            Count = Math.Max(0, count);
            Needed = (int)Guard.Positive(needed, "");
        }

        /// <summary>Readings there are.</summary>
        public int Count { get; }

        /// <summary>Readings needed.</summary>
        public int Needed { get; }
    }

    /// <summary>Readings lie below a limit such as '&lt;10', and too few of the others are left to tell where a curve runs.</summary>
    public sealed class TooFewAboveLimit : TimeToTarget
    {
        internal TooFewAboveLimit(in Basis basis, int aboveLimitCount, int needed)
            : base(basis)
        {
            AboveLimitCount = aboveLimitCount;
            Needed = needed;
        }

        /// <summary>Readings above their limit.</summary>
        public int AboveLimitCount { get; }

        /// <summary>Readings above their limit that are needed, at three different times.</summary>
        public int Needed { get; }
    }
}
