using OilCondition.Guards;
using OilCondition.Sources;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>How much water an oil holds dissolved at saturation, against temperature.</summary>
/// <remarks>
/// Formula: log10 S = A − B / T.   S: saturation content [mg/kg];  T: oil temperature [K];  A [-] and B [K]: constants of the oil.
/// Answers from −60 to 200 °C; outside the range in which the curve was measured or published every result says that it is extrapolated.
/// No curve of a formulated hydraulic, turbine or gear oil is built in, because none is published: use
/// <see cref="FromTwoPoints"/> with two saturations measured on the user's own oil.
/// </remarks>
/// <example>
/// <code>
/// var curve = SaturationCurve.FromTwoPoints("bearing oil",
///     Temperature.FromDegreesCelsius(20), MassFraction.FromPartsPerMillion(85),
///     Temperature.FromDegreesCelsius(60), MassFraction.FromPartsPerMillion(310), Source.UserData("site laboratory"));
/// var atStandstill = curve.Split(MassFraction.FromPartsPerMillion(180), Temperature.FromDegreesCelsius(12));
/// </code>
/// </example>
public sealed class SaturationCurve
{
    private SaturationCurve(
        string name,
        double a,
        double bKelvin,
        Temperature lowest,
        Temperature highest,
        Source source
    )
    {
        Name = Guard.NotBlank(name, nameof(name));
        A = Guard.Finite(a, "", nameof(a));
        BKelvin = Guard.Positive(bKelvin, "K", nameof(bKelvin));
        var lowestCelsius = OilTemperature.Celsius(lowest, nameof(lowest));
        Guard.InRange(highest.DegreesCelsius, lowestCelsius, OilTemperature.HighestCelsius, "°C", nameof(highest));
        Lowest = lowest;
        Highest = highest;
        Source = Guard.NotNull(source, nameof(source));
    }

    /// <summary>The oil, in words.</summary>
    public string Name { get; }

    /// <summary>Constant A of the oil, dimensionless, for S in mg/kg.</summary>
    public double A { get; }

    /// <summary>Constant B of the oil, in kelvin.</summary>
    public double BKelvin { get; }

    /// <summary>Lowest temperature at which the curve was measured or published.</summary>
    public Temperature Lowest { get; }

    /// <summary>Highest temperature at which the curve was measured or published.</summary>
    public Temperature Highest { get; }

    /// <summary>Where the curve comes from.</summary>
    public Source Source { get; }

    /// <summary>A curve from known constants.</summary>
    /// <param name="name">The oil, in words.</param>
    /// <param name="a">Constant A, for S in mg/kg and the logarithm to base 10.</param>
    /// <param name="bKelvin">Constant B in kelvin, above 0.</param>
    /// <param name="lowest">Lowest temperature at which the constants hold.</param>
    /// <param name="highest">Highest temperature at which the constants hold.</param>
    /// <param name="source">Where the constants come from.</param>
    /// <returns>The curve.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A constant is not finite, B is not above 0, or the range lies outside −60 to 200 °C.</exception>
    public static SaturationCurve FromCoefficients(
        string name,
        double a,
        double bKelvin,
        Temperature lowest,
        Temperature highest,
        Source source
    ) => new(name, a, bKelvin, lowest, highest, source);

    /// <summary>The curve through two measured saturations of one oil.</summary>
    /// <remarks>B = log10(S2 / S1) / (1/T1 − 1/T2); A = log10 S1 + B / T1. The valid range is the span of the two temperatures.</remarks>
    /// <param name="name">The oil, in words.</param>
    /// <param name="firstTemperature">Temperature of the first point.</param>
    /// <param name="firstSaturation">Saturation content at the first point.</param>
    /// <param name="secondTemperature">Temperature of the second point, different from the first.</param>
    /// <param name="secondSaturation">Saturation content at the second point.</param>
    /// <param name="source">Who measured the points.</param>
    /// <returns>The curve.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A temperature lies outside −60 to 200 °C or a saturation is not above 0.</exception>
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
        var t1 = OilTemperature.Kelvins(firstTemperature, nameof(firstTemperature));
        var t2 = OilTemperature.Kelvins(secondTemperature, nameof(secondTemperature));
        var s1 = Guard.Positive(firstSaturation.PartsPerMillion, "mg/kg", nameof(firstSaturation));
        var s2 = Guard.Positive(secondSaturation.PartsPerMillion, "mg/kg", nameof(secondSaturation));
        if (Math.Abs(t1 - t2) < 1e-6)
        {
            throw new ArgumentException(
                $"Both points are at {t1 - 273.15:0.##} °C; two different temperatures are needed.",
                nameof(secondTemperature)
            );
        }

        var b = Math.Log10(s2 / s1) / (1 / t1 - 1 / t2);
        if (!(b > 0))
        {
            throw new ArgumentException(
                $"Saturation goes from {s1:0.##} mg/kg at {t1 - 273.15:0.##} °C to {s2:0.##} mg/kg at {t2 - 273.15:0.##} °C; it must rise with temperature.",
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
            source
        );
    }

    /// <summary>Whether a temperature lies in the range in which the curve was measured or published.</summary>
    /// <param name="temperature">Oil temperature.</param>
    /// <returns>True inside the range, both ends included.</returns>
    public bool Covers(Temperature temperature) =>
        temperature.Kelvins >= Lowest.Kelvins - 1e-9 && temperature.Kelvins <= Highest.Kelvins + 1e-9;

    /// <summary>Dissolved water at saturation.</summary>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The content, flagged where the curve is extrapolated.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside −60 to 200 °C.</exception>
    public SaturationPoint SaturationAt(Temperature temperature)
    {
        var kelvins = OilTemperature.Kelvins(temperature, nameof(temperature));
        var content = MassFraction.FromPartsPerMillion(Math.Pow(10, A - BKelvin / kelvins));
        return new SaturationPoint(temperature, content, !Covers(temperature));
    }

    /// <summary>Splits a known total of water into dissolved and free.</summary>
    /// <param name="total">All water in the oil, as a Karl Fischer titration gives it; 0 or more.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The split.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The total is negative or not finite, or the temperature lies outside −60 to 200 °C.</exception>
    public WaterState Split(MassFraction total, Temperature temperature)
    {
        Guard.InRange(total.PartsPerMillion, 0, 1e6, "mg/kg", nameof(total));
        return new WaterState(total, SaturationAt(temperature));
    }

    /// <summary>Dissolved water from the reading of a moisture sensor.</summary>
    /// <remarks>C = aw S(T). A sensor sees dissolved water only: at a relative saturation of 1 the total may be any amount above this.</remarks>
    /// <param name="relativeSaturation">Relative saturation, 0 to 1 (0 to 100 %).</param>
    /// <param name="temperature">Oil temperature at the sensor, −60 to 200 °C.</param>
    /// <returns>Dissolved water.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public MassFraction DissolvedAt(Ratio relativeSaturation, Temperature temperature)
    {
        var activity = Guard.InRange(relativeSaturation.DecimalFractions, 0, 1, "(ratio)", nameof(relativeSaturation));
        return MassFraction.FromPartsPerMillion(activity * SaturationAt(temperature).Content.PartsPerMillion);
    }

    /// <summary>The temperature at which a water content just saturates the oil.</summary>
    /// <remarks>T = B / (A − log10 C).</remarks>
    /// <param name="content">Water content, 0 or more.</param>
    /// <returns>The temperature, or the end of the range of −60 to 200 °C where it lies beyond.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The content is negative or not finite.</exception>
    public SeparationPoint SeparationPoint(MassFraction content)
    {
        var ppm = Guard.InRange(content.PartsPerMillion, 0, 1e6, "mg/kg", nameof(content));
        var lowest = Temperature.FromDegreesCelsius(OilTemperature.LowestCelsius);
        var highest = Temperature.FromDegreesCelsius(OilTemperature.HighestCelsius);
        if (ppm <= SaturationAt(lowest).Content.PartsPerMillion)
        {
            return new SeparationPoint(SeparationOutcome.StaysDissolved, lowest, !Covers(lowest));
        }

        if (ppm > SaturationAt(highest).Content.PartsPerMillion)
        {
            return new SeparationPoint(SeparationOutcome.StaysFree, highest, !Covers(highest));
        }

        var temperature = Temperature.FromKelvins(BKelvin / (A - Math.Log10(ppm)));
        return new SeparationPoint(SeparationOutcome.SeparatesBelow, temperature, !Covers(temperature));
    }
}
