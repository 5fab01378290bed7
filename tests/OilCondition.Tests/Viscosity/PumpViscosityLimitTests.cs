using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Viscosity;

public class PumpViscosityLimitTests
{
    private static readonly ViscosityTemperatureLine Oil = ViscosityTemperatureLine.FromTwoPoints(
        Temperature.FromDegreesCelsius(40),
        KinematicViscosity.FromCentistokes(46),
        Temperature.FromDegreesCelsius(100),
        KinematicViscosity.FromCentistokes(6.8)
    );

    private static readonly PumpViscosityLimit Pump = new(
        VolumeFlow.FromLitersPerMinute(40),
        KinematicViscosity.FromCentistokes(1000)
    );

    [Fact]
    public void The_limit_is_passed_where_the_line_has_that_viscosity()
    {
        // viscosity.csv: this oil has 1000 mm²/s at −6.07 °C (ASTM D341, by hand).
        var coldest = Pump.ColdestAtFullFlow(Oil);
        coldest.Temperature.DegreesCelsius.ShouldBe(-6.07, 0.1);
        coldest.IsExtrapolated.ShouldBeTrue();
    }

    [Fact]
    public void Thicker_oil_takes_flow_in_inverse_proportion()
    {
        // 1474.3 mm²/s at −10 °C (viscosity.csv): 40 · 1000/1474.3 = 27.13 L/min.
        var cold = Pump.FlowAt(Oil, Temperature.FromDegreesCelsius(-10));
        cold.IsReduced.ShouldBeTrue();
        cold.Flow.LitersPerMinute.ShouldBe(27.13, 0.08);
        cold.Oil.IsExtrapolated.ShouldBeTrue();
        var warm = Pump.FlowAt(Oil, Temperature.FromDegreesCelsius(50));
        warm.IsReduced.ShouldBeFalse();
        warm.Flow.LitersPerMinute.ShouldBe(40);
    }

    [Fact]
    public void The_suction_pressure_drop_never_passes_that_at_the_limit() =>
        Gen.Double[-30, 100]
            .Holds(celsius =>
            {
                var held = Pump.FlowAt(Oil, Temperature.FromDegreesCelsius(celsius));
                (held.Flow.LitersPerMinute * held.Oil.Viscosity.Centistokes).ShouldBeLessThanOrEqualTo(40_000.001);
                held.IsReduced.ShouldBe(celsius < Pump.ColdestAtFullFlow(Oil).Temperature.DegreesCelsius);
            });

    [Fact]
    public void Oil_beyond_the_scale_and_wrong_figures_are_named()
    {
        var wax = ViscosityTemperatureLine.FromTwoPoints(
            Temperature.FromDegreesCelsius(40),
            KinematicViscosity.FromCentistokes(2000),
            Temperature.FromDegreesCelsius(60),
            KinematicViscosity.FromCentistokes(100)
        );
        var stuck = Pump.FlowAt(wax, Temperature.FromDegreesCelsius(-60));
        stuck.Oil.IsThicker.ShouldBeTrue();
        stuck.Flow.LitersPerMinute.ShouldBe(0.002, 1e-9);
        Should
            .Throw<ArgumentOutOfRangeException>(() => new PumpViscosityLimit(VolumeFlow.Zero, Pump.HighestViscosity))
            .Message.ShouldContain("fullFlow is 0 L/min");
        Should.Throw<ArgumentOutOfRangeException>(() =>
            new PumpViscosityLimit(Pump.FullFlow, KinematicViscosity.FromCentistokes(0.1))
        );
        Should.Throw<ArgumentNullException>(() => Pump.ColdestAtFullFlow(null!));
    }
}
