using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A condenser for the vapour of a vacuum chamber, before or behind the vacuum pump.</summary>
internal sealed record VapourCondenser
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
    public static VapourCondenser BeforePump(Temperature temperature) =>
        new(temperature, isBeforePump: true, StandardAtmosphere.SeaLevel);

    /// <summary>A condenser behind the pump, at atmospheric pressure.</summary>
    public static VapourCondenser AfterPump(Temperature temperature, Pressure localAtmosphere) =>
        new(temperature, isBeforePump: false, localAtmosphere);
}
