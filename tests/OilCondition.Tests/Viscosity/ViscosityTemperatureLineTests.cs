using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Viscosity;

public class ViscosityTemperatureLineTests
{
    [Fact]
    public void The_line_passes_its_points_and_falls() =>
        Gen.Select(Gen.Double[5, 1000], Gen.Double[0.05, 0.8], Gen.Double[-20, 120])
            .Holds(
                (kv40, ratio, celsius) =>
                {
                    var line = Line(40, kv40, 100, Math.Max(2, kv40 * ratio));
                    line.ViscosityAt(Temperature.FromDegreesCelsius(40)).Viscosity.Centistokes.ShouldBe(kv40, 1e-3);
                    var here = line.ViscosityAt(Temperature.FromDegreesCelsius(celsius));
                    var warmer = line.ViscosityAt(Temperature.FromDegreesCelsius(celsius + 1));
                    warmer.Viscosity.Centistokes.ShouldBeLessThanOrEqualTo(here.Viscosity.Centistokes);
                    here.IsExtrapolated.ShouldBe(celsius < 40 || celsius > 100);
                }
            );

    [Theory]
    [InlineData(1.65)]
    [InlineData(1.0)]
    [InlineData(0.5)]
    [InlineData(0.25)]
    public void Thin_liquids_come_back_as_they_went_in(double centistokes) =>
        // Z and its published inverse close within 0.0002 mm²/s from 0.21 to 2; a wrong base of the exponential does not.
        Line(40, 10, 100, centistokes)
            .ViscosityAt(Temperature.FromDegreesCelsius(100))
            .Viscosity.Centistokes.ShouldBe(centistokes, 0.0002);

    [Fact]
    public void A_rising_viscosity_one_temperature_and_figures_off_the_scale_are_refused()
    {
        Should.Throw<ArgumentException>(() => Line(40, 10, 100, 20));
        Should.Throw<ArgumentException>(() => Line(40, 10, 40, 5));
        Should.Throw<ArgumentOutOfRangeException>(() => Line(40, 0.2, 100, 0.1));
    }

    [Fact]
    public void Refusals_state_values_units_and_what_is_allowed()
    {
        var rising = Should.Throw<ArgumentException>(() => Line(40, 10, 100, 20)).Message;
        rising.ShouldContain("10 mm²/s at 40 °C and 20 mm²/s at 100 °C");
        rising.ShouldContain("allowed: ");
        Should.Throw<ArgumentException>(() => Line(40, 10, 40, 5)).Message.ShouldContain("5 mm²/s at 40 °C");
        Should
            .Throw<ArgumentOutOfRangeException>(() => Line(40, 0.2, 100, 0.1))
            .Message.ShouldContain("firstViscosity is 0.2 mm²/s; allowed: 0.21 to 2E+07 mm²/s");
    }

    [Fact]
    public void Beyond_an_end_of_the_scale_the_end_is_stated_with_its_name()
    {
        var steep = Line(40, 2000, 60, 100);
        var cold = steep.ViscosityAt(Temperature.FromDegreesCelsius(-60));
        cold.IsThicker.ShouldBeTrue();
        cold.Viscosity.Centistokes.ShouldBe(2e7);
        var hot = Line(40, 2, 60, 0.5).ViscosityAt(Temperature.FromDegreesCelsius(200));
        hot.IsThinner.ShouldBeTrue();
        hot.Viscosity.Centistokes.ShouldBe(0.21);
        var within = steep.ViscosityAt(Temperature.FromDegreesCelsius(50));
        (within.IsThicker, within.IsThinner).ShouldBe((false, false));
    }

    [Fact]
    public void The_temperature_for_a_viscosity_leads_back_to_it() =>
        Gen.Select(Gen.Double[10, 1000], Gen.Double[0.1, 0.5], Gen.Double[-30, 150])
            .Holds(
                (kv40, ratio, celsius) =>
                {
                    var line = Line(40, kv40, 100, Math.Max(2, kv40 * ratio));
                    var here = line.ViscosityAt(Temperature.FromDegreesCelsius(celsius));
                    var back = line.TemperatureFor(here.Viscosity);
                    if (!here.IsThicker && !here.IsThinner && here.Viscosity.Centistokes > 2)
                    {
                        (back.IsThicker, back.IsThinner).ShouldBe((false, false));
                        back.Temperature.DegreesCelsius.ShouldBe(celsius, 0.01);
                        // At the measured temperatures themselves rounding must not call it extrapolated.
                        back.IsExtrapolated.ShouldBe(celsius is < 40 - 1e-6 or > 100 + 1e-6);
                    }
                }
            );

    [Fact]
    public void A_viscosity_that_the_oil_never_has_is_named()
    {
        var line = Line(40, 46, 100, 6.8);
        var never = line.TemperatureFor(KinematicViscosity.FromCentistokes(1e7));
        never.IsThinner.ShouldBeTrue(); // thinner than that down to −60 °C
        never.Temperature.DegreesCelsius.ShouldBe(-60, 1e-9);
        var hot = line.TemperatureFor(KinematicViscosity.FromCentistokes(0.3));
        hot.IsThicker.ShouldBeTrue(); // thicker than that up to 200 °C
        hot.Temperature.DegreesCelsius.ShouldBe(200, 1e-9);
        hot.IsExtrapolated.ShouldBeTrue();
        // A line that hardly falls: the temperature lies beyond any double and is still a named outcome.
        Line(40, 10, 100, 9.9999999).TemperatureFor(KinematicViscosity.FromCentistokes(1e6)).IsThinner.ShouldBeTrue();
    }

    private static ViscosityTemperatureLine Line(double t1, double v1, double t2, double v2) =>
        ViscosityTemperatureLine.FromTwoPoints(
            Temperature.FromDegreesCelsius(t1),
            KinematicViscosity.FromCentistokes(v1),
            Temperature.FromDegreesCelsius(t2),
            KinematicViscosity.FromCentistokes(v2)
        );
}
