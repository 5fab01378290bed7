using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Thermal;

/// <summary>Energy balance of oil that is heated in flow or in a tank, without losses.</summary>
/// <remarks>
/// P = ρ c Q ΔT in flow; E = m c ΔT and P = E / t in a tank.   Losses come on top: <see cref="HeatedTank"/>.
/// Trade rules of thumb for tank heaters disagree with each other by 25 %; the balance is used instead.
/// Caution: the oil film on a heater is far hotter than the oil in the tank. Keep to the watt density that the oil's and the heater's maker
/// allow, never heat without flow or uncovered elements, and stay well below the flash point.
/// </remarks>
/// <example>
/// <code>
/// var rise = OilHeating.RisePerPass(Power.FromKilowatts(10), VolumeFlow.FromLitersPerMinute(30),
///     Density.FromKilogramsPerCubicMeter(850), SpecificEntropy.FromKilojoulesPerKilogramKelvin(2.0));   // 11.8 K
/// </code>
/// </example>
public static class OilHeating
{
    /// <summary>Temperature rise of oil that passes a heater once.</summary>
    /// <param name="power">Heat that reaches the oil, 0 to 1 GW.</param>
    /// <param name="flow">Oil flow, above 0.</param>
    /// <param name="density">Oil density, 500 to 1500 kg/m³.</param>
    /// <param name="heatCapacity">Specific heat capacity, 500 to 5000 J/(kg K).</param>
    /// <returns>The rise.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static TemperatureDelta RisePerPass(
        Power power,
        VolumeFlow flow,
        Density density,
        SpecificEntropy heatCapacity
    )
    {
        var watts = Guard.InRange((double)power.Watts, 0, 1e9, "W", nameof(power));
        Guard.Positive(flow.CubicMetersPerSecond, "m³/s", nameof(flow));
        var wattPerKelvin = CapacityFlow(flow, density, heatCapacity);
        return TemperatureDelta.FromKelvins(
            Guard.InRange(watts / wattPerKelvin, 0, 1e6, "K rise, from the power", nameof(power))
        );
    }

    /// <summary>Heat that a flow needs for a rise, P = ρ c Q ΔT.</summary>
    /// <param name="flow">Oil flow, 0 or more.</param>
    /// <param name="density">Oil density, 500 to 1500 kg/m³.</param>
    /// <param name="heatCapacity">Specific heat capacity, 500 to 5000 J/(kg K).</param>
    /// <param name="rise">Temperature rise, 0 to 260 K.</param>
    /// <returns>The heat that must reach the oil.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static Power PowerForRise(
        VolumeFlow flow,
        Density density,
        SpecificEntropy heatCapacity,
        TemperatureDelta rise
    ) => Power.FromWatts(CapacityFlow(flow, density, heatCapacity) * Rise(rise));

    /// <summary>Energy that warms an oil fill, E = m c ΔT.</summary>
    /// <param name="oilMass">Mass of the oil fill, 0 or more.</param>
    /// <param name="heatCapacity">Specific heat capacity, 500 to 5000 J/(kg K).</param>
    /// <param name="rise">Temperature rise, 0 to 260 K.</param>
    /// <returns>The energy.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static Energy EnergyToWarm(Mass oilMass, SpecificEntropy heatCapacity, TemperatureDelta rise) =>
        Energy.FromJoules(
            Guard.InRange(oilMass.Kilograms, 0, 1e12, "kg", nameof(oilMass))
                * PhysicalRange.HeatCapacity(heatCapacity)
                * Rise(rise)
        );

    /// <summary>Power that warms an oil fill in a given time, P = m c ΔT / t.</summary>
    /// <param name="oilMass">Mass of the oil fill, 0 or more.</param>
    /// <param name="heatCapacity">Specific heat capacity, 500 to 5000 J/(kg K).</param>
    /// <param name="rise">Temperature rise, 0 to 260 K.</param>
    /// <param name="time">Time allowed, at least 1 s.</param>
    /// <returns>The heat that must reach the oil.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static Power PowerToWarm(Mass oilMass, SpecificEntropy heatCapacity, TemperatureDelta rise, TimeSpan time) =>
        Power.FromWatts(
            EnergyToWarm(oilMass, heatCapacity, rise).Joules
                / Guard.InRange(time.TotalSeconds, 1, 1e10, "s", nameof(time))
        );

    private static double CapacityFlow(VolumeFlow flow, Density density, SpecificEntropy heatCapacity) =>
        Guard.InRange(flow.CubicMetersPerSecond, 0, 1e6, "m³/s", nameof(flow))
        * PhysicalRange.OilDensity(density)
        * PhysicalRange.HeatCapacity(heatCapacity);

    private static double Rise(TemperatureDelta rise) => Guard.InRange(rise.Kelvins, 0, 260, "K", nameof(rise));
}
