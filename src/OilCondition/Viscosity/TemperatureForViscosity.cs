using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>The temperature at which an oil has a viscosity, read from a viscosity-temperature line.</summary>
public sealed record TemperatureForViscosity
{
    internal TemperatureForViscosity(
        KinematicViscosity viscosity,
        Temperature temperature,
        bool isExtrapolated,
        TemperatureOutcome outcome
    )
    {
        Viscosity = viscosity;
        Temperature = temperature;
        IsExtrapolated = isExtrapolated;
        Outcome = outcome;
    }

    /// <summary>The viscosity that was asked about.</summary>
    public KinematicViscosity Viscosity { get; }

    /// <summary>The temperature, or the nearer end of −60 to 200 °C where <see cref="Outcome"/> says that it lies beyond.</summary>
    public Temperature Temperature { get; }

    /// <summary>Whether the temperature lies outside the two temperatures at which the oil was measured.</summary>
    public bool IsExtrapolated { get; }

    /// <summary>Whether the temperature lies within the range, or past which end.</summary>
    public TemperatureOutcome Outcome { get; }
}
