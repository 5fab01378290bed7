using OilCondition.Text;
using OilCondition.Thermal;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Air that a vented tank breathes in a day, and the water that comes with it.</summary>
/// <remarks>
/// <para>
/// Litres a day = n (V_air ΔT_air/(T + ΔT_air) + V_oil α ΔT_oil) + m ΔV. V_air: head-space; T: its coldest temperature [K]; α: expansion of the oil
/// [1/K]; n: times a day that it warms and cools; ΔV, m: oil level that falls and rises again, times a day. Ideal gas at constant pressure; derived.
/// </para>
/// <para>
/// Water = litres p_w M/(R T_air): all vapour of the air drawn in. It is the most that breathing brings: part of it goes out again with the air.
/// Wind over a vent, fans and spray are not in it.
/// </para>
/// </remarks>
/// <example>
/// <code>
/// var breathing = new TankBreathing(airSpace: Volume.FromLiters(600), oilVolume: Volume.FromLiters(1800), oilProperties,
///     coldest: Temperature.FromDegreesCelsius(15), airSwing: TemperatureDelta.FromKelvins(12), oilSwing: TemperatureDelta.FromKelvins(20));
/// var litres = breathing.AirPerDay.Liters;
/// </code>
/// </example>
public sealed class TankBreathing
{
    /// <summary>Describes how a tank breathes. Name the arguments that have a default.</summary>
    /// <param name="airSpace">Air over the oil, 0 to 10⁶ m³.</param>
    /// <param name="oilVolume">Oil in the tank, 0 to 10⁶ m³.</param>
    /// <param name="oilProperties">Density of the oil, for its expansion.</param>
    /// <param name="coldest">Coldest temperature of air and oil in a day, −40 to 150 °C.</param>
    /// <param name="airSwing">How much the air over the oil warms and cools, 0 to 150 K.</param>
    /// <param name="oilSwing">How much the oil warms and cools, 0 to 150 K.</param>
    /// <param name="swingsPerDay">Times a day that it does, 0 to 1000.</param>
    /// <param name="levelSwing">Oil that leaves the tank and comes back, as cylinders do, 0 to 10⁶ m³.</param>
    /// <param name="strokesPerDay">Times a day that it does, 0 to 10⁶.</param>
    /// <exception cref="ArgumentNullException">The properties are null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public TankBreathing(
        Volume airSpace,
        Volume oilVolume,
        OilProperties oilProperties,
        Temperature coldest,
        TemperatureDelta airSwing,
        TemperatureDelta oilSwing,
        double swingsPerDay = 1,
        Volume levelSwing = default,
        double strokesPerDay = 0
    )
    {
        Guard.InRange(airSpace.CubicMeters, 0, 1e6, "m³", nameof(airSpace));
        Guard.InRange(oilVolume.CubicMeters, 0, 1e6, "m³", nameof(oilVolume));
        Guard.InRange(coldest.DegreesCelsius, -40, 150, "°C", nameof(coldest));
        Guard.InRange(airSwing.Kelvins, 0, 150, "K", nameof(airSwing));
        Guard.InRange(oilSwing.Kelvins, 0, Math.Min(150, 200 - coldest.DegreesCelsius), "K", nameof(oilSwing));
        Guard.InRange(swingsPerDay, 0, 1000, "per day");
        Guard.InRange(levelSwing.CubicMeters, 0, 1e6, "m³", nameof(levelSwing));
        Guard.InRange(strokesPerDay, 0, 1e6, "per day");
        var warm = Temperature.FromDegreesCelsius(coldest.DegreesCelsius + oilSwing.Kelvins);
        var expansion = Guard.NotNull(oilProperties).VolumeAt(oilVolume, coldest, warm) - oilVolume;
        Coldest = coldest;
        ThermalPerDay = Volume.FromLiters(
            swingsPerDay
                * (
                    airSpace.Liters * airSwing.Kelvins / (coldest.Kelvins + airSwing.Kelvins)
                    + Math.Max(0, expansion.Liters)
                )
        );
        LevelPerDay = Volume.FromLiters(strokesPerDay * levelSwing.Liters);
    }

    /// <summary>Coldest temperature of air and oil in a day.</summary>
    public Temperature Coldest { get; }

    /// <summary>Air drawn in a day because air and oil cool.</summary>
    public Volume ThermalPerDay { get; }

    /// <summary>Air drawn in a day because the oil level falls.</summary>
    public Volume LevelPerDay { get; }

    /// <summary>All air drawn in a day.</summary>
    public Volume AirPerDay => ThermalPerDay + LevelPerDay;

    /// <summary>Water that comes with the air, at most.</summary>
    /// <param name="air">The air that is drawn in.</param>
    /// <returns>Water, for example as the ingress of a reservoir.</returns>
    /// <exception cref="ArgumentNullException">The air is null.</exception>
    public MassFlow WaterIn(HumidAir air)
    {
        const double SecondsADay = 86_400;
        var kilogramPerCubicMetre =
            Guard.NotNull(air).VapourPressure.Pascals
            * VacuumChamber.WaterKilogramPerMole
            / (VacuumChamber.GasConstant * air.Temperature.Kelvins);
        return MassFlow.FromKilogramsPerSecond(AirPerDay.CubicMeters * kilogramPerCubicMetre / SecondsADay);
    }

    /// <summary>The breathing in one line.</summary>
    /// <returns>For example <c>51.3 L of air a day, 51.3 L by warmth, 0 L by level</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Number(AirPerDay.Liters)} L of air a day, {PlainText.Number(ThermalPerDay.Liters)} L by warmth, "
        + $"{PlainText.Number(LevelPerDay.Liters)} L by level";
}
