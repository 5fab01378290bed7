using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Thermal;
using UnitsNet;

namespace OilCondition.Tests.Thermal;

public class ThermalTests
{
    private static readonly Gen<double> AnyCelsius = Gen.Double[-60, 200];
    private static readonly HeatedTank Tank = new(Entropy.FromKilojoulesPerKelvin(1700), 60);

    private static Temperature Celsius(double value) => Temperature.FromDegreesCelsius(value);

    private static Density Rho(double value) => Density.FromKilogramsPerCubicMeter(value);

    [Fact]
    public void Heat_up_and_time_are_inverses() =>
        Gen.Select(
                AnyCelsius,
                AnyCelsius,
                Gen.Double[-40, 40],
                Gen.OneOf(Gen.Const(0.0), Gen.Double[1, 50_000]),
                Gen.OneOf(Gen.Const(0.0), Gen.Double[1e-7, 300])
            )
            .Holds(
                (start, target, ambient, watts, loss) =>
                {
                    var tank = new HeatedTank(Entropy.FromKilojoulesPerKelvin(1700), loss);
                    var power = Power.FromWatts(watts);
                    var heatUp = tank.TimeTo(Celsius(target), Celsius(start), power, Celsius(ambient));
                    if (heatUp is Arrival<TimeSpan>.Expected { Estimate: var time } && time.TotalSeconds < 1e9)
                    {
                        tank.TemperatureAfter(Celsius(start), power, Celsius(ambient), time)
                            .DegreesCelsius.ShouldBe(target, 1e-6);
                    }
                }
            );

    [Fact]
    public void Times_that_do_not_exist_are_named()
    {
        // 1.2 kW over 60 W/K holds 20 K above an ambient of 20 °C: 40 °C is approached and never reached.
        var power = Power.FromWatts(1200);
        Arrival<TimeSpan> To(double target, double start) =>
            Tank.TimeTo(Celsius(target), Celsius(start), power, Celsius(20));
        To(39.9, 20).ShouldBeOfType<Arrival<TimeSpan>.Expected>();
        To(40, 20).ShouldBeOfType<Arrival<TimeSpan>.Never>();
        To(60, 20).ShouldBeOfType<Arrival<TimeSpan>.Never>();
        To(60, 40).ShouldBeOfType<Arrival<TimeSpan>.Never>();
        To(20, 20).ShouldBeOfType<Arrival<TimeSpan>.Already>().At.ShouldBe(TimeSpan.Zero);
        To(10, 20).ShouldBeOfType<Arrival<TimeSpan>.Never>();
        To(70, 60).ShouldBeOfType<Arrival<TimeSpan>.Never>();
        To(50, 60).ShouldBeOfType<Arrival<TimeSpan>.Expected>();
        To(60, 20).TryEstimate(out _).ShouldBeFalse();
    }

    [Fact]
    public void The_steady_temperature_is_where_the_tank_ends_up()
    {
        Tank.TrySteadyTemperature(Power.FromWatts(1200), Celsius(20), out var steady).ShouldBeTrue();
        steady.DegreesCelsius.ShouldBe(40, 1e-9);
        Tank.TemperatureAfter(Celsius(5), Power.FromWatts(1200), Celsius(20), TimeSpan.FromHours(1000))
            .DegreesCelsius.ShouldBe(40, 1e-6);

        var lossless = new HeatedTank(Entropy.FromKilojoulesPerKelvin(1700), 0);
        lossless.TrySteadyTemperature(Power.FromWatts(1), Celsius(20), out var none).ShouldBeFalse();
        none.DegreesCelsius.ShouldBe(20, 1e-9);
        lossless.TrySteadyTemperature(Power.Zero, Celsius(20), out _).ShouldBeTrue();
    }

    /// <summary>
    /// Common practice, no source: a low-watt-density heater raises the oil by about 20 °F per pass. The physics: that is no property of
    /// the heater but of power over flow; 12 kW in 38 L/min (10 US gal/min) of 850 kg/m³ and 2.0 kJ/(kg K) gives
    /// 12 / (38/60 × 0.85 × 2.0) = 11.1 K = 20.1 °F, half the flow twice as much.
    /// </summary>
    [Theory]
    [InlineData(38, 20.1)]
    [InlineData(19, 40.1)]
    public void Common_practice_of_20_degrees_Fahrenheit_per_pass(double litrePerMinute, double fahrenheit) =>
        OilHeating
            .RisePerPass(
                Power.FromKilowatts(12),
                VolumeFlow.FromLitersPerMinute(litrePerMinute),
                Rho(850),
                SpecificEntropy.FromKilojoulesPerKilogramKelvin(2)
            )
            .DegreesFahrenheit.ShouldBe(fahrenheit, 0.05);

    [Fact]
    public void Rise_and_power_are_inverses() =>
        Gen.Select(Gen.Double[0, 250], Gen.Double[0.1, 1000], Gen.Double[500, 1500], Gen.Double[500, 5000])
            .Holds(
                (kelvins, litrePerMinute, rho, c) =>
                {
                    var flow = VolumeFlow.FromLitersPerMinute(litrePerMinute);
                    var heat = SpecificEntropy.FromJoulesPerKilogramKelvin(c);
                    var power = OilHeating.PowerForRise(flow, Rho(rho), heat, TemperatureDelta.FromKelvins(kelvins));
                    OilHeating.RisePerPass(power, flow, Rho(rho), heat).Kelvins.ShouldBe(kelvins, 1e-9);
                }
            );

    [Fact]
    public void Observed_and_reference_density_are_inverses() =>
        Gen.Select(Gen.Double[700, 1250], AnyCelsius)
            .Holds(
                (rho15, celsius) =>
                {
                    var oil = OilProperties.FromDensityAt15(Rho(rho15));
                    OilProperties
                        .FromObservedDensity(oil.At(Celsius(celsius)).Density, Celsius(celsius))
                        .DensityAt15.KilogramsPerCubicMeter.ShouldBe(rho15, 1e-8);
                }
            );

    [Fact]
    public void Volume_goes_there_and_back_and_keeps_the_mass() =>
        Gen.Select(Gen.Double[800, 1000], AnyCelsius, AnyCelsius)
            .Holds(
                (rho15, from, to) =>
                {
                    var oil = OilProperties.FromDensityAt15(Rho(rho15));
                    var there = oil.VolumeAt(Volume.FromLiters(1000), Celsius(from), Celsius(to));
                    oil.VolumeAt(there, Celsius(to), Celsius(from)).Liters.ShouldBe(1000, 1e-9);
                    (there.Liters * oil.At(Celsius(to)).Density.KilogramsPerCubicMeter).ShouldBe(
                        1000 * oil.At(Celsius(from)).Density.KilogramsPerCubicMeter,
                        1e-6
                    );
                }
            );

    [Fact]
    public void Expansion_is_the_slope_of_the_density()
    {
        // Central difference of ln ρ; α is defined as −d ln ρ / dt.
        var oil = OilProperties.FromDensityAt15(Rho(870));
        foreach (var celsius in new[] { -20.0, 15, 60, 120 })
        {
            double LogDensity(double t) => Math.Log(oil.At(Celsius(t)).Density.KilogramsPerCubicMeter);
            var slope = (LogDensity(celsius - 0.01) - LogDensity(celsius + 0.01)) / 0.02;
            oil.At(Celsius(celsius)).Expansion.PerKelvin.ShouldBe(slope, 1e-9);
        }
    }

    [Theory]
    [InlineData(870, 60, false)]
    [InlineData(800.9, -50, false)]
    [InlineData(1163.5, 150, false)]
    [InlineData(800.8, 60, true)]
    [InlineData(1163.6, 60, true)]
    [InlineData(870, -50.1, true)]
    [InlineData(870, 150.1, true)]
    public void The_standard_of_2004_says_where_it_ends(double density, double celsius, bool isExtrapolated) =>
        VolumeCorrection.Api2004(Rho(density), Celsius(celsius)).IsExtrapolated.ShouldBe(isExtrapolated);

    [Fact]
    public void Heat_properties_say_where_Cragoe_ends()
    {
        OilProperties.FromDensityAt15(Rho(870)).At(Celsius(0)).IsHeatExtrapolated.ShouldBeFalse();
        OilProperties.FromDensityAt15(Rho(870)).At(Celsius(-0.1)).IsHeatExtrapolated.ShouldBeTrue();
        OilProperties.FromDensityAt15(Rho(970)).At(Celsius(40)).IsHeatExtrapolated.ShouldBeTrue();
        TankHeatLoss.Guide(TankSurface.ShelteredBare, Celsius(38)).IsExtrapolated.ShouldBeFalse();
        TankHeatLoss.Guide(TankSurface.ShelteredBare, Celsius(38.1)).IsExtrapolated.ShouldBeTrue();
    }

    [Fact]
    public void A_measured_expansion_is_that_of_the_coefficient_at_its_reference()
    {
        // Small step from 60 °F: CTL = 1 − α Δ to first order.
        var ester = CoefficientOfThermalExpansion.FromPerKelvin(0.00075);
        var factor = VolumeCorrection.Api2004(ester, Rho(950), Temperature.FromDegreesFahrenheit(61.8));
        factor.Factor.DecimalFractions.ShouldBe(1 - 0.00075, 2e-6);
    }
}
