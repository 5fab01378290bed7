using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>One stage of a train: a treatment for a time, a treatment until a target, or a tank that is warmed.</summary>
public sealed class TrainStage
{
    private TrainStage(
        ITreatment? treatment,
        TimeSpan? duration,
        TreatmentTarget? target,
        TankHeater? heater,
        Temperature? temperature
    )
    {
        Treatment = treatment;
        Duration = duration;
        Target = target;
        Heater = heater;
        Temperature = temperature;
    }

    /// <summary>The treatment; null where the tank is only warmed.</summary>
    public ITreatment? Treatment { get; }

    /// <summary>How long it runs; null where it runs until a target.</summary>
    public TimeSpan? Duration { get; }

    /// <summary>What it runs to; null for the target of the task, as far as it and no later stage reaches it.</summary>
    public TreatmentTarget? Target { get; }

    /// <summary>The heater in the tank; null for a treatment.</summary>
    public TankHeater? Heater { get; }

    /// <summary>The temperature to which the tank is warmed; null for a treatment.</summary>
    public Temperature? Temperature { get; }

    /// <summary>A treatment for a time, such as a night of settling.</summary>
    /// <param name="treatment">The treatment.</param>
    /// <param name="duration">How long, 1 min to 10 years.</param>
    /// <returns>The stage.</returns>
    /// <exception cref="ArgumentNullException">The treatment is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The duration lies outside its range.</exception>
    public static TrainStage For(ITreatment treatment, TimeSpan duration)
    {
        Guard.InRange(duration.TotalHours, 1.0 / 60, 87_660, "h", nameof(duration));
        return new(Guard.NotNull(treatment), duration, null, null, null);
    }

    /// <summary>A treatment until a target.</summary>
    /// <param name="treatment">The treatment.</param>
    /// <param name="target">What it runs to; null for the target of the task, as far as it and no later stage reaches it.</param>
    /// <returns>The stage.</returns>
    /// <exception cref="ArgumentNullException">The treatment is null.</exception>
    public static TrainStage Until(ITreatment treatment, TreatmentTarget? target = null) =>
        new(Guard.NotNull(treatment), null, target, null, null);

    /// <summary>A tank that is warmed by its own heater; water and particles stay.</summary>
    /// <param name="heater">The heater in the tank.</param>
    /// <param name="temperature">Oil temperature to reach, 0 to 150 °C.</param>
    /// <returns>The stage.</returns>
    /// <exception cref="ArgumentNullException">The heater is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public static TrainStage Heating(TankHeater heater, Temperature temperature)
    {
        Guard.InRange(temperature.DegreesCelsius, 0, 150, "°C", nameof(temperature));
        return new(null, null, null, Guard.NotNull(heater), temperature);
    }

    /// <summary>The same stage with another treatment, such as one whose figures are shifted.</summary>
    internal TrainStage With(ITreatment? treatment) => new(treatment, Duration, Target, Heater, Temperature);

    /// <summary>The stage in a few words.</summary>
    /// <returns>For example <c>settling and draining for 12 h</c>, <c>heating to 45 °C</c> or <c>vacuum dehydration</c>.</returns>
    public override string ToString() =>
        Temperature is { } warm
            ? $"heating to {PlainText.Number(warm.DegreesCelsius)} °C"
            : Treatment!.Name
                + (
                    Duration is { } time ? $" for {PlainText.Number(time.TotalHours)} h"
                    : Target is { } target ? $" to {target}"
                    : ""
                );
}
