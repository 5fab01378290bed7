using OilCondition.Text;
using OilCondition.Thermal;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>What a treatment must know of the oil: density and heat, water saturation, viscosity, and how hot it may get.</summary>
/// <remarks>
/// Without a saturation curve of the oil itself no floor means anything: additives raise saturation two to five times above the published curves of
/// insulating oils, and the level that a vacuum reaches with it.
/// </remarks>
public sealed class TreatedOil
{
    /// <summary>Describes the oil.</summary>
    /// <param name="properties">Density and heat properties.</param>
    /// <param name="saturationCurve">Water saturation of this oil.</param>
    /// <param name="viscosityLine">Viscosity against temperature.</param>
    /// <param name="highestTemperature">Highest bulk temperature that the oil's maker allows, 0 to 150 °C; well below the flash point.</param>
    /// <param name="hasDetergents">Whether it carries detergents or other surfactants, as engine and some mobile hydraulic oils do.</param>
    /// <param name="pourPoint">Pour point, −60 to 60 °C; null where it is not known. Oil at or below it does not flow to a pump.</param>
    /// <param name="flashPoint">Flash point, 0 to 400 °C; null where it is not known. No oil is heated to less than 30 K below it (ours).</param>
    /// <exception cref="ArgumentNullException">A part is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public TreatedOil(
        OilProperties properties,
        SaturationCurve saturationCurve,
        ViscosityTemperatureLine viscosityLine,
        Temperature highestTemperature,
        bool hasDetergents = false,
        Temperature? pourPoint = null,
        Temperature? flashPoint = null
    )
    {
        Properties = Guard.NotNull(properties);
        SaturationCurve = Guard.NotNull(saturationCurve);
        ViscosityLine = Guard.NotNull(viscosityLine);
        Guard.InRange(highestTemperature.DegreesCelsius, 0, 150, "°C", nameof(highestTemperature));
        HighestTemperature = highestTemperature;
        HasDetergents = hasDetergents;
        if (pourPoint is { } pour)
        {
            Guard.InRange(pour.DegreesCelsius, -60, 60, "°C", nameof(pourPoint));
        }

        if (flashPoint is { } flash)
        {
            Guard.InRange(flash.DegreesCelsius, 0, 400, "°C", nameof(flashPoint));
        }

        PourPoint = pourPoint;
        FlashPoint = flashPoint;
    }

    /// <summary>Pour point; null where it is not known.</summary>
    public Temperature? PourPoint { get; }

    /// <summary>Flash point; null where it is not known.</summary>
    public Temperature? FlashPoint { get; }

    /// <summary>Whether it carries detergents or other surfactants.</summary>
    public bool HasDetergents { get; }

    /// <summary>Density and heat properties.</summary>
    public OilProperties Properties { get; }

    /// <summary>Water saturation.</summary>
    public SaturationCurve SaturationCurve { get; }

    /// <summary>Viscosity against temperature.</summary>
    public ViscosityTemperatureLine ViscosityLine { get; }

    /// <summary>Highest bulk temperature that the oil's maker allows.</summary>
    public Temperature HighestTemperature { get; }

    /// <summary>The same oil with another saturation curve.</summary>
    internal TreatedOil With(SaturationCurve curve) =>
        new(Properties, curve, ViscosityLine, HighestTemperature, HasDetergents, PourPoint, FlashPoint);

    /// <summary>The oil in a few words.</summary>
    /// <returns>For example <c>turbine oil, at most 80 °C</c>.</returns>
    public override string ToString() =>
        $"{SaturationCurve.Name}, at most {PlainText.Number(HighestTemperature.DegreesCelsius)} °C"
        + (HasDetergents ? ", with detergents" : "");
}
