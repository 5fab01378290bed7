using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Viscosity;

/// <summary>A viscosity and its temperature, read from a viscosity-temperature line either way.</summary>
public sealed record ViscosityPoint
{
    internal ViscosityPoint(
        Temperature temperature,
        KinematicViscosity viscosity,
        bool isExtrapolated,
        bool isThicker,
        bool isThinner
    )
    {
        Temperature = temperature;
        Viscosity = viscosity;
        IsExtrapolated = isExtrapolated;
        IsThicker = isThicker;
        IsThinner = isThinner;
    }

    /// <summary>Oil temperature; −60 or 200 °C where the oil has the viscosity only beyond.</summary>
    public Temperature Temperature { get; }

    /// <summary>Kinematic viscosity; 0.21 or 2e7 mm²/s, the ends of the scale (from memory), where it lies beyond.</summary>
    public KinematicViscosity Viscosity { get; }

    /// <summary>Whether the temperature lies outside the two temperatures at which the oil was measured.</summary>
    public bool IsExtrapolated { get; }

    /// <summary>
    /// Whether the oil is thicker than the viscosity stated at the temperature stated: beyond the scale, where for every practical end it no
    /// longer flows, or, asked for the temperature of a viscosity, over the whole range up to 200 °C.
    /// </summary>
    public bool IsThicker { get; }

    /// <summary>Whether the oil is thinner than the viscosity stated at the temperature stated: beyond the scale, or over the whole range down to −60 °C.</summary>
    public bool IsThinner { get; }

    /// <summary>Both in one line.</summary>
    /// <returns>For example <c>1470 mm²/s at -10 °C, extrapolated</c>.</returns>
    public override string ToString() =>
        (
            IsThicker ? "above "
            : IsThinner ? "below "
            : ""
        )
        + $"{PlainText.Number(Viscosity.Centistokes)} mm²/s at {PlainText.Tenths(Temperature.DegreesCelsius)} °C"
        + (IsExtrapolated ? ", extrapolated" : "");
}
