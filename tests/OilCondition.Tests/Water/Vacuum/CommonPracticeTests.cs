using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Water;

/// <summary>Common practice, no source: what the trade says of vacuum, beside what the physics gives.</summary>
public class CommonPracticeTests
{
    private const double Sixty5 = 65;

    private static readonly SaturationCurve MineralOil = PublishedSaturationCurves.TransformerMineralOilSteeper;

    private static GaugeVacuum AtSeaLevel(double inches) =>
        GaugeVacuum.FromReading(Pressure.FromInchesOfMercury(inches), StandardAtmosphere.SeaLevel);

    private static VacuumStage Stage(SaturationCurve curve, double inches) =>
        new(curve, Temperature.FromDegreesCelsius(Sixty5), AtSeaLevel(inches).AbsolutePressure);

    /// <summary>
    /// Common practice, no source: water boils at 212 °F at atmosphere, and at about 140 to 150 °F under 22 to 24 inHg at sea level.
    /// The physics gives 211.95 °F (99.97 °C: 100 °C was the boiling point of an older scale), 151.8 °F and 140.2 °F.
    /// </summary>
    [Theory]
    [InlineData(0, 212, 211.95)]
    [InlineData(22, 150, 151.8)]
    [InlineData(24, 140, 140.2)]
    public void Water_boils_at_212_and_under_vacuum_at_140_to_150(double inches, double trade, double physics)
    {
        var fahrenheit = AtSeaLevel(inches).BoilingPoint.DegreesFahrenheit;
        fahrenheit.ShouldBe(physics, 0.06);
        fahrenheit.ShouldBe(trade, 2);
    }

    /// <summary>
    /// Common practice, no source: vacuum dehydration reaches 100 ppm and below. The physics for a transformer mineral oil at 65 °C,
    /// S = 10^(7.42 − 1670/338.15) = 303 mg/kg, p_sat = 25.04 kPa: 24 inHg alone stops at 303 × 20.05/25.04 = 243 mg/kg; 100 mg/kg needs
    /// p = 25.04 kPa × 100/303 = 8.27 kPa, that is 27.5 inHg.
    /// </summary>
    [Theory]
    [InlineData(24, 242.6)]
    [InlineData(27.48, 100)]
    [InlineData(28, 78.7)]
    public void Vacuum_alone_reaches_100_ppm_from_27_and_a_half_inches_on(double inches, double ppm) =>
        Stage(MineralOil, inches).Floor(SweepAir.None).Dissolved.PartsPerMillion.ShouldBe(ppm, 0.3);

    /// <summary>
    /// At 24 inHg the gas may hold y = 8.27/20.05 = 0.412 of water: 0.1 kg/h out of 1000 kg/h of oil at 200 mg/kg then needs
    /// 0.1 × 28.965/18.015 × 0.588/0.412 = 0.229 kg/h of dry air.
    /// </summary>
    [Fact]
    public void A_small_dry_sweep_reaches_100_ppm_at_24_inches() =>
        Stage(MineralOil, 24)
            .Outlet(
                MassFlow.FromKilogramsPerHour(1000),
                MassFraction.FromPartsPerMillion(200),
                SweepAir.Dry(MassFlow.FromKilogramsPerHour(0.229))
            )
            .Water.Total.PartsPerMillion.ShouldBe(100, 0.1);

    /// <summary>An oil that holds three times as much water needs a third of the pressure: 2.76 kPa, 29.1 inHg, where dial gauges end.</summary>
    [Fact]
    public void An_oil_that_dissolves_more_water_needs_more_vacuum()
    {
        var formulated = MineralOil.Aged(Ratio.FromDecimalFractions(3), OilCondition.Source.UserData("invented"));
        Stage(formulated, 27.48).Floor(SweepAir.None).Dissolved.PartsPerMillion.ShouldBe(300, 0.9);
        Stage(formulated, 29.11).Floor(SweepAir.None).Dissolved.PartsPerMillion.ShouldBe(100, 1);
    }
}
