using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>A viscosity at a temperature, read from a viscosity-temperature line.</summary>
public sealed record ViscosityPoint
{
    internal ViscosityPoint(Temperature temperature, KinematicViscosity viscosity, bool isExtrapolated, bool isInScale)
    {
        Temperature = temperature;
        Viscosity = viscosity;
        IsExtrapolated = isExtrapolated;
        IsInScale = isInScale;
    }

    /// <summary>Oil temperature.</summary>
    public Temperature Temperature { get; }

    /// <summary>Kinematic viscosity, or the end of the scale (0.21 to 2e7 mm²/s) where it lies beyond.</summary>
    public KinematicViscosity Viscosity { get; }

    /// <summary>Whether the temperature lies outside the two temperatures at which the oil was measured.</summary>
    public bool IsExtrapolated { get; }

    /// <summary>Whether the viscosity lies on the scale. If not, <see cref="Viscosity"/> is the nearer end of the scale.</summary>
    public bool IsInScale { get; }
}
