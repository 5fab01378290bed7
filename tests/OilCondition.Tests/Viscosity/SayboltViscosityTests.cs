using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Viscosity;

public class SayboltViscosityTests
{
    [Theory]
    [InlineData(1.81, 100)]
    [InlineData(1.77, 210)]
    public void The_table_of_the_practice_begins_at_32_seconds_at_both_temperatures(
        double centistokes,
        double fahrenheit
    )
    {
        // ASTM D2161, 5.1: table 1 runs from 1.81 mm²/s at 100 °F and from 1.77 mm²/s at 210 °F (seen); both are 32 SUS.
        var seconds = Seconds(centistokes, fahrenheit);

        seconds.ShouldBe(32, 0.06);
        Centistokes(seconds, fahrenheit).ShouldBe(centistokes, 1e-6);
        Centistokes(32, fahrenheit).ShouldBe(centistokes, 0.02);
    }

    [Theory]
    [InlineData(500, 100, 4.632)]
    [InlineData(139.8, 210, 4.664)]
    [InlineData(100_000, 100, 4.632)]
    [InlineData(100_000, 210, 4.664)]
    public void Above_the_table_the_equation_goes_on_as_the_factor_of_the_practice(
        double v,
        double fahrenheit,
        double b
    ) => Seconds(v, fahrenheit).ShouldBe(b * v, 0.0005 * b * v); // ASTM D2161, 5.2 (seen)

    [Fact]
    public void Seconds_lead_back_to_the_viscosity_and_rise_with_it() =>
        Gen.Select(Gen.Double[0.63, 11.6].Select(Math.Exp), Gen.Double[-50, 380])
            .Holds(
                (v, fahrenheit) =>
                {
                    var seconds = Seconds(v, fahrenheit);
                    Centistokes(seconds, fahrenheit).ShouldBe(v, 1e-7 * v);
                    Seconds(v * 1.001, fahrenheit).ShouldBeGreaterThan(seconds);
                }
            );

    [Fact]
    public void The_range_is_the_same_both_ways_at_every_temperature() =>
        Gen.Double[-70, 390]
            .Holds(fahrenheit =>
            {
                var lowest = Centistokes(31.94, fahrenheit);
                Seconds(lowest * 1.0001, fahrenheit).ShouldBeGreaterThan(31.94);
                Should
                    .Throw<ArgumentOutOfRangeException>(() => Seconds(lowest * 0.9999, fahrenheit))
                    .Message.ShouldContain("mm²/s; allowed:");
                Centistokes(Seconds(119_999, fahrenheit), fahrenheit).ShouldBe(119_999, 0.1);
            });

    [Fact]
    public void Outside_the_range_it_is_refused()
    {
        Should.Throw<ArgumentOutOfRangeException>(() => Centistokes(31.9, 100)).Message.ShouldContain("is 31.9 SUS");
        Should.Throw<ArgumentOutOfRangeException>(() => Centistokes(double.NaN, 100));
        Should.Throw<ArgumentOutOfRangeException>(() => Centistokes(1e6, 100));
        Should.Throw<ArgumentOutOfRangeException>(() => Seconds(120_001, 100));
        Should.Throw<ArgumentOutOfRangeException>(() => Seconds(46, 1000));
    }

    private static double Seconds(double centistokes, double fahrenheit) =>
        SayboltViscosity.ToSayboltSeconds(
            KinematicViscosity.FromCentistokes(centistokes),
            Temperature.FromDegreesFahrenheit(fahrenheit)
        );

    private static double Centistokes(double seconds, double fahrenheit) =>
        SayboltViscosity.FromSayboltSeconds(seconds, Temperature.FromDegreesFahrenheit(fahrenheit)).Centistokes;
}
