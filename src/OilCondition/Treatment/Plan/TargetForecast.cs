using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Whether, and when, one part of a target is reached.</summary>
public sealed record TargetForecast
{
    internal TargetForecast(TreatmentOutcome outcome, double hours = 0)
    {
        Outcome = outcome;
        Time = Elapsed.FromHours(outcome == TreatmentOutcome.Reached ? hours : 0);
    }

    /// <summary>A part that needs no time, or is not reached.</summary>
    /// <param name="outcome">Any outcome but <see cref="TreatmentOutcome.Reached"/>.</param>
    /// <returns>The forecast.</returns>
    /// <exception cref="ArgumentException">The outcome is <see cref="TreatmentOutcome.Reached"/>, which needs a time.</exception>
    public static TargetForecast Of(TreatmentOutcome outcome) =>
        outcome == TreatmentOutcome.Reached
            ? throw new ArgumentException("outcome is Reached; that needs a time: ReachedAfter.", nameof(outcome))
            : new TargetForecast(outcome);

    /// <summary>A part that is reached after a time.</summary>
    /// <param name="time">The time, 0 or more.</param>
    /// <returns>The forecast.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The time is negative or not finite.</exception>
    public static TargetForecast ReachedAfter(TimeSpan time) =>
        new(TreatmentOutcome.Reached, Guard.InRange(time.TotalHours, 0, 1e9, "h", nameof(time)));

    /// <summary>Both parts together: the water's reason where it is not met, else the code's, else the later of the two.</summary>
    internal static TargetForecast Of(TargetForecast water, TargetForecast particles) =>
        !water.IsMet ? water
        : !particles.IsMet ? particles
        : water.Outcome == TreatmentOutcome.NotAsked || particles.Time > water.Time ? particles
        : water;

    /// <summary>Whether it is reached, and if not, why.</summary>
    public TreatmentOutcome Outcome { get; }

    /// <summary>Time from the start; 0 unless it is <see cref="TreatmentOutcome.Reached"/>.</summary>
    public TimeSpan Time { get; }

    /// <summary>Whether nothing is left to be asked: reached, there from the start, or not asked.</summary>
    public bool IsMet =>
        Outcome is TreatmentOutcome.NotAsked or TreatmentOutcome.AlreadyThere or TreatmentOutcome.Reached;
}
