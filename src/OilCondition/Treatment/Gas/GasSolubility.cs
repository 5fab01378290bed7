using OilCondition.Text;
using OilCondition.Thermal;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>How much air, nitrogen or oxygen a mineral oil holds dissolved.</summary>
/// <remarks>
/// <para>
/// Ostwald coefficient, volume of gas as it is over the oil per volume of oil: L = 0.300 exp[0.639 (700 − T)/T ln(3.333 L₀)], corrected to the oil by
/// 7.70 (0.980 − d). T [K]; d: density at 15 °C, kg/L; L₀: 0.095 for air, 0.075 for nitrogen, 0.15 for oxygen, in oil of 0.85 kg/L at 0 °C.
/// </para>
/// <para>
/// Source: ASTM D2779, equations and constants from memory; its scope was seen: hydrocarbons of 0.63 to 0.90 kg/L, 228 to 423 K. Outside it nothing
/// is told. Beside coefficients of insulating oil from memory, 0.09 for nitrogen and 0.17 for oxygen at 25 °C, it lies within 10 %. Esters and other
/// polar oils are not covered.
/// </para>
/// </remarks>
public static class GasSolubility
{
    /// <summary>Gas at 0 °C and 1013.25 hPa.</summary>
    internal const double StandardPascal = 101_325;
    internal const double StandardKelvins = 273.15;

    /// <summary>Where the equations come from.</summary>
    public static Source Source { get; } =
        new(
            SourceKind.FromMemory,
            "ASTM D2779, scope seen, equations and constants from memory",
            "air, nitrogen, oxygen"
        );

    /// <summary>Whether the method covers an oil at a temperature: 630 to 900 kg/m³ at 15 °C, −45.15 to 149.85 °C.</summary>
    /// <param name="oilProperties">Density of the oil.</param>
    /// <param name="temperature">Oil temperature.</param>
    /// <returns>True within its scope.</returns>
    /// <exception cref="ArgumentNullException">The properties are null.</exception>
    public static bool Covers(OilProperties oilProperties, Temperature temperature) =>
        Guard.NotNull(oilProperties).DensityAt15.KilogramsPerCubicMeter is >= 630 and <= 900
        && temperature.Kelvins is >= 228 and <= 423;

    /// <summary>Ostwald coefficient: volume of gas that a volume of oil holds, both at the oil's temperature and the gas's own pressure.</summary>
    /// <param name="gas">The gas.</param>
    /// <param name="oilProperties">Density of the oil, 630 to 900 kg/m³ at 15 °C.</param>
    /// <param name="temperature">Oil temperature, 228 to 423 K.</param>
    /// <returns>The coefficient; the same at every pressure (Henry's law).</returns>
    /// <exception cref="ArgumentNullException">The properties are null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Oil or temperature lies outside the scope of the method.</exception>
    public static Ratio OstwaldAt(Gas gas, OilProperties oilProperties, Temperature temperature)
    {
        var density = Guard.InRange(
            Guard.NotNull(oilProperties).DensityAt15.KilogramsPerCubicMeter,
            630,
            900,
            "kg/m³ at 15 °C",
            nameof(oilProperties)
        );
        var kelvins = Guard.InRange(temperature.Kelvins, 228, 423, "K", nameof(temperature));
        var atZero = gas switch
        {
            Gas.Air => 0.095,
            Gas.Nitrogen => 0.075,
            Gas.Oxygen => 0.15,
            _ => throw new ArgumentOutOfRangeException(nameof(gas), gas, "There is no such gas."),
        };
        return Ratio.FromDecimalFractions(
            7.70
                * (0.980 - density / 1000)
                * 0.300
                * Math.Exp(0.639 * (700 - kelvins) / kelvins * Math.Log(3.333 * atZero))
        );
    }

    /// <summary>Gas that an oil holds at a partial pressure, as volume at 0 °C and 1013.25 hPa per volume of oil: L p/p₀ T₀/T.</summary>
    /// <param name="gas">The gas.</param>
    /// <param name="oilProperties">Density of the oil, 630 to 900 kg/m³ at 15 °C.</param>
    /// <param name="temperature">Oil temperature, 228 to 423 K.</param>
    /// <param name="partialPressure">Partial pressure of the gas over the oil, 0 to 110 kPa.</param>
    /// <returns>The content at equilibrium.</returns>
    /// <exception cref="ArgumentNullException">The properties are null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static Ratio ContentAt(
        Gas gas,
        OilProperties oilProperties,
        Temperature temperature,
        Pressure partialPressure
    )
    {
        var pascal = Guard.InRange(partialPressure.Pascals, 0, 110_000, "Pa", nameof(partialPressure));
        return OstwaldAt(gas, oilProperties, temperature)
            * (pascal / StandardPascal * StandardKelvins / temperature.Kelvins);
    }

    /// <summary>Gases that are told.</summary>
    public enum Gas
    {
        /// <summary>Air.</summary>
        Air,

        /// <summary>Nitrogen.</summary>
        Nitrogen,

        /// <summary>Oxygen.</summary>
        Oxygen,
    }
}
