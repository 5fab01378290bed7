using UnitsNet;

namespace OilCondition.Cleanliness;

/// <summary>How long a kidney loop takes to a target code.</summary>
public sealed class KidneyLoopCodeTime
{
    internal KidneyLoopCodeTime(IReadOnlyList<KidneyLoopSizeTime> sizes)
    {
        Sizes = sizes;

        // Never ranks above any time; among sizes that never come there the one farthest from it rules. The smallest size wins a tie.
        var ruling = sizes
            .OrderByDescending(size => size.Time.Outcome == KidneyLoopOutcome.Never)
            .ThenByDescending(size => size.Time.Outcome == KidneyLoopOutcome.Never ? size.SteadyOverLimit : 0)
            .ThenByDescending(size => size.Time.Time.TotalMinutes)
            .First();
        RulingSize = ruling.Size;
        Outcome = ruling.Time.Outcome;
        Time = ruling.Time.Time;
        Turnovers = ruling.Time.Turnovers;
        HoldsTarget = sizes.All(size => size.SteadyOverLimit <= 1);
    }

    /// <summary>Whether the whole code is reached.</summary>
    public KidneyLoopOutcome Outcome { get; }

    /// <summary>Time of running; 0 unless reached.</summary>
    public TimeSpan Time { get; }

    /// <summary>Oil pumped over oil in the tank in that time; 0 unless reached.</summary>
    public double Turnovers { get; }

    /// <summary>The size that decides: the slowest, or the one that never comes there.</summary>
    public CodeSize RulingSize { get; }

    /// <summary>Whether the steady state keeps the target at every size; a tank that is already there may still rise above it.</summary>
    public bool HoldsTarget { get; }

    /// <summary>The sizes that the target asks for.</summary>
    public IReadOnlyList<KidneyLoopSizeTime> Sizes { get; }
}
