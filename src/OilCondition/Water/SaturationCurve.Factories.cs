using OilCondition.Text;
using UnitsNet;
using static System.FormattableString;

namespace OilCondition.Water;

/// <content>The ways to a curve.</content>
public sealed partial class SaturationCurve
{
    private const string ConstantsGiven = "constants given";

    /// <summary>A curve from known constants.</summary>
    /// <param name="name">The oil, in words.</param>
    /// <param name="a">Constant A, for S in mg/kg and the logarithm to base 10.</param>
    /// <param name="bKelvin">Constant B in kelvin, above 0 and at most 10 000.</param>
    /// <param name="lowest">Lowest temperature at which the constants hold.</param>
    /// <param name="highest">Highest temperature at which the constants hold.</param>
    /// <param name="source">Where the constants come from.</param>
    /// <returns>The curve.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A constant is not finite, B is not above 0, the range lies outside −60 to 200 °C, or the saturation at an end of the range
    /// lies outside 0.001 to 1 000 000 mg/kg.
    /// </exception>
    public static SaturationCurve FromCoefficients(
        string name,
        double a,
        double bKelvin,
        Temperature lowest,
        Temperature highest,
        Source source
    ) => new(name, a, bKelvin, lowest, highest, source, ConstantsGiven);

    /// <summary>The curve through two measured saturations of one oil.</summary>
    /// <remarks>B = log10(S2 / S1) / (1/T1 − 1/T2); A = log10 S1 + B / T1. The valid range is the span of the two temperatures.</remarks>
    /// <param name="name">The oil, in words.</param>
    /// <param name="firstTemperature">Temperature of the first point.</param>
    /// <param name="firstSaturation">Saturation content at the first point.</param>
    /// <param name="secondTemperature">Temperature of the second point, different from the first.</param>
    /// <param name="secondSaturation">Saturation content at the second point.</param>
    /// <param name="source">Who measured the points.</param>
    /// <returns>The curve.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// A temperature lies outside −60 to 200 °C, a saturation is not above 0, or the points are so steep that B exceeds 10 000 K.
    /// </exception>
    /// <exception cref="ArgumentException">Both points have one temperature, or the saturation does not rise with temperature.</exception>
    public static SaturationCurve FromTwoPoints(
        string name,
        Temperature firstTemperature,
        MassFraction firstSaturation,
        Temperature secondTemperature,
        MassFraction secondSaturation,
        Source source
    )
    {
        var t1 = OilTemperature.Kelvins(firstTemperature);
        var t2 = OilTemperature.Kelvins(secondTemperature);
        var s1 = Guard.Positive(firstSaturation.PartsPerMillion, "mg/kg", nameof(firstSaturation));
        var s2 = Guard.Positive(secondSaturation.PartsPerMillion, "mg/kg", nameof(secondSaturation));
        if (Math.Abs(t1 - t2) < 1e-6)
        {
            throw new ArgumentException(
                Invariant($"Both points are at {t1 - 273.15:0.##} °C; two different temperatures are needed."),
                nameof(secondTemperature)
            );
        }

        var b = Math.Log10(s2 / s1) / (1 / t1 - 1 / t2);
        if (!(b > 0))
        {
            throw new ArgumentException(
                Invariant(
                    $"Saturation goes from {s1:0.##} mg/kg at {t1 - 273.15:0.##} °C to {s2:0.##} mg/kg at {t2 - 273.15:0.##} °C; it must rise with temperature."
                ),
                nameof(secondSaturation)
            );
        }

        var firstIsLower = t1 < t2;
        return new SaturationCurve(
            name,
            Math.Log10(s1) + b / t1,
            b,
            firstIsLower ? firstTemperature : secondTemperature,
            firstIsLower ? secondTemperature : firstTemperature,
            source,
            "two measured points, scatter unknown"
        );
    }

    /// <summary>The curve through one measurement, with an assumed slope.</summary>
    /// <remarks>
    /// A = log10 S + B / T. The measurement fixes the level; the slope is the caller's assumption, shown in <see cref="Basis"/> and
    /// <see cref="BKelvin"/>, and the valid range is the one temperature: everywhere else results are flagged as extrapolated.
    /// Published slopes: 1567 and 1670 K (transformer mineral oil), about 1722 K (NACA relation, H/C 0.160), 684 K (natural ester).
    /// A slope wrong by 150 K moves the saturation 20 K away by 7 to 8 %.
    /// </remarks>
    /// <param name="name">The oil, in words.</param>
    /// <param name="measurement">One Karl Fischer value with the sensor reading on the same sample, or one measured saturation.</param>
    /// <param name="assumedBKelvin">Assumed slope B in kelvin, above 0 and at most 10 000.</param>
    /// <param name="source">Who measured, and on what ground the slope is assumed.</param>
    /// <returns>The curve.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">B is not above 0 or exceeds 10 000 K.</exception>
    public static SaturationCurve FromOnePoint(
        string name,
        SaturationMeasurement measurement,
        double assumedBKelvin,
        Source source
    )
    {
        var point = Guard.NotNull(measurement);
        var b = Guard.Positive(assumedBKelvin, "K");
        var a = Math.Log10(point.Saturation.PartsPerMillion) + b / point.Temperature.Kelvins;
        return new SaturationCurve(
            name,
            a,
            b,
            point.Temperature,
            point.Temperature,
            source,
            $"one measurement, slope B = {PlainText.Number(b)} K assumed"
        );
    }

    /// <summary>An estimate for a hydrocarbon oil without additives, from its hydrogen-to-carbon ratio and molar mass.</summary>
    /// <remarks>
    /// log10 X = −K (1/T − 0.0016) + 2,  K = 4200 h + 1050.   X: solubility [mol %];  h: mass of hydrogen over mass of carbon [-];
    /// T [K]. For a dilute solution A = 6 + log10(18.015 / M) + 0.0016 K and B = K, M: molar mass of the oil [g/mol].
    /// Source: Hibbard and Schalla, NACA RM E52D24 (1952), for non-olefinic hydrocarbons from gasoline to lubricating oil.
    /// The temperature range of the data behind it is not known here; 0 to 60 °C is taken, and beyond it results are flagged.
    /// Additives and oxidation raise the saturation of a formulated oil well above this, often several times.
    /// </remarks>
    /// <param name="name">The oil, in words.</param>
    /// <param name="hydrogenToCarbon">Mass of hydrogen over mass of carbon, 0.08 to 0.34; about 0.155 to 0.17 for mineral base oils.</param>
    /// <param name="molarMass">Mean molar mass of the oil, 50 to 2000 g/mol.</param>
    /// <returns>The curve.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static SaturationCurve FromHydrocarbon(string name, double hydrogenToCarbon, MolarMass molarMass)
    {
        var k = HydrocarbonSolubility.Slope(hydrogenToCarbon);
        var gramPerMole = HydrocarbonSolubility.GramPerMole(molarMass);
        return new SaturationCurve(
            name,
            6 + Math.Log10(HydrocarbonSolubility.WaterGramPerMole / gramPerMole) + 0.0016 * k,
            k,
            Temperature.FromDegreesCelsius(0),
            Temperature.FromDegreesCelsius(60),
            new Source(
                SourceKind.Paper,
                "Hibbard and Schalla, NACA RM E52D24 (1952), solubility of water in hydrocarbons; temperature range assumed"
            ),
            "estimated from hydrogen-to-carbon ratio and molar mass, without additives"
        );
    }

    /// <summary>The same curve for an oil that has aged, its saturation multiplied by one factor at all temperatures.</summary>
    /// <remarks>
    /// S_aged = f S. Saturation rises with acids, other polar products and additives; no published formula was found, so one factor,
    /// found from one measurement (measured saturation over the curve), is a modelling choice and not a published relation.
    /// </remarks>
    /// <param name="factor">Factor f, 0.1 to 10.</param>
    /// <param name="source">On what ground the factor is chosen.</param>
    /// <returns>The curve of the aged oil; <see cref="AgeingFactor"/> shows the factor.</returns>
    /// <exception cref="ArgumentNullException">The source is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The factor lies outside 0.1 to 10.</exception>
    public SaturationCurve Aged(Ratio factor, Source source)
    {
        var f = Guard.InRange(factor.DecimalFractions, 0.1, 10, "(ratio)", nameof(factor));
        return new SaturationCurve(
            Name,
            A + Math.Log10(f),
            BKelvin,
            Lowest,
            Highest,
            source,
            $"{Basis}; saturation times {PlainText.Number(f)} for ageing",
            AgeingFactor.DecimalFractions * f
        );
    }

    /// <summary>A curve as a file has it: one that was written is read back with how it came about.</summary>
    internal static SaturationCurve FromFile(
        string name,
        double a,
        double bKelvin,
        Temperature lowest,
        Temperature highest,
        Source source,
        string basis,
        double ageingFactor
    ) => new(name, a, bKelvin, lowest, highest, source, basis.Length == 0 ? ConstantsGiven : basis, ageingFactor);

    internal static SaturationCurve FromFit(
        string name,
        double a,
        double bKelvin,
        Temperature lowest,
        Temperature highest,
        Source source,
        int measurements
    ) => new(name, a, bKelvin, lowest, highest, source, $"fitted to {measurements} measurements");
}
