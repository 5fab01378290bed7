using OilCondition.Text;
using UnitsNet;
using static System.FormattableString;

namespace OilCondition.Water;

/// <summary>How much water an oil holds dissolved at saturation, against temperature.</summary>
/// <remarks>
/// Formula: log10 S = A − B / T.   S: saturation content [mg/kg];  T: oil temperature [K];  A [-] and B [K]: constants of the oil.
/// Answers from −60 to 200 °C; outside the range in which the curve was measured or published every result says that it is
/// extrapolated, and an extrapolated saturation stops at 1 000 000 mg/kg.
/// No curve of a formulated hydraulic, turbine or gear oil is built in, because none is published: measure two saturations of
/// the user's own oil and use <see cref="FromTwoPoints"/>, or three and more and use <see cref="SaturationFit"/>.
/// </remarks>
/// <example>
/// <code>
/// var curve = SaturationCurve.FromTwoPoints("bearing oil",
///     Temperature.FromDegreesCelsius(20), MassFraction.FromPartsPerMillion(85),
///     Temperature.FromDegreesCelsius(60), MassFraction.FromPartsPerMillion(310), Source.UserData("site laboratory"));
/// var atStandstill = curve.Split(MassFraction.FromPartsPerMillion(180), Temperature.FromDegreesCelsius(12));
/// </code>
/// </example>
public sealed partial class SaturationCurve
{
    /// <summary>Wider than any oil (published B: 684 to 1722 K) and narrow enough that no power of ten over- or underflows.</summary>
    private const double HighestBKelvin = 10_000;

    private const double LowestSaturation = 1e-3;

    private SaturationCurve(
        string name,
        double a,
        double bKelvin,
        Temperature lowest,
        Temperature highest,
        Source source,
        string basis,
        double ageingFactor = 1
    )
    {
        Name = Guard.NotBlank(name);
        A = Guard.Finite(a, "");
        BKelvin = Guard.Positive(bKelvin, "K");
        Guard.InRange(bKelvin, 0, HighestBKelvin, "K");
        var lowestCelsius = OilTemperature.Celsius(lowest);
        Guard.InRange(highest.DegreesCelsius, lowestCelsius, OilTemperature.HighestCelsius, "°C", nameof(highest));
        Lowest = lowest;
        Highest = highest;
        Source = Guard.NotNull(source);
        Basis = basis;
        AgeingFactor = Ratio.FromDecimalFractions(ageingFactor);
        RequireAPlausibleSaturation(a, bKelvin, lowest);
        RequireAPlausibleSaturation(a, bKelvin, highest);
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

    /// <summary>How the curve came about, assumptions included, in words; and so how far to trust it.</summary>
    public string Basis { get; }

    /// <summary>The factor by which <see cref="Aged"/> multiplied the saturation; 1 for a curve taken as it is.</summary>
    public Ratio AgeingFactor { get; }

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
        var kelvins = OilTemperature.Kelvins(temperature);
        return new SaturationPoint(
            temperature,
            MassFraction.FromPartsPerMillion(SaturationPpm(kelvins)),
            !Covers(temperature),
            Source
        );
    }

    /// <summary>Splits a known total of water into dissolved and free.</summary>
    /// <param name="total">All water in the oil, as a Karl Fischer titration gives it; 0 or more.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The split.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The total is negative or not finite, or the temperature lies outside −60 to 200 °C.</exception>
    public WaterState Split(MassFraction total, Temperature temperature) => SaturationAt(temperature).Split(total);

    /// <summary>What the reading of a moisture sensor tells: dissolved water, and at saturation only a least amount.</summary>
    /// <remarks>
    /// C = aw S(T). A reading within <paramref name="sensorError"/> of saturation gives <see cref="WaterKnowledge.AtLeast"/>.
    /// Common practice, no source: capacitive sensors in oil are good to 0.02 to 0.03.
    /// </remarks>
    /// <param name="relativeSaturation">Relative saturation, 0 to 1, with a rounding grace of 0.005 at both ends.</param>
    /// <param name="temperature">Oil temperature at the sensor, −60 to 200 °C.</param>
    /// <param name="sensorError">How far the sensor may be out, 0 to 0.2.</param>
    /// <returns>The state, marked with what the sensor cannot know.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public WaterState FromSensor(Ratio relativeSaturation, Temperature temperature, Ratio sensorError)
    {
        var activity = PhysicalRange.Saturation(relativeSaturation);
        var error = PhysicalRange.SensorAccuracy(sensorError);
        var saturation = SaturationAt(temperature);
        var dissolved = MassFraction.FromPartsPerMillion(activity * saturation.Content.PartsPerMillion);
        var atSaturation = activity >= 1 - error;
        return new WaterState(dissolved, saturation, atSaturation ? WaterKnowledge.AtLeast : WaterKnowledge.Dissolved);
    }

    /// <summary>As the other overload, for a sensor whose only error is the rounding of its display, 0.005.</summary>
    /// <param name="relativeSaturation">Relative saturation, 0 to 1, with a rounding grace of 0.005 at both ends.</param>
    /// <param name="temperature">Oil temperature at the sensor, −60 to 200 °C.</param>
    /// <returns>The state, marked with what the sensor cannot know.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public WaterState FromSensor(Ratio relativeSaturation, Temperature temperature) =>
        FromSensor(relativeSaturation, temperature, Ratio.FromDecimalFractions(PhysicalRange.RelativeSaturationGrace));

    /// <summary>The same water at another temperature. What the state knows of the total stays as it is.</summary>
    /// <param name="state">The water, from a titration or a sensor.</param>
    /// <param name="temperature">The other oil temperature, −60 to 200 °C.</param>
    /// <returns>The state there, in equilibrium.</returns>
    /// <exception cref="ArgumentNullException">The state is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside −60 to 200 °C.</exception>
    public WaterState AtTemperature(WaterState state, Temperature temperature) =>
        new(Guard.NotNull(state).Total, SaturationAt(temperature), state.Knowledge);

    /// <summary>What happens to a known total of water between two temperatures.</summary>
    /// <param name="total">All water in the oil, as a Karl Fischer titration gives it; 0 or more.</param>
    /// <param name="from">Oil temperature before, for example running.</param>
    /// <param name="to">Oil temperature after, for example standstill.</param>
    /// <returns>What separates or may redissolve.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The total is negative or not finite, or a temperature lies outside −60 to 200 °C.</exception>
    public CoolDown Cool(MassFraction total, Temperature from, Temperature to)
    {
        var before = Split(total, from);
        return new CoolDown(before, AtTemperature(before, to));
    }

    /// <summary>What happens to the water of a state, known from a titration or a sensor, at another temperature.</summary>
    /// <param name="state">The water before.</param>
    /// <param name="to">Oil temperature after.</param>
    /// <returns>What separates or may redissolve.</returns>
    /// <exception cref="ArgumentNullException">The state is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside −60 to 200 °C.</exception>
    public CoolDown Cool(WaterState state, Temperature to) => new(Guard.NotNull(state), AtTemperature(state, to));

    /// <summary>Dissolved water from the reading of a moisture sensor.</summary>
    /// <remarks>
    /// C = aw S(T). A sensor sees dissolved water only: at a relative saturation of 1 the total may be any amount above this.
    /// <see cref="FromSensor(Ratio, Temperature)"/> keeps that in its result; use it wherever the figure travels on.
    /// </remarks>
    /// <param name="relativeSaturation">Relative saturation, 0 to 1 (0 to 100 %), with a rounding grace of 0.005 at both ends.</param>
    /// <param name="temperature">Oil temperature at the sensor, −60 to 200 °C.</param>
    /// <returns>Dissolved water.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public MassFraction DissolvedAt(Ratio relativeSaturation, Temperature temperature) =>
        FromSensor(relativeSaturation, temperature).Dissolved;

    /// <summary>The temperature at which a water content just saturates the oil.</summary>
    /// <remarks>T = B / (A − log10 C).</remarks>
    /// <param name="content">Water content, 0 or more.</param>
    /// <returns>The temperature, or the end of the range of −60 to 200 °C where it lies beyond.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The content is negative or not finite.</exception>
    public SeparationPoint SeparationPoint(MassFraction content)
    {
        var ppm = PhysicalRange.Water(content);
        return SeparationAtReciprocal(ppm > 0 ? (A - Math.Log10(ppm)) / BKelvin : double.MaxValue);
    }

    /// <summary>Water that the oil takes up from, or gives off to, air that it is in contact with until nothing changes.</summary>
    /// <remarks>C = S(T) min(1, p_w / p_sat(T)), both at the oil's temperature T; p_w is the vapour pressure in the air.</remarks>
    /// <param name="air">Air in the head-space, or behind a breather.</param>
    /// <param name="oilTemperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The dissolved water; where water condenses into the oil, it is saturated and holds at least that.</returns>
    /// <exception cref="ArgumentNullException">The air is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside −60 to 200 °C.</exception>
    public WaterState EquilibriumWith(HumidAir air, Temperature oilTemperature) =>
        SaturationAt(oilTemperature).EquilibriumWith(Guard.NotNull(air).VapourPressure);

    /// <summary>The oil with its constants and range.</summary>
    /// <returns>For example <c>transformer mineral oil: log10 S = 7.09 - 1567 K/T, 0 to 100 °C</c>.</returns>
    public override string ToString() =>
        Invariant($"{Name}: log10 S = {A:0.##} - {BKelvin:0} K/T, {PlainText.Tenths(Lowest.DegreesCelsius)} to ")
        + $"{PlainText.Tenths(Highest.DegreesCelsius)} °C";

    /// <summary>The split of a total that a model computed; where water comes in without end it may lie beyond what is believed of a reading.</summary>
    internal WaterState SplitComputed(MassFraction total, Temperature temperature) =>
        new(total, SaturationAt(temperature), WaterKnowledge.Total);

    /// <summary>1/T to a separation point, ends of the range of the library named as such.</summary>
    internal SeparationPoint SeparationAtReciprocal(double perKelvin)
    {
        var coldest = Temperature.FromDegreesCelsius(OilTemperature.LowestCelsius);
        var hottest = Temperature.FromDegreesCelsius(OilTemperature.HighestCelsius);
        if (perKelvin >= 1 / coldest.Kelvins)
        {
            return new SeparationPoint(coldest, !Covers(coldest), staysDissolved: true);
        }

        if (perKelvin < 1 / hottest.Kelvins)
        {
            return new SeparationPoint(hottest, !Covers(hottest), staysFree: true);
        }

        var temperature = Temperature.FromKelvins(1 / perKelvin);
        return new SeparationPoint(temperature, !Covers(temperature));
    }

    private double SaturationPpm(double kelvins) =>
        Math.Min(PhysicalRange.PureWaterMgPerKg, Math.Pow(10, A - BKelvin / kelvins));

    private static void RequireAPlausibleSaturation(double a, double bKelvin, Temperature temperature)
    {
        var exponent = a - bKelvin / temperature.Kelvins;
        if (!(exponent >= Math.Log10(LowestSaturation) - 1e-9 && exponent <= 6 + 1e-9))
        {
            throw new ArgumentOutOfRangeException(
                nameof(a),
                Invariant(
                    $"a = {a:G7} and bKelvin = {bKelvin:G7} K give a saturation of 10^{exponent:G5} mg/kg at {temperature.DegreesCelsius:0.##} °C; "
                ) + "allowed: 0.001 to 1000000 mg/kg. A and B go with a logarithm to base 10, S in mg/kg and T in K."
            );
        }
    }
}
