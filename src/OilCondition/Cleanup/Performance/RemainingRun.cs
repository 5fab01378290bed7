using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>What is still to run from a stated moment until a target: the case, and the times and turnovers that it has.</summary>
public sealed class RemainingRun
{
    private readonly double turnoversPerHour;

    internal RemainingRun(TimeToTarget timeToTarget, DateTimeOffset asOf, double turnoversPerHour)
    {
        TimeToTarget = timeToTarget;
        AsOf = asOf;
        this.turnoversPerHour = turnoversPerHour;
        var (earliest, estimate, latest) = timeToTarget switch
        {
            TimeToTarget.Expected it => (it.Earliest, it.Estimate, it.Latest),
            TimeToTarget.DoneBy it => (default(DateTimeOffset?), it.Estimate, it.Latest),
            TimeToTarget.NotBefore it => (it.Earliest, it.HasEstimate ? it.Estimate : null, null),
            TimeToTarget.NotDemonstrated it => (it.Earliest, null, null),
            TimeToTarget.Reached it => (it.At, it.At, it.At),
            _ => (default(DateTimeOffset?), default(DateTimeOffset?), default(DateTimeOffset?)),
        };
        HasEarliest = earliest.HasValue;
        Earliest = From(earliest);
        HasEstimate = estimate.HasValue;
        Estimate = From(estimate);
        HasLatest = latest.HasValue;
        Latest = From(latest);
    }

    /// <summary>When the target is reached, or why that is not known.</summary>
    public TimeToTarget TimeToTarget { get; }

    /// <summary>The moment from which it is counted.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>Whether there is an early end.</summary>
    public bool HasEarliest { get; }

    /// <summary>Least time to run; 0 where there is none, and where the target was passed before.</summary>
    public TimeSpan Earliest { get; }

    /// <summary>Whether the best curve reaches the target.</summary>
    public bool HasEstimate { get; }

    /// <summary>Time to run by the best curve; 0 where it does not reach the target, and where it passed it before.</summary>
    public TimeSpan Estimate { get; }

    /// <summary>Whether there is a late end.</summary>
    public bool HasLatest { get; }

    /// <summary>Longest time to run; 0 where there is none, and where the target was passed before.</summary>
    public TimeSpan Latest { get; }

    /// <summary>Turnovers in the least time.</summary>
    public double EarliestTurnovers => Earliest.TotalHours * turnoversPerHour;

    /// <summary>Turnovers in the time by the best curve.</summary>
    public double EstimateTurnovers => Estimate.TotalHours * turnoversPerHour;

    /// <summary>Turnovers in the longest time.</summary>
    public double LatestTurnovers => Latest.TotalHours * turnoversPerHour;

    private TimeSpan From(DateTimeOffset? at) =>
        Elapsed.FromHours(at.HasValue ? Math.Max(0, (at.Value - AsOf).TotalHours) : 0);
}
