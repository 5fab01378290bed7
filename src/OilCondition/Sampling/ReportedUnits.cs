using System.Globalization;
using OilCondition.Cleanliness;
using OilCondition.Text;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition;

/// <summary>Converts a number in a unit that laboratories write into the one unit of a measurand.</summary>
/// <remarks>
/// Understood, without regard to case and blanks: mg/kg, ppm, %, % (m/m), wt% for contents; %, aw for relative saturation; °C, °F, K;
/// mm²/s, cSt, SUS (also SSU) for viscosities at 40 and 100 °C; per mL, per 100 mL, and iso-4406 (the scale number's upper limit) for
/// particles; kg/m³, g/mL for densities; mgKOH/g; min, h; and a measurand's own unit, always.
/// </remarks>
internal static class ReportedUnits
{
    /// <summary>Converts a number.</summary>
    /// <param name="measurand">What was measured.</param>
    /// <param name="value">The number as reported.</param>
    /// <param name="unit">The unit as written; empty stands for the measurand's own.</param>
    /// <param name="converted">The number in the measurand's unit, or 0.</param>
    /// <returns>Whether the unit is understood for this measurand and the number has a meaning in it.</returns>
    public static bool TryConvert(Measurand measurand, double value, string unit, out double converted)
    {
        Guard.NotNull(measurand);
        Guard.Finite(value, unit ?? "", nameof(value));
        var written = Normal(unit ?? "");
        var own = measurand.NormalUnit;
        converted = value;
        if (written.Length == 0 || written == own)
        {
            return true;
        }

        var result = own switch
        {
            "mg/kg" => Content(value, written),
            "%" => Percent(value, written),
            "°c" => Celsius(value, written),
            "mm2/s" => Viscosity(value, written, measurand.Equals(Measurands.Viscosity100) ? 100 : 40),
            "perml" => PerMillilitre(value, written),
            "kg/m3" => written is "g/ml" or "g/cm3" or "kg/l" or "kg/dm3" or "g/cc" ? 1e3 * value : null,
            "min" => written is "h" or "hours" ? 60 * value : null,
            _ => null,
        };
        converted = result ?? 0;
        return result is not null;
    }

    private static double? Content(double value, string unit) =>
        unit switch
        {
            "ppm" or "ppm(m/m)" or "ppmw" or "ug/g" or "mg/kgoil" => value,
            "%" or "%(m/m)" or "%m/m" or "%w/w" or "wt%" or "%wt" or "mass%" => 1e4 * value,
            _ => null,
        };

    private static double? Percent(double value, string unit) =>
        unit switch
        {
            "aw" or "1" or "ratio" => 100 * value,
            "%rs" or "%rh" or "%sat" => value,
            _ => null,
        };

    private static double? Celsius(double value, string unit) =>
        unit switch
        {
            "c" or "degc" => value,
            "°f" or "f" or "degf" => (value - 32) / 1.8,
            "k" => value - 273.15,
            _ => null,
        };

    private static double? Viscosity(double value, string unit, double celsius) =>
        unit switch
        {
            "cst" => value,
            "sus" or "ssu" => value is >= 32 and <= 500_000
                ? SayboltViscosity.FromSayboltSeconds(value, Temperature.FromDegreesCelsius(celsius)).Centistokes
                : null,
            _ => null,
        };

    private static double? PerMillilitre(double value, string unit) =>
        unit switch
        {
            "1/ml" or "/ml" or "counts/ml" or "p/ml" or "countsperml" => value,
            "1/100ml" or "/100ml" or "per100ml" or "counts/100ml" or "countsper100ml" => value / 100,
            "iso4406" or "iso-4406" => value is >= 0 and <= Iso4406.HighestScaleNumber && value == Math.Floor(value)
                ? Iso4406.UpperLimitPerMillilitre((int)value)
                : null,
            _ => null,
        };

    /// <summary>A unit without blanks and case, so that spellings of one unit are one text.</summary>
    public static string Normal(string unit) =>
        unit.All(character =>
            character is (>= 'a' and <= 'z') or (>= '0' and <= '9') or '%' or '/' or '(' or ')' or '-'
        )
            ? unit
            : Spelt(unit);

    private static string Spelt(string unit) =>
        new([
            .. unit.ToLower(CultureInfo.InvariantCulture)
                .Where(character => !char.IsWhiteSpace(character))
                .Select(character =>
                    character switch
                    {
                        '²' => '2',
                        '³' => '3',
                        'µ' or 'μ' => 'u',
                        _ => character,
                    }
                ),
        ]);
}
