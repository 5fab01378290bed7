using UnitsNet;

namespace OilCondition.Purification;

/// <summary>Whether, and when, one part of a target is reached.</summary>
public sealed record TargetForecast
{
    internal TargetForecast(TreatmentOutcome outcome, double hours = 0)
    {
        Outcome = outcome;
        Time = Duration.FromHours(outcome == TreatmentOutcome.Reached ? hours : 0);
    }

    /// <summary>Both parts together: the water's reason where it is not met, else the code's, else the later of the two.</summary>
    internal static TargetForecast Of(TargetForecast water, TargetForecast particles) =>
        !water.IsMet ? water
        : !particles.IsMet ? particles
        : water.Outcome == TreatmentOutcome.NotAsked || particles.Time > water.Time ? particles
        : water;

    /// <summary>Whether it is reached, and if not, why.</summary>
    public TreatmentOutcome Outcome { get; }

    /// <summary>Time from the start; 0 unless it is <see cref="TreatmentOutcome.Reached"/>.</summary>
    public Duration Time { get; }

    /// <summary>Whether nothing is left to be asked: reached, there from the start, or not asked.</summary>
    public bool IsMet =>
        Outcome is TreatmentOutcome.NotAsked or TreatmentOutcome.AlreadyThere or TreatmentOutcome.Reached;
}
