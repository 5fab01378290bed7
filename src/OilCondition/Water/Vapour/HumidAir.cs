using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>Air with its water vapour: in the plant, in a head-space, behind a desiccant breather, or as sweep air.</summary>
/// <remarks>
/// p_w = RH p_sat(T);  dew point: p_sat(T_d) = p_w;  humidity ratio W = 0.621945 p_w / (p − p_w) (ideal gases).
/// Below 0.01 °C saturation is that over ice: a relative humidity over supercooled water, as weather services give it, is higher, and
/// the dew point is a frost point. The enhancement factor of air, below 0.5 %, is neglected.
/// </remarks>
/// <example>
/// <code>
/// var air = HumidAir.FromRelativeHumidity(Temperature.FromDegreesCelsius(25), RelativeHumidity.FromPercent(60));
/// var content = curve.EquilibriumWith(air, Temperature.FromDegreesCelsius(40)).Dissolved;
/// </code>
/// </example>
public sealed record HumidAir
{
    /// <summary>Molar mass of water over that of dry air (ASHRAE Handbook, Fundamentals 2017, chapter 1).</summary>
    private const double MolarMassRatio = 0.621945;

    /// <summary>Vapour pressure at a frost point of about −110 °C, beyond any dryer.</summary>
    private const double LowestDewPointPascal = 1e-4;

    private HumidAir(Temperature temperature, double vapourPascal)
    {
        Temperature = temperature;
        VapourPressure = Pressure.FromPascals(vapourPascal);
        RelativeHumidity = RelativeHumidity.FromPercent(
            100 * vapourPascal / WaterVapour.SaturationPressure(temperature).Pascals
        );
    }

    /// <summary>Air temperature.</summary>
    public Temperature Temperature { get; }

    /// <summary>Partial pressure of water vapour, p_w.</summary>
    public Pressure VapourPressure { get; }

    /// <summary>Relative humidity at the air's temperature.</summary>
    public RelativeHumidity RelativeHumidity { get; }

    /// <summary>Air of known relative humidity.</summary>
    /// <param name="airTemperature">Air temperature, −60 to 200 °C.</param>
    /// <param name="relativeHumidity">Relative humidity, 0 to 100 %, with a rounding grace of 0.5 % at both ends.</param>
    /// <returns>The air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static HumidAir FromRelativeHumidity(Temperature airTemperature, RelativeHumidity relativeHumidity)
    {
        OilTemperature.Celsius(airTemperature);
        var fraction = PhysicalRange.Saturation(relativeHumidity.Percent / 100, nameof(relativeHumidity));
        return new HumidAir(airTemperature, fraction * WaterVapour.SaturationPressure(airTemperature).Pascals);
    }

    /// <summary>Air of known dew point, for example behind a dryer or a desiccant breather.</summary>
    /// <param name="airTemperature">Air temperature, −60 to 200 °C.</param>
    /// <param name="dewPoint">Dew point, or frost point below 0.01 °C; −110 °C to the air temperature.</param>
    /// <returns>The air.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static HumidAir FromDewPoint(Temperature airTemperature, Temperature dewPoint)
    {
        var highest = OilTemperature.Celsius(airTemperature);
        Guard.InRange(dewPoint.DegreesCelsius, -110, highest, "°C", nameof(dewPoint));
        return new HumidAir(airTemperature, WaterVapour.SaturationPressure(dewPoint).Pascals);
    }

    /// <summary>The temperature at which water condenses, or frost forms, when the air is cooled at constant pressure.</summary>
    /// <param name="dewPoint">The dew or frost point; the air temperature where the method returns false.</param>
    /// <returns>False for air so dry (below 0.0001 Pa, about −110 °C) that there is no meaningful dew point.</returns>
    public bool TryDewPoint(out Temperature dewPoint)
    {
        var isMeaningful = VapourPressure.Pascals >= LowestDewPointPascal;
        dewPoint = isMeaningful ? WaterVapour.SaturationTemperature(VapourPressure) : Temperature;
        return isMeaningful;
    }

    /// <summary>Mass of vapour per mass of dry air, W = 0.621945 p_w / (p − p_w).</summary>
    /// <param name="absolutePressure">Total pressure p, above the vapour pressure.</param>
    /// <returns>Humidity ratio, kg/kg.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure is not above the vapour pressure: such air would be boiling.</exception>
    public Ratio HumidityRatioAt(Pressure absolutePressure)
    {
        var vapour = VapourPressure.Pascals;
        var excess = absolutePressure.Pascals - vapour;
        if (!(excess > 1e-6 * vapour && excess > 0))
        {
            Guard.InRange(absolutePressure.Pascals, vapour * (1 + 1e-6), 1e8, "Pa", nameof(absolutePressure));
        }

        return Ratio.FromDecimalFractions(MolarMassRatio * vapour / excess);
    }

    /// <summary>The air in one line.</summary>
    /// <returns>For example <c>25 °C, 60 % relative humidity</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Tenths(Temperature.DegreesCelsius)} °C, {PlainText.Number(RelativeHumidity.Percent)} % relative humidity";
}
