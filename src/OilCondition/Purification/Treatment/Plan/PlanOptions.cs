using OilCondition.Guards;
using UnitsNet;

namespace OilCondition.Purification;

/// <summary>How a plan is written down.</summary>
public sealed class PlanOptions
{
    /// <summary>States the options.</summary>
    /// <param name="interval">Time between two states, 1 min to 30 days; null for 1 h.</param>
    /// <param name="horizon">How far the plan looks ahead, the interval to 10 000 of them; null for 30 days.</param>
    /// <exception cref="ArgumentOutOfRangeException">A time lies outside its range.</exception>
    public PlanOptions(Duration? interval = null, Duration? horizon = null)
    {
        Interval = interval ?? Duration.FromHours(1);
        Guard.InRange(Interval.Hours, 1.0 / 60, 720, "h", nameof(interval));
        Horizon = horizon ?? Duration.FromHours(Math.Min(720, 10_000 * Interval.Hours));
        Guard.InRange(Horizon.Hours, Interval.Hours, 10_000 * Interval.Hours, "h", nameof(horizon));
    }

    /// <summary>A state each hour, 30 days at most.</summary>
    public static PlanOptions Default { get; } = new();

    /// <summary>Time between two states.</summary>
    public Duration Interval { get; }

    /// <summary>How far the plan looks ahead.</summary>
    public Duration Horizon { get; }
}
