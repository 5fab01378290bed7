using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Thermal;

/// <summary>Density, expansion, heat capacity and heat conductivity of one petroleum oil against temperature, from its density alone.</summary>
/// <remarks>
/// Density: ρ = ρ15 VCF, Table 54D (<see cref="VolumeCorrection"/>). Expansion at t: α = a (1 + 1.6 a Δ), a = 0.6278/ρ15, Δ = t − 15 °C.
/// Specific heat (Cragoe, US Bureau of Standards Misc. Publ. 97, 1929): c = (0.388 + 0.00045 t_F) / sqrt(d) Btu/(lb °F).
/// Heat conductivity (same): k = (0.1172 / d) (1 − 0.00054 t) W/(m K), t in °C.
/// d: relative density at 60/60 °F. Accuracy of c about 4 %, 0 to 200 °C, d 0.75 to 0.96 (from memory); k about 10 % (from memory).
/// Petroleum oils only: for esters, polyglycols and water-containing fluids use the maker's figures.
/// </remarks>
/// <example>
/// <code>
/// var oil = OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(870));
/// var warm = oil.At(Temperature.FromDegreesCelsius(60));   // 841.9 kg/m³, 2.02 kJ/(kg K)
/// </code>
/// </example>
public sealed class OilProperties
{
    /// <summary>
    /// Density of water at 60 °F, kg/m³; attribution to API MPMS 11.1-2004 from memory. Seen only as transcribed in public implementations.
    /// </summary>
    private const double WaterAt60F = 999.016;

    /// <summary>Density of a mineral oil at 15 °C that nobody has read, kg/m³ (common practice, no source).</summary>
    internal const double UsualDensityAt15 = 870;

    private const double JoulePerKilogramKelvinOfBtu = 4186.8;

    private static readonly Temperature SixtyFahrenheit = Temperature.FromDegreesFahrenheit(60);

    private OilProperties(Density densityAt15)
    {
        DensityAt15 = densityAt15;
        PhysicalRange.OilDensity(densityAt15);
        RelativeDensity =
            densityAt15.KilogramsPerCubicMeter
            * VolumeCorrection.Table54D(densityAt15, SixtyFahrenheit).Factor.DecimalFractions
            / WaterAt60F;
    }

    /// <summary>Density at 15 °C.</summary>
    public Density DensityAt15 { get; }

    /// <summary>Relative density at 60/60 °F, d: density over that of water, 999.016 kg/m³.</summary>
    public double RelativeDensity { get; }

    /// <summary>API gravity, 141.5/d − 131.5, in degrees.</summary>
    public double ApiGravityDegrees => 141.5 / RelativeDensity - 131.5;

    /// <summary>An oil of known density at 15 °C, as data sheets give it.</summary>
    /// <param name="densityAt15">Density at 15 °C, 500 to 1500 kg/m³.</param>
    /// <returns>The oil.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The density lies outside its range.</exception>
    public static OilProperties FromDensityAt15(Density densityAt15) => new(densityAt15);

    /// <summary>An oil whose density was observed at another temperature.</summary>
    /// <param name="observed">Density at the observed temperature, 500 to 1500 kg/m³.</param>
    /// <param name="temperature">Observed temperature, −60 to 200 °C.</param>
    /// <returns>The oil.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static OilProperties FromObservedDensity(Density observed, Temperature temperature) =>
        new(VolumeCorrection.DensityAt15(observed, temperature));

    /// <summary>An oil of known relative density.</summary>
    /// <param name="relativeDensity">Relative density at 60/60 °F, 0.51 to 1.49.</param>
    /// <returns>The oil.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The relative density lies outside its range.</exception>
    public static OilProperties FromRelativeDensity(double relativeDensity) =>
        FromObservedDensity(
            Density.FromKilogramsPerCubicMeter(Guard.InRange(relativeDensity, 0.51, 1.49, "(60/60 °F)") * WaterAt60F),
            SixtyFahrenheit
        );

    /// <summary>The properties at a temperature.</summary>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>Density, expansion, heat capacity and conductivity, flagged where a relation is used outside its range.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public OilPropertiesAt At(Temperature temperature)
    {
        var celsius = OilTemperature.Celsius(temperature);
        var correction = VolumeCorrection.Table54D(DensityAt15, temperature);
        var a = 0.6278 / DensityAt15.KilogramsPerCubicMeter;
        return new OilPropertiesAt(
            temperature,
            Density.FromKilogramsPerCubicMeter(DensityAt15.KilogramsPerCubicMeter * correction.Factor.DecimalFractions),
            CoefficientOfThermalExpansion.FromPerKelvin(a * (1 + 1.6 * a * (celsius - 15))),
            SpecificEntropy.FromJoulesPerKilogramKelvin(
                JoulePerKilogramKelvinOfBtu * (0.388 + 0.00045 * (1.8 * celsius + 32)) / Math.Sqrt(RelativeDensity)
            ),
            ThermalConductivity.FromWattsPerMeterKelvin(0.1172 / RelativeDensity * (1 - 0.00054 * celsius)),
            correction.IsExtrapolated,
            !(celsius >= 0 && RelativeDensity >= 0.75 && RelativeDensity <= 0.96)
        );
    }

    /// <summary>The volume that an oil takes at another temperature.</summary>
    /// <param name="volume">Volume at the first temperature, 0 or more.</param>
    /// <param name="from">First temperature, −60 to 200 °C.</param>
    /// <param name="to">Other temperature, −60 to 200 °C.</param>
    /// <returns>Volume at the other temperature.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Volume VolumeAt(Volume volume, Temperature from, Temperature to)
    {
        var litres = Guard.InRange(volume.Liters, 0, 1e15, "L", nameof(volume));
        return Volume.FromLiters(
            litres
                * VolumeCorrection.Table54D(DensityAt15, from).Factor.DecimalFractions
                / VolumeCorrection.Table54D(DensityAt15, to).Factor.DecimalFractions
        );
    }

    /// <summary>The oil by its density.</summary>
    /// <returns>For example <c>870 kg/m³ at 15 °C</c>.</returns>
    public override string ToString() => $"{PlainText.Number(DensityAt15.KilogramsPerCubicMeter)} kg/m³ at 15 °C";
}
