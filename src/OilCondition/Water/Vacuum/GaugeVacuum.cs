using OilCondition.Text;
using UnitsNet;
using static System.FormattableString;

namespace OilCondition.Water;

/// <summary>A vacuum as a gauge shows it: pressure below the local atmosphere, and what that means for boiling.</summary>
/// <remarks>
/// p_abs = p_local − vacuum.   The gauge measures against the local atmosphere: the same reading at altitude is a deeper vacuum
/// (24 inHg boils water at 60.1 °C at sea level and at 52.8 °C at 500 m), and no gauge can read more than the local pressure.
/// Any pressure unit goes in through UnitsNet: <c>Pressure.FromInchesOfMercury</c> is the conventional inch at 0 °C, 3386.389 Pa.
/// Near full vacuum a gauge of half an inch of mercury leaves the boiling point open by 7 to 13 K: <see cref="BoilingPointWithin"/>.
/// Caution: vessels under vacuum can collapse, and oil under vacuum can foam over; keep to the maker's limits.
/// </remarks>
/// <example>
/// <code>
/// var vacuum = GaugeVacuum.FromReading(Pressure.FromInchesOfMercury(24), StandardAtmosphere.PressureAt(Length.FromMeters(500)));
/// var boils = vacuum.BoilingPoint.DegreesCelsius;   // 52.8
/// </code>
/// </example>
public sealed record GaugeVacuum
{
    /// <summary>Below this no dial or vacuum gauge referred to the atmosphere means anything.</summary>
    private const double LowestAbsolutePascal = 1;

    private GaugeVacuum(Pressure reading, Pressure localAtmosphere)
    {
        Reading = reading;
        LocalAtmosphere = localAtmosphere;
        AbsolutePressure = Pressure.FromPascals(localAtmosphere.Pascals - reading.Pascals);
        BoilingPoint = WaterVapour.SaturationTemperature(AbsolutePressure);
    }

    /// <summary>Pressure below the local atmosphere, as a positive figure.</summary>
    public Pressure Reading { get; }

    /// <summary>Absolute pressure of the local atmosphere.</summary>
    public Pressure LocalAtmosphere { get; }

    /// <summary>Absolute pressure behind the gauge.</summary>
    public Pressure AbsolutePressure { get; }

    /// <summary>Where water boils at that pressure; below 0.01 °C, the triple point, where ice sublimes.</summary>
    public Temperature BoilingPoint { get; }

    /// <summary>From a gauge reading.</summary>
    /// <param name="reading">Pressure below the local atmosphere, 0 or more, less than the local atmosphere by at least 1 Pa.</param>
    /// <param name="localAtmosphere">Absolute pressure of the local atmosphere, 300 to 1100 hPa, by barometer or <see cref="StandardAtmosphere"/>.</param>
    /// <returns>The vacuum.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The reading is negative, or larger than the local atmosphere allows, which no gauge can show; or the local atmosphere lies
    /// outside its range.
    /// </exception>
    public static GaugeVacuum FromReading(Pressure reading, Pressure localAtmosphere)
    {
        var local = Local(localAtmosphere);
        var pascal = Guard.NotNegative(reading.Pascals, "Pa", nameof(reading));
        if (pascal > local - LowestAbsolutePascal)
        {
            throw new ArgumentOutOfRangeException(
                nameof(reading),
                $"reading is {Describe(reading)} below atmosphere; the local atmosphere is {Describe(localAtmosphere)}, and no gauge "
                    + "can show more than that. Check altitude or barometer, the unit, and whether the figure is an absolute pressure."
            );
        }

        return new GaugeVacuum(reading, localAtmosphere);
    }

    /// <summary>From an absolute pressure.</summary>
    /// <param name="absolutePressure">Absolute pressure, 1 Pa to the local atmosphere.</param>
    /// <param name="localAtmosphere">Absolute pressure of the local atmosphere, 300 to 1100 hPa.</param>
    /// <returns>The vacuum.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A pressure lies outside its range.</exception>
    public static GaugeVacuum FromAbsolute(Pressure absolutePressure, Pressure localAtmosphere)
    {
        var local = Local(localAtmosphere);
        var pascal = Guard.InRange(
            absolutePressure.Pascals,
            LowestAbsolutePascal,
            local,
            "Pa",
            nameof(absolutePressure)
        );
        return new GaugeVacuum(Pressure.FromPascals(local - pascal), localAtmosphere);
    }

    /// <summary>The gauge reading at which water begins to boil at a temperature.</summary>
    /// <param name="temperature">Temperature of the water, −60 to 200 °C.</param>
    /// <param name="localAtmosphere">Absolute pressure of the local atmosphere, 300 to 1100 hPa.</param>
    /// <returns>The vacuum; a reading of 0 where water boils there without any, and <see cref="BoilingPoint"/> then lies lower.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static GaugeVacuum ToBoilAt(Temperature temperature, Pressure localAtmosphere)
    {
        OilTemperature.Celsius(temperature);
        var needed = WaterVapour.SaturationPressure(temperature).Pascals;
        return FromAbsolute(Pressure.FromPascals(Math.Min(Local(localAtmosphere), needed)), localAtmosphere);
    }

    /// <summary>Where water boils if the gauge is out by a given amount either way.</summary>
    /// <param name="gaugeError">How far the gauge may be out, 0 or more.</param>
    /// <returns>
    /// The coldest and the warmest boiling point. The deep end stops at 1 Pa absolute, the other at the local atmosphere.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">The error is negative or not finite.</exception>
    public (Temperature Coldest, Temperature Warmest) BoilingPointWithin(Pressure gaugeError)
    {
        var error = Guard.NotNegative(gaugeError.Pascals, "Pa", nameof(gaugeError));
        var deepest = Math.Max(LowestAbsolutePascal, AbsolutePressure.Pascals - error);
        var shallowest = Math.Min(LocalAtmosphere.Pascals, AbsolutePressure.Pascals + error);
        return (
            WaterVapour.SaturationTemperature(Pressure.FromPascals(deepest)),
            WaterVapour.SaturationTemperature(Pressure.FromPascals(shallowest))
        );
    }

    /// <summary>The vacuum in one line.</summary>
    /// <returns>For example <c>20.1 kPa absolute, 81.3 kPa below atmosphere: water boils at 60.1 °C</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(AbsolutePressure.Kilopascals)} kPa absolute, {PlainText.Number(Reading.Kilopascals)} kPa below atmosphere: "
        + (BoilingPoint.DegreesCelsius < 0.01 ? "ice sublimes at " : "water boils at ")
        + $"{PlainText.Tenths(BoilingPoint.DegreesCelsius)} °C";

    private static double Local(Pressure localAtmosphere)
    {
        Guard.InRange(localAtmosphere.Hectopascals, 300, 1100, "hPa", nameof(localAtmosphere));

        // Not hPa × 100: its rounding would refuse an absolute pressure equal to the local atmosphere.
        return localAtmosphere.Pascals;
    }

    private static string Describe(Pressure pressure) =>
        Invariant($"{pressure.Kilopascals:0.###} kPa ({pressure.InchesOfMercury:0.##} inHg)");
}
