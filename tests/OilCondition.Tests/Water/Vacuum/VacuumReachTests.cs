using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Water;

/// <summary>How far a vacuum dries an oil: figures by hand from the saturation curve and the vapour pressure of water.</summary>
public class VacuumReachTests
{
    private const double Sixty5 = 65;

    private static readonly SaturationCurve MineralOil = PublishedSaturationCurves.TransformerMineralOilSteeper;

    private static GaugeVacuum AtSeaLevel(double inches) =>
        GaugeVacuum.FromReading(Pressure.FromInchesOfMercury(inches), StandardAtmosphere.SeaLevel);

    private static VacuumStage Stage(SaturationCurve curve, double inches) =>
        new(curve, Temperature.FromDegreesCelsius(Sixty5), AtSeaLevel(inches).AbsolutePressure);

    /// <summary>
    /// IAPWS IF97, its table 36: 372.76 K at 0.1 MPa. At 101.325 kPa 373.12 K, which is 211.95 °F (100 °C was the boiling point of an older scale); 22 and 24 inHg
    /// below that are 26.82 and 20.05 kPa, by the same equation 339.71 and 333.26 K.
    /// </summary>
    [Theory]
    [InlineData(0, 373.12)]
    [InlineData(22, 339.71)]
    [InlineData(24, 333.26)]
    public void Water_boils_sooner_under_vacuum(double inches, double kelvin) =>
        AtSeaLevel(inches).BoilingPoint.Kelvins.ShouldBe(kelvin, 0.04);

    /// <summary>
    /// A transformer mineral oil at 65 °C,
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
