using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Thermal;

/// <summary>Density and heat properties of an oil at one temperature.</summary>
public sealed record OilPropertiesAt
{
    internal OilPropertiesAt(
        Temperature temperature,
        Density density,
        CoefficientOfThermalExpansion expansion,
        SpecificEntropy heatCapacity,
        ThermalConductivity conductivity,
        bool isDensityExtrapolated,
        bool isHeatExtrapolated
    )
    {
        Temperature = temperature;
        Density = density;
        Expansion = expansion;
        HeatCapacity = heatCapacity;
        Conductivity = conductivity;
        IsDensityExtrapolated = isDensityExtrapolated;
        IsHeatExtrapolated = isHeatExtrapolated;
    }

    /// <summary>Oil temperature.</summary>
    public Temperature Temperature { get; }

    /// <summary>Density.</summary>
    public Density Density { get; }

    /// <summary>Volumetric thermal expansion at this temperature.</summary>
    public CoefficientOfThermalExpansion Expansion { get; }

    /// <summary>Specific heat capacity.</summary>
    public SpecificEntropy HeatCapacity { get; }

    /// <summary>Heat conductivity.</summary>
    public ThermalConductivity Conductivity { get; }

    /// <summary>Whether density and expansion lie outside the range of the tables, 800.9 to 1163.5 kg/m³ and −50 to 150 °C.</summary>
    public bool IsDensityExtrapolated { get; }

    /// <summary>Whether heat capacity and conductivity lie outside the range of Cragoe's relations, 0 to 200 °C and d 0.75 to 0.96.</summary>
    public bool IsHeatExtrapolated { get; }

    /// <summary>The properties in short.</summary>
    /// <returns>For example <c>842 kg/m³, 2.02 kJ/(kg K), 0.129 W/(m K) at 60 °C</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(Density.KilogramsPerCubicMeter)} kg/m³, "
        + $"{PlainText.Number(HeatCapacity.KilojoulesPerKilogramKelvin)} kJ/(kg K), "
        + $"{PlainText.Number(Conductivity.WattsPerMeterKelvin)} W/(m K) at {PlainText.Tenths(Temperature.DegreesCelsius)} °C"
        + (IsDensityExtrapolated || IsHeatExtrapolated ? ", extrapolated" : "");
}
