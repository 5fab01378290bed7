using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Thermal;

/// <summary>The constants that decide how far an oil expands: α60 = K0/ρ60² + K1/ρ60 + K2, per °F, with ρ60 in kg/m³ at 60 °F.</summary>
/// <remarks>
/// API MPMS 11.1-2004 / ASTM D1250-04. K0 in (kg/m³)²/°F, K1 in (kg/m³)/°F, K2 in 1/°F: the constants go with degrees Fahrenheit.
/// </remarks>
internal sealed class ThermalExpansion
{
    private ThermalExpansion(double k0, double k1, double k2, double lowest, double highest, Source source)
    {
        K0 = Guard.Finite(k0, "(kg/m³)²/°F");
        K1 = Guard.Finite(k1, "(kg/m³)/°F");
        K2 = Guard.Finite(k2, "1/°F");
        Guard.Positive(lowest, "kg/m³");
        Lowest = Density.FromKilogramsPerCubicMeter(lowest);
        Highest = Density.FromKilogramsPerCubicMeter(Guard.InRange(highest, lowest, 2000, "kg/m³"));
        Source = Guard.NotNull(source);
        Guard.InRange(PerFahrenheit(lowest), 1e-6, 0.005, "1/°F (α60 from k0, k1, k2)", nameof(k1));
        Guard.InRange(PerFahrenheit(highest), 1e-6, 0.005, "1/°F (α60 from k0, k1, k2)", nameof(k1));
    }

    /// <summary>Lubricating oils: K0 = 0, K1 = 0.34878, K2 = 0, for 800.9 to 1163.5 kg/m³ at 60 °F.</summary>
    public static ThermalExpansion LubricatingOil { get; } =
        new(
            0,
            0.34878,
            0,
            800.9,
            1163.5,
            new Source(
                SourceKind.Standard,
                "API MPMS 11.1-2004 / ASTM D1250-04",
                "lubricating oils; constants as transcribed in an open implementation"
            )
        );

    /// <summary>K0 in (kg/m³)²/°F.</summary>
    public double K0 { get; }

    /// <summary>K1 in (kg/m³)/°F.</summary>
    public double K1 { get; }

    /// <summary>K2 in 1/°F.</summary>
    public double K2 { get; }

    /// <summary>Lowest density at 60 °F for which the constants hold.</summary>
    public Density Lowest { get; }

    /// <summary>Highest density at 60 °F for which the constants hold.</summary>
    public Density Highest { get; }

    /// <summary>Where the constants come from.</summary>
    public Source Source { get; }

    /// <summary>An oil whose expansion was measured, for example an ester or polyglycol that the lubricating-oil constants do not describe.</summary>
    /// <param name="coefficient">Volumetric expansion at 60 °F (15.56 °C), α60; 0.00001 to 0.002 per K. Mineral oil: about 0.0007.</param>
    /// <returns>The constants K0 = K1 = 0, K2 = α60, for any density from 500 to 1500 kg/m³.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The coefficient lies outside its range.</exception>
    public static ThermalExpansion FromCoefficient(CoefficientOfThermalExpansion coefficient)
    {
        var perKelvin = Guard.InRange(coefficient.PerKelvin, 1e-5, 0.002, "1/K", nameof(coefficient));
        return new ThermalExpansion(
            0,
            0,
            perKelvin / 1.8,
            PhysicalRange.LowestDensity,
            PhysicalRange.HighestDensity,
            Source.UserData("measured expansion")
        );
    }

    /// <summary>Any other group of the standard, by its constants.</summary>
    /// <param name="k0">K0 in (kg/m³)²/°F.</param>
    /// <param name="k1">K1 in (kg/m³)/°F.</param>
    /// <param name="k2">K2 in 1/°F.</param>
    /// <param name="lowest">Lowest density at 60 °F for which they hold.</param>
    /// <param name="highest">Highest density at 60 °F for which they hold.</param>
    /// <param name="source">Where they come from.</param>
    /// <returns>The constants.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A constant is not finite, or α60 at an end of the range lies outside 0.000001 to 0.005 per °F.
    /// </exception>
    /// <exception cref="ArgumentNullException">The source is null.</exception>
    public static ThermalExpansion FromConstants(
        double k0,
        double k1,
        double k2,
        Density lowest,
        Density highest,
        Source source
    ) => new(k0, k1, k2, lowest.KilogramsPerCubicMeter, highest.KilogramsPerCubicMeter, source);

    internal double PerFahrenheit(double density60) => K0 / (density60 * density60) + K1 / density60 + K2;
}
