using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Water;

public class VacuumStageTests
{
    private static readonly SaturationCurve Oil = PublishedSaturationCurves.TransformerMineralOilSteeper;

    private static readonly Gen<double> Celsius = Gen.Double[20, 100];
    private static readonly Gen<double> Pascal = Gen.Double[500, 101_325];
    private static readonly Gen<double> Ppm = Gen.Double[0, 3000];
    private static readonly Gen<double> AirKilogramPerHour = Gen.Double[0.01, 50];

    private static VacuumStage Stage(double celsius, double pascal) =>
        new(Oil, Temperature.FromDegreesCelsius(celsius), Pressure.FromPascals(pascal));

    private static StageOutlet Outlet(VacuumStage stage, double ppm, SweepAir sweep) =>
        stage.Outlet(MassFlow.FromKilogramsPerHour(1000), MassFraction.FromPartsPerMillion(ppm), sweep);

    private static SweepAir Dry(double kilogramPerHour) => SweepAir.Dry(MassFlow.FromKilogramsPerHour(kilogramPerHour));

    private static SweepAir Humid(double kilogramPerHour, double relativeHumidity) =>
        SweepAir.FromAir(
            MassFlow.FromKilogramsPerHour(kilogramPerHour),
            HumidAir.FromRelativeHumidity(
                Temperature.FromDegreesCelsius(20),
                RelativeHumidity.FromPercent(relativeHumidity)
            ),
            StandardAtmosphere.SeaLevel
        );

    [Fact]
    public void Water_is_conserved_and_oil_and_gas_leave_in_equilibrium() =>
        Gen.Select(Celsius, Pascal, Ppm, AirKilogramPerHour, Gen.Double[0, 100])
            .Holds(
                (celsius, pascal, ppm, air, humidity) =>
                {
                    var stage = Stage(celsius, pascal);
                    var sweep = Humid(air, humidity);
                    var outlet = Outlet(stage, ppm, sweep);
                    var total = outlet.Water.Total.PartsPerMillion;
                    var left = outlet.Evaporated.KilogramsPerHour;

                    // 1000 kg/h of oil: 1 mg/kg is 0.001 kg/h.
                    left.ShouldBe((ppm - total) * 1e-3, 1e-9);

                    var moles = (sweep.Moisture.KilogramsPerHour + left) / 18.015;
                    var y = moles / (moles + air / 28.965);
                    outlet.WaterMoleFraction.DecimalFractions.ShouldBe(y, 1e-9);
                    var activity =
                        y * pascal / WaterVapour.SaturationPressure(Temperature.FromDegreesCelsius(celsius)).Pascals;
                    outlet.Water.RelativeSaturation.DecimalFractions.ShouldBe(Math.Min(1, activity), 1e-6);
                    outlet.LatentHeat.Watts.ShouldBeGreaterThanOrEqualTo(0);
                }
            );

    /// <summary>12.84 Pa over ice at −40 °C (IAPWS R14-08): W = 0.621945 × 12.84/(101 325 − 12.84) = 7.882e-5, and no floor is 0.</summary>
    [Fact]
    public void Air_from_a_dryer_has_a_dew_point()
    {
        Dry(2).Moisture.KilogramsPerHour.ShouldBe(2 * 7.882e-5, 2e-7);
        SweepAir.None.Moisture.KilogramsPerHour.ShouldBe(0);
        Stage(65, 6510).Floor(Dry(2)).Dissolved.PartsPerMillion.ShouldBe(302.94 * 1.267e-4 * 6510 / 25_042, 2e-4);
    }

    [Fact]
    public void More_vacuum_or_more_dry_sweep_never_leaves_more_water() =>
        Gen.Select(Celsius, Pascal, Pascal, Ppm, AirKilogramPerHour, AirKilogramPerHour)
            .Holds(
                (celsius, p1, p2, ppm, a1, a2) =>
                {
                    // Wetter than the air behind a dryer, which would wet an oil of a tenth of a milligram.
                    ppm += 10;
                    var (deep, shallow) = (Math.Min(p1, p2), Math.Max(p1, p2));
                    var (little, much) = (Math.Min(a1, a2), Math.Max(a1, a2));
                    var weak = Outlet(Stage(celsius, shallow), ppm, Dry(little)).Water.Total.PartsPerMillion;
                    Outlet(Stage(celsius, deep), ppm, Dry(little))
                        .Water.Total.PartsPerMillion.ShouldBeLessThanOrEqualTo(weak + 1e-6);
                    Outlet(Stage(celsius, shallow), ppm, Dry(much))
                        .Water.Total.PartsPerMillion.ShouldBeLessThanOrEqualTo(weak + 1e-6);
                    weak.ShouldBeLessThanOrEqualTo(ppm + 1e-6);
                    Outlet(Stage(celsius, shallow), ppm, SweepAir.None)
                        .Water.Total.PartsPerMillion.ShouldBeGreaterThanOrEqualTo(weak - 1e-6);
                }
            );

    [Fact]
    public void Floors_fall_with_vacuum_and_with_the_dryness_of_the_sweep() =>
        Gen.Select(Celsius, Pascal, Pascal, Gen.Double[0, 100], Gen.Double[0, 100])
            .Holds(
                (celsius, p1, p2, h1, h2) =>
                {
                    var deep = Stage(celsius, Math.Min(p1, p2));
                    var shallow = Stage(celsius, Math.Max(p1, p2));
                    var (dry, humid) = (Humid(5, Math.Min(h1, h2)), Humid(5, Math.Max(h1, h2)));
                    var floor = shallow.Floor(humid).Dissolved;
                    deep.Floor(humid).Dissolved.ShouldBeLessThanOrEqualTo(floor);
                    shallow.Floor(dry).Dissolved.ShouldBeLessThanOrEqualTo(floor);
                    shallow.Floor(SweepAir.None).Dissolved.ShouldBeGreaterThanOrEqualTo(floor);
                }
            );

    [Fact]
    public void Humid_sweep_wets_dry_oil_up_to_the_floor_and_no_further()
    {
        var stage = Stage(65, 20_000);
        var sweep = Humid(50, 60);
        var floor = stage.Floor(sweep).Dissolved.PartsPerMillion;
        var outlet = Outlet(stage, 0, sweep);
        outlet.Evaporated.KilogramsPerHour.ShouldBeLessThan(0);
        outlet.LatentHeat.Watts.ShouldBe(0);
        outlet.Water.Total.PartsPerMillion.ShouldBeInRange(0.5 * floor, floor);
    }

    [Fact]
    public void Moisture_of_the_sweep_is_flow_times_humidity_ratio()
    {
        // W of saturated air at 25 °C and 101325 Pa: 0.621945 × 3169.7 / (101325 − 3169.7) = 0.02008, worked by hand.
        var sweep = SweepAir.FromAir(
            MassFlow.FromKilogramsPerHour(100),
            HumidAir.FromRelativeHumidity(Temperature.FromDegreesCelsius(25), RelativeHumidity.FromPercent(100)),
            StandardAtmosphere.SeaLevel
        );
        sweep.Moisture.KilogramsPerHour.ShouldBe(2.008, 0.001);
        SweepAir.None.DryAir.KilogramsPerHour.ShouldBe(0);
    }

    [Fact]
    public void Above_the_boiling_pressure_without_sweep_nothing_leaves()
    {
        var stage = Stage(40, 20_000);
        stage.WaterBoils.ShouldBeFalse();
        var outlet = Outlet(stage, 500, SweepAir.None);
        outlet.Water.Total.PartsPerMillion.ShouldBe(500, 1e-9);
        outlet.Evaporated.KilogramsPerHour.ShouldBe(0);
        outlet.Water.HasFreeWater.ShouldBeTrue();
        stage.Floor(SweepAir.None).Knowledge.ShouldBe(WaterKnowledge.AtLeast);
    }

    [Fact]
    public void The_outlet_of_a_stage_does_not_leave_again() =>
        Gen.Select(Celsius, Pascal, Ppm)
            .Holds(
                (celsius, pascal, ppm) =>
                {
                    var stage = Stage(celsius, pascal);
                    var first = Outlet(stage, ppm, SweepAir.None).Water.Total;
                    var second = Outlet(stage, first.PartsPerMillion, SweepAir.None).Water.Total;
                    second.PartsPerMillion.ShouldBe(first.PartsPerMillion, 1e-6);
                }
            );
}
