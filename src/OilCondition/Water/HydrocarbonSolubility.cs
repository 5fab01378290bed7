using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>Water that a hydrocarbon without additives dissolves, from its hydrogen-to-carbon ratio: the NACA relation itself.</summary>
/// <remarks>
/// log10 X = −(4200 h + 1050)(1/T − 0.0016) + 2.   X: solubility [mol %];  h: mass of hydrogen over mass of carbon;  T [K].
/// Source: Hibbard and Schalla, NACA RM E52D24 (1952), non-olefinic hydrocarbons from gasoline to lubricating oil.
/// <see cref="SaturationCurve.FromHydrocarbon"/> is its dilute limit as A and B, 0.4 % lower for a base oil at 60 °C.
/// </remarks>
internal static class HydrocarbonSolubility
{
    public const double WaterGramPerMole = 18.015;

    /// <summary>K = 4200 h + 1050, in kelvin.</summary>
    public static double Slope(double hydrogenToCarbon) =>
        4200 * Guard.InRange(hydrogenToCarbon, 0.08, 0.34, "(mass ratio)") + 1050;

    public static double GramPerMole(MolarMass molarMass) =>
        Guard.InRange(molarMass.GramsPerMole, 50, 2000, "g/mol", nameof(molarMass));

    /// <summary>Mole fraction of water at saturation.</summary>
    /// <param name="hydrogenToCarbon">Mass of hydrogen over mass of carbon, 0.08 to 0.34.</param>
    /// <param name="temperature">Temperature, −60 to 200 °C; the range of the data behind the relation is not known here.</param>
    /// <returns>Mole fraction.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static Ratio MoleFraction(double hydrogenToCarbon, Temperature temperature)
    {
        var slope = Slope(hydrogenToCarbon);
        return Ratio.FromDecimalFractions(Math.Pow(10, -slope * (1 / OilTemperature.Kelvins(temperature) - 0.0016)));
    }

    /// <summary>Mass of water at saturation per mass of the solution.</summary>
    /// <param name="hydrogenToCarbon">Mass of hydrogen over mass of carbon, 0.08 to 0.34.</param>
    /// <param name="molarMass">Mean molar mass of the oil, 50 to 2000 g/mol.</param>
    /// <param name="temperature">Temperature, −60 to 200 °C; the range of the data behind the relation is not known here.</param>
    /// <returns>Water content at saturation.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static MassFraction Saturation(double hydrogenToCarbon, MolarMass molarMass, Temperature temperature)
    {
        var oil = GramPerMole(molarMass);
        var x = MoleFraction(hydrogenToCarbon, temperature).DecimalFractions;
        return MassFraction.FromDecimalFractions(x * WaterGramPerMole / (x * WaterGramPerMole + (1 - x) * oil));
    }
}
