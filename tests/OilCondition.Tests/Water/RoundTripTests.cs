using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Water;

/// <summary>Every conversion, there and back over its whole range.</summary>
public class RoundTripTests
{
    private static readonly SaturationCurve Oil = PublishedSaturationCurves.TransformerMineralOil;

    private static readonly Gen<double> AnyCelsius = Gen.Double[-60, 200];

    private static Temperature Celsius(double value) => Temperature.FromDegreesCelsius(value);

    private static MassFraction Ppm(double value) => MassFraction.FromPartsPerMillion(value);

    [Fact]
    public void Separation_temperature_of_a_saturation_is_its_temperature() =>
        AnyCelsius.Holds(celsius =>
            Oil.SeparationPoint(Oil.SaturationAt(Celsius(celsius)).Content)
                .Temperature.DegreesCelsius.ShouldBe(celsius, 1e-8)
        );

    [Fact]
    public void Content_and_relative_saturation_are_inverses_below_saturation() =>
        Gen.Select(AnyCelsius, Gen.Double[0, 0.999])
            .Holds(
                (celsius, activity) =>
                {
                    var state = Oil.FromSensor(Ratio.FromDecimalFractions(activity), Celsius(celsius));
                    var back = Oil.Split(state.Dissolved, Celsius(celsius));
                    back.RelativeSaturation.DecimalFractions.ShouldBe(activity, 1e-12);
                    back.HasFreeWater.ShouldBeFalse();
                }
            );

    [Fact]
    public void Volume_and_mass_ppm_are_inverses() =>
        Gen.Select(Gen.Double[0, 500_000], Gen.Double[500, 1500], Gen.Double[900, 1050])
            .Holds(
                (ppm, oil, water) =>
                {
                    var (rho, rhoWater) = (
                        Density.FromKilogramsPerCubicMeter(oil),
                        Density.FromKilogramsPerCubicMeter(water)
                    );
                    WaterContent
                        .ByMass(WaterContent.ByVolume(Ppm(ppm), rho, rhoWater), rho, rhoWater)
                        .PartsPerMillion.ShouldBe(ppm, 1e-9 * (1 + ppm));
                    // Second route: kilograms of water in 1 m³ of oil over the density of water.
                    WaterContent
                        .VolumeIn(Volume.FromCubicMeters(1), rho, Ppm(ppm), rhoWater)
                        .CubicMeters.ShouldBe(
                            WaterContent.MassIn(Mass.FromKilograms(oil), Ppm(ppm)).Kilograms / water,
                            1e-9
                        );
                }
            );

    [Fact]
    public void Cooling_and_warming_return_the_same_water() =>
        Gen.Select(AnyCelsius, AnyCelsius, Gen.Double[0, 5000])
            .Holds(
                (hot, cold, ppm) =>
                {
                    var there = Oil.Cool(Ppm(ppm), Celsius(hot), Celsius(cold));
                    var back = Oil.Cool(there.After, Celsius(hot));
                    back.After.Total.ShouldBe(there.Before.Total);
                    back.Redissolvable.PartsPerMillion.ShouldBe(there.Separated.PartsPerMillion, 1e-9);
                    back.Separated.PartsPerMillion.ShouldBe(there.Redissolvable.PartsPerMillion, 1e-9);
                }
            );

    [Fact]
    public void Two_points_of_a_curve_give_the_curve_back() =>
        Gen.Select(Gen.Double[10, 5000], Gen.Double[600, 2500], Gen.Double[0, 40], Gen.Double[45, 100])
            .Holds(
                (at40, b, cold, hot) =>
                {
                    var a = Math.Log10(at40) + b / 313.15;
                    var curve = SaturationCurve.FromCoefficients(
                        "made up",
                        a,
                        b,
                        Celsius(cold),
                        Celsius(hot),
                        Source.UserData("test")
                    );
                    var back = SaturationCurve.FromTwoPoints(
                        "back",
                        Celsius(cold),
                        curve.SaturationAt(Celsius(cold)).Content,
                        Celsius(hot),
                        curve.SaturationAt(Celsius(hot)).Content,
                        Source.UserData("test")
                    );
                    back.A.ShouldBe(a, 1e-7);
                    back.BKelvin.ShouldBe(b, 1e-5);
                }
            );

    [Fact]
    public void One_point_fixes_the_level_and_keeps_the_assumed_slope_visible()
    {
        var curve = SaturationCurve.FromOnePoint(
            "bearing oil",
            SaturationMeasurement.FromSensor(Celsius(45), Ratio.FromPercent(40), Ppm(80)),
            1650,
            Source.UserData("slope assumed")
        );

        // 80 mg/kg at 40 % is 200 mg/kg at saturation.
        curve.SaturationAt(Celsius(45)).Content.PartsPerMillion.ShouldBe(200, 1e-9);
        curve.SaturationAt(Celsius(45)).IsExtrapolated.ShouldBeFalse();
        curve.SaturationAt(Celsius(46)).IsExtrapolated.ShouldBeTrue();
        curve.BKelvin.ShouldBe(1650);
        curve.Basis.ShouldBe("one measurement, slope B = 1650 K assumed");
    }

    [Fact]
    public void Ageing_multiplies_the_saturation_and_factors_multiply()
    {
        var source = Source.UserData("factor from one measurement");
        var aged = Oil.Aged(Ratio.FromDecimalFractions(1.5), source).Aged(Ratio.FromDecimalFractions(2), source);
        foreach (var celsius in new[] { 0.0, 40, 100 })
        {
            aged.SaturationAt(Celsius(celsius))
                .Content.PartsPerMillion.ShouldBe(3 * Oil.SaturationAt(Celsius(celsius)).Content.PartsPerMillion, 1e-9);
        }

        aged.AgeingFactor.DecimalFractions.ShouldBe(3, 1e-12);
        aged.Basis.ShouldBe("constants given; saturation times 1.5 for ageing; saturation times 2 for ageing");
        Oil.AgeingFactor.DecimalFractions.ShouldBe(1);
    }

    [Fact]
    public void Gauge_and_absolute_pressure_are_inverses_at_any_barometer() =>
        Gen.Select(Gen.Double[30_000, 110_000], Gen.Double[0, 0.9999])
            .Holds(
                (local, share) =>
                {
                    var atmosphere = Pressure.FromPascals(local);
                    var gauge = GaugeVacuum.FromReading(Pressure.FromPascals(share * (local - 1)), atmosphere);
                    gauge.AbsolutePressure.Pascals.ShouldBe(local - share * (local - 1), 1e-7);
                    GaugeVacuum
                        .FromAbsolute(gauge.AbsolutePressure, atmosphere)
                        .Reading.Pascals.ShouldBe(gauge.Reading.Pascals, 1e-7);
                }
            );

    [Fact]
    public void The_gauge_that_boils_at_a_temperature_boils_there() =>
        Gen.Double[-50, 99]
            .Holds(celsius =>
                GaugeVacuum
                    .ToBoilAt(Celsius(celsius), StandardAtmosphere.SeaLevel)
                    .BoilingPoint.DegreesCelsius.ShouldBe(celsius, 1e-3)
            );

    [Fact]
    public void A_gauge_error_brackets_the_boiling_point_by_its_own_pressures()
    {
        // Near full vacuum half an inch of mercury matters most: 28 inHg is 6.51 kPa, 27.5 and 28.5 are 8.20 and 4.81 kPa.
        var gauge = GaugeVacuum.FromReading(Pressure.FromInchesOfMercury(28), StandardAtmosphere.SeaLevel);
        var (coldest, warmest) = gauge.BoilingPointWithin(Pressure.FromInchesOfMercury(0.5));
        WaterVapour.SaturationPressure(coldest).Pascals.ShouldBe(101_325 - 28.5 * 3386.389, 0.1);
        WaterVapour.SaturationPressure(warmest).Pascals.ShouldBe(101_325 - 27.5 * 3386.389, 0.1);
        coldest.ShouldBeLessThan(gauge.BoilingPoint);
        warmest.ShouldBeGreaterThan(gauge.BoilingPoint);

        var wide = gauge.BoilingPointWithin(Pressure.FromInchesOfMercury(40));
        WaterVapour.SaturationPressure(wide.Coldest).Pascals.ShouldBe(1, 1e-6);
        wide.Coldest.DegreesCelsius.ShouldBeLessThan(0.01); // ice
        WaterVapour.SaturationPressure(wide.Warmest).Pascals.ShouldBe(101_325, 0.1);
    }

    [Fact]
    public void Ice_and_liquid_meet_at_the_triple_point()
    {
        // IAPWS: 273.16 K, 611.657 Pa for both; the two formulas agree there to 0.01 Pa.
        var triple = Temperature.FromKelvins(273.16);
        WaterVapour.PressureOverIce(triple).Pascals.ShouldBe(611.657, 1e-3);
        WaterVapour.PressureOverLiquid(triple).Pascals.ShouldBe(611.657, 1e-2);
        var below = WaterVapour.SaturationPressure(Temperature.FromKelvins(273.16 - 1e-6)).Pascals;
        var above = WaterVapour.SaturationPressure(Temperature.FromKelvins(273.16 + 1e-6)).Pascals;
        above.ShouldBe(below, 1e-2);
        WaterVapour.SaturationTemperature(Pressure.FromPascals(611.6)).Kelvins.ShouldBeInRange(273.15, 273.16);
        WaterVapour.SaturationTemperature(Pressure.FromPascals(611.7)).Kelvins.ShouldBeInRange(273.16, 273.17);
    }

    [Fact]
    public void Sublimation_temperature_and_pressure_are_inverses() =>
        Gen.Double[180, 273.15]
            .Holds(kelvins =>
                WaterVapour
                    .SaturationTemperature(WaterVapour.SaturationPressure(Temperature.FromKelvins(kelvins)))
                    .Kelvins.ShouldBe(kelvins, 1e-6)
            );

    [Fact]
    public void Dew_point_and_relative_humidity_describe_the_same_air() =>
        Gen.Select(Gen.Double[-40, 90], Gen.Double[1, 100])
            .Holds(
                (celsius, percent) =>
                {
                    var air = HumidAir.FromRelativeHumidity(Celsius(celsius), RelativeHumidity.FromPercent(percent));
                    air.TryDewPoint(out var dewPoint).ShouldBeTrue();
                    // The dew point of saturated air may exceed the air temperature by a rounding error of the inverse.
                    var same = HumidAir.FromDewPoint(
                        Celsius(celsius),
                        Celsius(Math.Min(celsius, dewPoint.DegreesCelsius))
                    );
                    same.RelativeHumidity.Percent.ShouldBe(percent, 2e-4 * percent);
                }
            );

    [Fact]
    public void Air_behind_a_dryer_dries_oil_far_below_ambient_air()
    {
        // Frost point −40 °C: 12.84 Pa over ice (IAPWS R14-08); over 40 °C oil with p_sat 7385 Pa (IF97) that is 0.17 % of saturation.
        var dried = HumidAir.FromDewPoint(Celsius(25), Celsius(-40));
        dried.VapourPressure.Pascals.ShouldBe(12.84, 0.01);
        Oil.EquilibriumWith(dried, Celsius(40)).RelativeSaturation.Percent.ShouldBe(0.174, 0.001);
    }
}
