using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>A viscosity at a temperature, read from a viscosity-temperature line.</summary>
public sealed record ViscosityPoint
{
    internal ViscosityPoint(
        Temperature temperature,
        KinematicViscosity viscosity,
        bool isExtrapolated,
        ScaleOutcome outcome
    )
    {
        Temperature = temperature;
        Viscosity = viscosity;
        IsExtrapolated = isExtrapolated;
        Outcome = outcome;
    }

    /// <summary>Oil temperature.</summary>
    public Temperature Temperature { get; }

    /// <summary>Kinematic viscosity, or the nearer end of the scale where <see cref="Outcome"/> says that it lies beyond.</summary>
    public KinematicViscosity Viscosity { get; }

    /// <summary>Whether the temperature lies outside the two temperatures at which the oil was measured.</summary>
    public bool IsExtrapolated { get; }

    /// <summary>Whether the viscosity lies on the scale, or past which end.</summary>
    public ScaleOutcome Outcome { get; }
}
