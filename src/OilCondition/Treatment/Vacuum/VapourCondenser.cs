using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A condenser for the vapour of a vacuum chamber, before or behind the vacuum pump.</summary>
/// <remarks>
/// What leaves it with the air is saturated at its temperature: n_v = n_air p_sat(T) / (p − p_sat(T)). Where the pressure does not exceed p_sat(T)
/// nothing condenses: before the pump a condenser must be colder than the boiling point of the chamber.
/// </remarks>
public sealed record VapourCondenser
{
    private VapourCondenser(Temperature temperature, bool isBeforePump, Pressure discharge)
    {
        Guard.InRange(temperature.DegreesCelsius, 0.01, 80, "°C", nameof(temperature));
        Guard.InRange(discharge.Pascals, 30_000, 110_000, "Pa", "localAtmosphere");
        Temperature = temperature;
        IsBeforePump = isBeforePump;
        LocalAtmosphere = discharge;
    }

    /// <summary>Temperature of gas and condensate that leave it.</summary>
    public Temperature Temperature { get; }

    /// <summary>Whether it lies before the vacuum pump, under chamber pressure, and so relieves the pump.</summary>
    public bool IsBeforePump { get; }

    /// <summary>Absolute pressure behind the pump.</summary>
    public Pressure LocalAtmosphere { get; }

    /// <summary>A condenser between chamber and pump.</summary>
    /// <param name="temperature">Temperature of gas and condensate that leave it, 0.01 to 80 °C.</param>
    /// <returns>The condenser.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public static VapourCondenser BeforePump(Temperature temperature) =>
        new(temperature, isBeforePump: true, StandardAtmosphere.SeaLevel);

    /// <summary>A condenser behind the pump, at atmospheric pressure.</summary>
    /// <param name="temperature">Temperature of gas and condensate that leave it, 0.01 to 80 °C.</param>
    /// <param name="localAtmosphere">Absolute pressure of the local atmosphere, 300 to 1100 hPa.</param>
    /// <returns>The condenser.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static VapourCondenser AfterPump(Temperature temperature, Pressure localAtmosphere) =>
        new(temperature, isBeforePump: false, localAtmosphere);
}
