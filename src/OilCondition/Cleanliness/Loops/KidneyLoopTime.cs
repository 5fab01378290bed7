using UnitsNet;

namespace OilCondition.Cleanliness;

/// <summary>How long a kidney loop takes to a target.</summary>
public sealed record KidneyLoopTime
{
    internal KidneyLoopTime(KidneyLoopOutcome outcome, TimeSpan time, double turnovers)
    {
        Outcome = outcome;
        Time = time;
        Turnovers = turnovers;
    }

    /// <summary>Whether the target is reached.</summary>
    public KidneyLoopOutcome Outcome { get; }

    /// <summary>Time of running; 0 unless reached.</summary>
    public TimeSpan Time { get; }

    /// <summary>Oil pumped over oil in the tank in that time; 0 unless reached.</summary>
    public double Turnovers { get; }
}
