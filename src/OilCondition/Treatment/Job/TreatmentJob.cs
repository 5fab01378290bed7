using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The task: this oil, in this reservoir, with this contamination, to this target.</summary>
public sealed class TreatmentJob
{
    /// <summary>States the task.</summary>
    /// <param name="oil">The oil.</param>
    /// <param name="reservoir">Where it is.</param>
    /// <param name="contamination">What is in it.</param>
    /// <param name="target">What is to be reached.</param>
    /// <param name="horizon">How far to look ahead, 1 min to 10 years; null for 30 days. What takes longer is not reached.</param>
    /// <exception cref="ArgumentNullException">A part is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The horizon lies outside its range.</exception>
    public TreatmentJob(
        TreatedOil oil,
        Reservoir reservoir,
        Contamination contamination,
        TreatmentTarget target,
        TimeSpan? horizon = null
    )
    {
        Horizon = horizon ?? Elapsed.FromHours(720);
        Guard.InRange(Horizon.TotalHours, 1.0 / 60, 87_660, "h", nameof(horizon));
        Oil = Guard.NotNull(oil);
        Reservoir = Guard.NotNull(reservoir);
        Contamination = Guard.NotNull(contamination);
        Target = Guard.NotNull(target);
    }

    /// <summary>The oil.</summary>
    public TreatedOil Oil { get; }

    /// <summary>Where it is.</summary>
    public Reservoir Reservoir { get; }

    /// <summary>What is in it.</summary>
    public Contamination Contamination { get; }

    /// <summary>What is to be reached.</summary>
    public TreatmentTarget Target { get; }

    /// <summary>How far to look ahead.</summary>
    public TimeSpan Horizon { get; }

    /// <summary>Mass of the oil: its volume times its density at the start, where the level was read. Warming changes the volume, not the mass.</summary>
    public Mass OilMass => Reservoir.OilVolume * Oil.Properties.At(Reservoir.Start).Density;

    /// <summary>The water at the start, split at a temperature.</summary>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The split.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public WaterState WaterAt(Temperature temperature) => Oil.SaturationCurve.Split(Contamination.Water, temperature);

    /// <summary>The same task with some of its parts exchanged, to compare one with the other.</summary>
    /// <param name="oil">The oil; null for the same.</param>
    /// <param name="reservoir">Where it is; null for the same.</param>
    /// <param name="contamination">What is in it; null for the same.</param>
    /// <param name="target">What is to be reached; null for the same.</param>
    /// <returns>The task.</returns>
    public TreatmentJob With(
        TreatedOil? oil = null,
        Reservoir? reservoir = null,
        Contamination? contamination = null,
        TreatmentTarget? target = null
    ) => new(oil ?? Oil, reservoir ?? Reservoir, contamination ?? Contamination, target ?? Target, Horizon);

    /// <summary>The task in one line.</summary>
    /// <returns>For example <c>2000 L of oil with 1500 mg/kg of water, 20/18/15; target 90 mg/kg, 18/16/13</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(Reservoir.OilVolume.Liters)} L of oil with {Contamination}; target {Target}";
}
