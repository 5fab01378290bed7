using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The vacuum side of a purifier: the pressure that it holds, the air let in, the pump's capacity, the condenser.</summary>
/// <remarks>
/// p = max(p_set, n R T / Q_pump): when more vapour and air come than the pump swallows, the pressure rises until it does. Before the pump a condenser
/// takes out vapour down to p_sat(T_condenser). Ideal gases; the pump's capacity is taken as the same at every pressure.
/// A gauge vacuum goes in as <see cref="GaugeVacuum.AbsolutePressure"/>, which needs the local atmosphere.
/// Behind a condenser the air is saturated at its temperature, n_v = n_air p_sat(T) / (p − p_sat(T)). Where the pressure does not exceed p_sat(T)
/// nothing condenses: before the pump a condenser must be colder than the boiling point of the chamber.
/// </remarks>
public sealed class VacuumChamber
{
    internal const double GasConstant = 8.314462618;
    internal const double WaterKilogramPerMole = 0.018015;
    internal const double AirKilogramPerMole = 0.028965;

    /// <summary>No oil in the chamber is hotter than this; the pump must carry the sweep air even then.</summary>
    private const double HottestKelvins = 423.15;

    /// <summary>The same at another pressure.</summary>
    internal VacuumChamber At(Pressure absolutePressure) => new(absolutePressure, Sweep, PumpCapacity, Condenser);

    /// <summary>The same with other sweep air.</summary>
    internal VacuumChamber With(SweepAir sweep) => new(AbsolutePressure, sweep, PumpCapacity, Condenser);

    /// <summary>Describes the vacuum side, without a condenser: all vapour leaves with the exhaust.</summary>
    /// <param name="absolutePressure">Absolute pressure that is set, 10 Pa to 110 kPa.</param>
    /// <param name="sweep">Sweep and leak air; null for none.</param>
    /// <param name="pumpCapacity">Gas that the vacuum pump swallows at its inlet, above 0; null for one that always holds the pressure.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range, or the pump cannot even carry the sweep air.</exception>
    public VacuumChamber(Pressure absolutePressure, SweepAir? sweep = null, VolumeFlow? pumpCapacity = null)
        : this(absolutePressure, sweep, pumpCapacity, null) { }

    internal VacuumChamber(
        Pressure absolutePressure,
        SweepAir? sweep,
        VolumeFlow? pumpCapacity,
        VapourCondenser? condenser
    )
    {
        Guard.InRange(absolutePressure.Pascals, 10, 110_000, "Pa", nameof(absolutePressure));
        AbsolutePressure = absolutePressure;
        Sweep = sweep ?? SweepAir.None;
        Condenser = condenser;
        PumpCapacity = pumpCapacity;
        if (pumpCapacity is { } capacity)
        {
            var least = Math.Max(1e-6, LeastCapacityFor(Sweep));
            Guard.InRange(capacity.CubicMetersPerHour, least, 1e9, "m³/h, with this sweep air", nameof(pumpCapacity));
        }
    }

    /// <summary>Absolute pressure that is set.</summary>
    public Pressure AbsolutePressure { get; }

    /// <summary>Sweep and leak air.</summary>
    public SweepAir Sweep { get; }

    /// <summary>Gas that the vacuum pump swallows at its inlet; null for one that always holds the pressure.</summary>
    public VolumeFlow? PumpCapacity { get; }

    /// <summary>Temperature of gas and condensate that leave the condenser; null where there is none.</summary>
    public Temperature? CondenserTemperature => Condenser?.Temperature;

    /// <summary>
    /// Whether the figure looks like a gauge reading typed as an absolute pressure: above half an atmosphere no water boils out of an oil that bears it. 24 inHg
    /// below the atmosphere is 20 kPa absolute, and 24 inHg absolute is 81 kPa (<see cref="GaugeVacuum.FromReading"/>).
    /// </summary>
    public bool IsPressureInDoubt => AbsolutePressure.Pascals > 50_000;

    /// <summary>The condenser, or null.</summary>
    internal VapourCondenser? Condenser { get; }

    /// <summary>The same with a condenser between chamber and pump, which relieves the pump.</summary>
    /// <param name="temperature">Temperature of gas and condensate that leave it, 0.01 to 80 °C.</param>
    /// <returns>The vacuum side with its condenser.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public VacuumChamber WithCondenserBeforePump(Temperature temperature) =>
        new(AbsolutePressure, Sweep, PumpCapacity, VapourCondenser.BeforePump(temperature));

    /// <summary>The same with a condenser behind the pump, at atmospheric pressure.</summary>
    /// <param name="temperature">Temperature of gas and condensate that leave it, 0.01 to 80 °C.</param>
    /// <param name="localAtmosphere">Absolute pressure of the local atmosphere, 300 to 1100 hPa.</param>
    /// <returns>The vacuum side with its condenser.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public VacuumChamber WithCondenserAfterPump(Temperature temperature, Pressure localAtmosphere) =>
        new(AbsolutePressure, Sweep, PumpCapacity, VapourCondenser.AfterPump(temperature, localAtmosphere));

    /// <summary>The vacuum side in a few words.</summary>
    /// <returns>For example <c>65.1 hPa, 1 kg/h of sweep air, pump 20 m³/h, condenser at 15 °C</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(AbsolutePressure.Hectopascals)} hPa"
        + (IsPressureInDoubt ? " absolute (a gauge reading?)" : "")
        + (
            Sweep.DryAir.KilogramsPerHour > 0
                ? $", {PlainText.Number(Sweep.DryAir.KilogramsPerHour)} kg/h of sweep air"
                : ""
        )
        + (PumpCapacity is { } pump ? $", pump {PlainText.Number(pump.CubicMetersPerHour)} m³/h" : "")
        + (CondenserTemperature is { } cold ? $", condenser at {PlainText.Number(cold.DegreesCelsius)} °C" : "");

    /// <summary>Whether the vacuum pump could carry another sweep.</summary>
    internal bool CanCarry(SweepAir sweep) =>
        PumpCapacity is not { } capacity || capacity.CubicMetersPerHour >= LeastCapacityFor(sweep);

    /// <summary>Volume flow of the air, hot and at the highest pressure that a chamber may have, m³/h.</summary>
    private static double LeastCapacityFor(SweepAir sweep) =>
        (
            sweep.DryAir.KilogramsPerSecond / AirKilogramPerMole
            + sweep.Moisture.KilogramsPerSecond / WaterKilogramPerMole
        )
        * GasConstant
        * HottestKelvins
        / 110_000
        * 3600;
}
