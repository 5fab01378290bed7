using UnitsNet;

namespace OilCondition.Water;

/// <summary>The temperature at which water, or ice, turns to vapour at an absolute pressure.</summary>
public sealed record BoilingPoint
{
    internal BoilingPoint(Pressure absolutePressure, Temperature temperature, BoilingPhase phase)
    {
        AbsolutePressure = absolutePressure;
        Temperature = temperature;
        Phase = phase;
    }

    /// <summary>Absolute pressure.</summary>
    public Pressure AbsolutePressure { get; }

    /// <summary>Saturation temperature at that pressure.</summary>
    public Temperature Temperature { get; }

    /// <summary>Whether water boils or ice sublimes there.</summary>
    public BoilingPhase Phase { get; }
}
