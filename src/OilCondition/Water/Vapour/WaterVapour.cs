using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>Properties of pure water and its vapour at saturation.</summary>
/// <remarks>
/// Over liquid water: IAPWS R7-97(2012) (IF97), region 4, 273.15 to 647.096 K; within 100 ppm of the equation of Wagner and Pruss
/// from 5 to 120 °C. Over ice: IAPWS R14-08(2011), 50 to 273.16 K. The two meet at the triple point, 273.16 K.
/// Pure water: the presence of air raises the vapour pressure by less than 0.5 % at one atmosphere (enhancement factor), which is
/// neglected throughout.
/// </remarks>
/// <example>
/// <code>
/// var boils = WaterVapour.SaturationTemperature(Pressure.FromKilopascals(20)).DegreesCelsius;   // 60.06
/// </code>
/// </example>
public static class WaterVapour
{
    private const double HighestEnthalpyKelvins = 623.15;

    /// <summary>Saturation pressure: over liquid water from the triple point upward, over ice below it.</summary>
    /// <param name="temperature">Temperature, 50 to 647.096 K.</param>
    /// <returns>Absolute pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public static Pressure SaturationPressure(Temperature temperature)
    {
        var kelvins = Kelvins(temperature, IceSublimation.LowestKelvins, If97Saturation.HighestKelvins);
        return Pressure.FromPascals(
            kelvins < IceSublimation.TriplePointKelvins
                ? IceSublimation.Pascal(kelvins)
                : If97Saturation.Pascal(kelvins)
        );
    }

    /// <summary>Saturation pressure over liquid water, supercooled by up to 0.01 K.</summary>
    /// <param name="temperature">Temperature, 273.15 to 647.096 K.</param>
    /// <returns>Absolute pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public static Pressure PressureOverLiquid(Temperature temperature) =>
        Pressure.FromPascals(
            If97Saturation.Pascal(Kelvins(temperature, If97Saturation.LowestKelvins, If97Saturation.HighestKelvins))
        );

    /// <summary>Sublimation pressure of ice.</summary>
    /// <param name="temperature">Temperature, 50 to 273.16 K.</param>
    /// <returns>Absolute pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public static Pressure PressureOverIce(Temperature temperature) =>
        Pressure.FromPascals(
            IceSublimation.Pascal(Kelvins(temperature, IceSublimation.LowestKelvins, IceSublimation.TriplePointKelvins))
        );

    /// <summary>The temperature at which water boils, or below 611.657 Pa ice sublimes.</summary>
    /// <param name="absolutePressure">Absolute pressure, 1e-6 Pa to 22.064 MPa.</param>
    /// <returns>The saturation temperature; below the triple point, 0.01 °C, that at which ice sublimes.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The pressure lies outside its range.</exception>
    public static Temperature SaturationTemperature(Pressure absolutePressure)
    {
        var pascal = Guard.InRange(
            absolutePressure.Pascals,
            1e-6,
            If97Saturation.HighestPascal,
            "Pa",
            nameof(absolutePressure)
        );
        return Temperature.FromKelvins(
            pascal < IceSublimation.TriplePointPascal ? IceSublimation.Kelvins(pascal) : If97Saturation.Kelvins(pascal)
        );
    }

    /// <summary>Heat taken up by liquid water when it evaporates at saturation, h″ − h′.</summary>
    /// <remarks>
    /// Enthalpies of IF97 regions 1 and 2 at the saturation pressure. Accuracy as checked: within 0.1 kJ/kg of the printed
    /// steam-table figures from 0.01 to 100 °C, and 1e-8 of the release's check values of both regions as public implementations quote
    /// them. The uncertainty of the enthalpies themselves is stated in the release, which was not seen here: near 0.2 % (from memory).
    /// </remarks>
    /// <param name="temperature">Temperature, 273.15 to 623.15 K.</param>
    /// <returns>Latent heat.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public static SpecificEnergy LatentHeat(Temperature temperature)
    {
        var kelvins = Kelvins(temperature, If97Saturation.LowestKelvins, HighestEnthalpyKelvins);
        var pascal = If97Saturation.Pascal(kelvins);
        return SpecificEnergy.FromJoulesPerKilogram(
            If97Vapour.At(kelvins, pascal).Enthalpy - If97Liquid.At(kelvins, pascal).Enthalpy
        );
    }

    /// <summary>Specific volume of saturated vapour, IF97 region 2.</summary>
    /// <param name="temperature">Temperature, 273.15 to 623.15 K.</param>
    /// <returns>Specific volume.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public static SpecificVolume SaturatedVapourVolume(Temperature temperature)
    {
        var kelvins = Kelvins(temperature, If97Saturation.LowestKelvins, HighestEnthalpyKelvins);
        return SpecificVolume.FromCubicMetersPerKilogram(If97Vapour.At(kelvins, If97Saturation.Pascal(kelvins)).Volume);
    }

    /// <summary>Specific volume of liquid water at saturation, IF97 region 1.</summary>
    /// <param name="temperature">Temperature, 273.15 to 623.15 K.</param>
    /// <returns>Specific volume.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public static SpecificVolume LiquidVolume(Temperature temperature)
    {
        var kelvins = Kelvins(temperature, If97Saturation.LowestKelvins, HighestEnthalpyKelvins);
        return SpecificVolume.FromCubicMetersPerKilogram(If97Liquid.At(kelvins, If97Saturation.Pascal(kelvins)).Volume);
    }

    /// <summary>Volume that a vacuum pump has to swallow for a flow of water vapour, as an ideal gas.</summary>
    /// <remarks>Q = ṁ R T / p with R = 461.526 J/(kg K). Up to 1 % too large at saturation near 100 °C. Sweep and leak air come on top.</remarks>
    /// <param name="waterFlow">Mass flow of vapour, 0 or more.</param>
    /// <param name="temperature">Vapour temperature, −60 to 200 °C.</param>
    /// <param name="absolutePressure">Partial pressure of the vapour, or the whole pressure where there is vapour only; above 0.</param>
    /// <returns>Volume flow at that temperature and pressure.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static VolumeFlow VolumeFlowOf(MassFlow waterFlow, Temperature temperature, Pressure absolutePressure)
    {
        var kilogramPerSecond = Guard.InRange(waterFlow.KilogramsPerSecond, 0, 1e6, "kg/s", nameof(waterFlow));
        var kelvins = OilTemperature.Kelvins(temperature);
        var pascal = Guard.InRange(
            absolutePressure.Pascals,
            1e-6,
            If97Saturation.HighestPascal,
            "Pa",
            nameof(absolutePressure)
        );
        return VolumeFlow.FromCubicMetersPerSecond(kilogramPerSecond * If97Saturation.GasConstant * kelvins / pascal);
    }

    /// <summary>Heat that a flow of evaporating water takes, ṁ h_fg(T).</summary>
    /// <param name="waterFlow">Mass flow of water that evaporates, 0 or more.</param>
    /// <param name="temperature">Temperature, 273.15 to 623.15 K.</param>
    /// <returns>Power.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static Power HeatToEvaporate(MassFlow waterFlow, Temperature temperature) =>
        Power.FromWatts(
            Guard.InRange(waterFlow.KilogramsPerSecond, 0, 1e6, "kg/s", nameof(waterFlow))
                * LatentHeat(temperature).JoulesPerKilogram
        );

    /// <summary>How far oil cools when water flashes out of it and no heat is added, ΔT = w h_fg / c.</summary>
    /// <param name="removed">Water that evaporates, per mass of oil, 0 to 500 000 mg/kg.</param>
    /// <param name="temperature">Temperature, 273.15 to 623.15 K.</param>
    /// <param name="heatCapacity">Specific heat capacity of the oil, c; 500 to 5000 J/(kg K).</param>
    /// <returns>The drop, as a positive difference. 1 % of water takes about 12 K out of a mineral oil.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static TemperatureDelta CoolingByEvaporation(
        MassFraction removed,
        Temperature temperature,
        SpecificEntropy heatCapacity
    )
    {
        var fraction = PhysicalRange.Water(removed) * 1e-6;
        var c = PhysicalRange.HeatCapacity(heatCapacity);
        return TemperatureDelta.FromKelvins(fraction * LatentHeat(temperature).JoulesPerKilogram / c);
    }

    /// <summary>Temperatures converted from °C to K and back may miss an end of a range by a rounding error.</summary>
    private static double Kelvins(Temperature temperature, double lowest, double highest)
    {
        const double Rounding = 1e-9;
        var kelvins = Guard.InRange(
            temperature.Kelvins,
            lowest - Rounding,
            highest + Rounding,
            "K",
            nameof(temperature)
        );
        return Math.Min(highest, Math.Max(lowest, kelvins));
    }
}
