using OilCondition.Text;
using OilCondition.Thermal;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Air that comes out of an oil in a vacuum stage: what stays, and what the vacuum pump gets.</summary>
/// <remarks>
/// In: oil that holds the air of the atmosphere, <see cref="GasSolubility.ContentAt"/>, and entrained bubbles, their share e of the oil's volume at
/// the atmosphere. Out: what the chamber's pressure leaves, C_out = C_eq + (1 − η)(C_in − C_eq), and no bubbles. The difference leaves as gas, n = Q
/// (C_in − C_out) p₀/(R T₀) + Q e p_atm/(R T), and at the chamber's pressure fills n R T/p. This is the first pass; oil that comes round again brings
/// less. Bubbles swell by p_atm/p, and an oil that foams fills the chamber: foam-over is not computed.
/// </remarks>
/// <example>
/// <code>
/// var load = GasLoad.Of(oil.Properties, VolumeFlow.FromLitersPerMinute(25), Temperature.FromDegreesCelsius(60),
///     StandardAtmosphere.SeaLevel, Pressure.FromMillibars(60), removalPerPass: Ratio.FromPercent(90));
/// </code>
/// </example>
public sealed class GasLoad
{
    private GasLoad(Ratio before, Ratio after, MassFlow released, VolumeFlow atChamber)
    {
        Before = before;
        After = after;
        Released = released;
        AtChamberPressure = atChamber;
    }

    /// <summary>Dissolved air in oil that has stood under the atmosphere, at 0 °C and 1013.25 hPa per volume of oil.</summary>
    public Ratio Before { get; }

    /// <summary>Dissolved air that the stage leaves.</summary>
    public Ratio After { get; }

    /// <summary>Air that is given off, dissolved and entrained.</summary>
    public MassFlow Released { get; }

    /// <summary>Volume of it that the vacuum pump must swallow.</summary>
    public VolumeFlow AtChamberPressure { get; }

    /// <summary>The load of oil that is saturated with air at the atmosphere.</summary>
    /// <param name="oilProperties">Density of the oil, 630 to 900 kg/m³ at 15 °C.</param>
    /// <param name="oilFlow">Oil flow, 0 to 10⁶ L/min.</param>
    /// <param name="temperature">Oil temperature in the chamber, 228 to 423 K.</param>
    /// <param name="localAtmosphere">Absolute pressure of the local atmosphere, 300 to 1100 hPa.</param>
    /// <param name="chamberPressure">Absolute pressure in the chamber, 1 Pa up to the atmosphere's.</param>
    /// <param name="removalPerPass">Share of the excess that leaves, above 0 up to 1; null for 1.</param>
    /// <param name="entrained">Volume of bubbles per volume of oil at the atmosphere, 0 to 1; null for none.</param>
    /// <returns>The load.</returns>
    /// <exception cref="ArgumentNullException">The properties are null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static GasLoad Of(
        OilProperties oilProperties,
        VolumeFlow oilFlow,
        Temperature temperature,
        Pressure localAtmosphere,
        Pressure chamberPressure,
        Ratio? removalPerPass = null,
        Ratio? entrained = null
    )
    {
        Guard.InRange(oilFlow.LitersPerMinute, 0, 1e6, "L/min", nameof(oilFlow));
        Guard.InRange(localAtmosphere.Hectopascals, 300, 1100, "hPa", nameof(localAtmosphere));
        var pascal = Guard.InRange(
            chamberPressure.Pascals,
            1,
            localAtmosphere.Pascals,
            "Pa, no more than the atmosphere's",
            nameof(chamberPressure)
        );
        var share = Guard.InRange(removalPerPass?.DecimalFractions ?? 1, 1e-9, 1, "(ratio)", nameof(removalPerPass));
        var bubbles = Guard.InRange(entrained?.DecimalFractions ?? 0, 0, 1, "(ratio)", nameof(entrained));
        var before = GasSolubility.ContentAt(GasSolubility.Gas.Air, oilProperties, temperature, localAtmosphere);
        var left = GasSolubility.ContentAt(GasSolubility.Gas.Air, oilProperties, temperature, chamberPressure);
        var after = left + (before - left) * (1 - share);
        var moles =
            oilFlow.CubicMetersPerSecond
            / VacuumChamber.GasConstant
            * (
                (before - after).DecimalFractions * GasSolubility.StandardPascal / GasSolubility.StandardKelvins
                + bubbles * localAtmosphere.Pascals / temperature.Kelvins
            );
        return new GasLoad(
            before,
            after,
            MassFlow.FromKilogramsPerSecond(moles * VacuumChamber.AirKilogramPerMole),
            VolumeFlow.FromCubicMetersPerSecond(moles * VacuumChamber.GasConstant * temperature.Kelvins / pascal)
        );
    }

    /// <summary>The load in one line.</summary>
    /// <returns>For example <c>air 8.1 to 0.5 % by volume; gives off 0.15 kg/h, 2.3 m³/h at the pump</c>.</returns>
    public override string ToString() =>
        $"air {PlainText.Number(Before.Percent)} to {PlainText.Number(After.Percent)} % by volume; "
        + $"gives off {PlainText.Number(Released.KilogramsPerHour)} kg/h, {PlainText.Number(AtChamberPressure.CubicMetersPerHour)} m³/h at the pump";
}
