using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Water;

public class SaturationCurveTests
{
    // Transformer mineral oil, log10 S = 7.42 − 1670/T: the example set M2 of the reference files, seen in a public note.
    private static readonly SaturationCurve Example = SaturationCurve.FromCoefficients(
        "transformer mineral oil (example)",
        7.42,
        1670,
        Celsius(0),
        Celsius(100),
        Source.CommonPractice("public evaluation note")
    );

    private static readonly Gen<double> AnyCelsius = Gen.Double[-60, 200];

    private static Temperature Celsius(double value) => Temperature.FromDegreesCelsius(value);

    private static MassFraction Ppm(double value) => MassFraction.FromPartsPerMillion(value);

    [Fact]
    public void Two_points_give_the_constants_that_made_them()
    {
        // Values of set M1 at 20 and 60 °C: 10^(7.0895 − 1567/T), printed to seven figures in water.csv (WTR-019, WTR-021).
        var curve = SaturationCurve.FromTwoPoints(
            "two points",
            Celsius(60),
            Ppm(243.1717),
            Celsius(20),
            Ppm(55.47709),
            Source.UserData("test")
        );

        curve.A.ShouldBe(7.0895, 1e-5);
        curve.BKelvin.ShouldBe(1567, 3e-3);
        curve.Lowest.ShouldBe(Celsius(20));
        curve.Highest.ShouldBe(Celsius(60));
    }

    [Fact]
    public void Separation_temperature_of_100_ppm_is_the_handworked_one()
    {
        // T = 1670 / (7.42 − 2) = 308.118 K = 34.97 °C, worked by hand; the same figure in the reference notes.
        var point = Example.SeparationPoint(Ppm(100));

        (point.StaysDissolved, point.StaysFree).ShouldBe((false, false));
        point.Temperature.DegreesCelsius.ShouldBe(34.97, 0.005);
        point.IsExtrapolated.ShouldBeFalse();
    }

    [Fact]
    public void Dissolved_and_free_add_up_and_dissolved_never_exceeds_saturation() =>
        Gen.Select(AnyCelsius, Gen.Double[0, 50_000])
            .Holds(
                (celsius, ppm) =>
                {
                    var state = Example.Split(Ppm(ppm), Celsius(celsius));
                    var saturation = state.Saturation.Content.PartsPerMillion;
                    state.Dissolved.PartsPerMillion.ShouldBeLessThanOrEqualTo(saturation);
                    (state.Dissolved.PartsPerMillion + state.Free.PartsPerMillion).ShouldBe(ppm, 1e-9 * ppm + 1e-12);
                    (state.Free.PartsPerMillion > 0 && state.Headroom.PartsPerMillion > 0).ShouldBeFalse();
                }
            );

    [Fact]
    public void Content_at_the_separation_temperature_is_the_saturation_there() =>
        Gen.Double[1, 2000]
            .Holds(ppm =>
            {
                var point = Example.SeparationPoint(Ppm(ppm));
                (point.StaysDissolved, point.StaysFree).ShouldBe((false, false));
                Example.SaturationAt(point.Temperature).Content.PartsPerMillion.ShouldBe(ppm, ppm * 1e-9);
            });

    [Fact]
    public void A_sensor_reading_and_the_split_are_inverses_below_saturation() =>
        Gen.Select(AnyCelsius, Gen.Double[0, 1])
            .Holds(
                (celsius, activity) =>
                {
                    var dissolved = Example.DissolvedAt(Ratio.FromDecimalFractions(activity), Celsius(celsius));
                    Example
                        .Split(dissolved, Celsius(celsius))
                        .RelativeSaturation.DecimalFractions.ShouldBe(activity, 1e-9);
                }
            );

    [Fact]
    public void Beyond_the_published_range_the_result_says_so()
    {
        Example.SaturationAt(Celsius(100)).IsExtrapolated.ShouldBeFalse();
        Example.SaturationAt(Celsius(100.1)).IsExtrapolated.ShouldBeTrue();
        Example.Split(Ppm(10), Celsius(-5)).Saturation.IsExtrapolated.ShouldBeTrue();
    }

    [Fact]
    public void Dry_oil_stays_dissolved_and_very_wet_oil_stays_free()
    {
        Example.SeparationPoint(Ppm(0)).StaysDissolved.ShouldBeTrue();
        Example.SeparationPoint(Ppm(500_000)).StaysFree.ShouldBeTrue();
    }

    [Theory]
    [InlineData(2000)]
    [InlineData(-61)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_temperature_outside_any_oil_is_refused_with_the_range(double celsius)
    {
        // UnitsNet itself refuses NaN and infinities when the quantity is made, which is the same to the caller.
        var error = Should.Throw<ArgumentException>(() => Example.SaturationAt(Celsius(celsius)));
        if (double.IsFinite(celsius))
        {
            error.Message.ShouldContain($"temperature is {celsius} °C; allowed: -60 to 200 °C");
        }
    }

    [Fact]
    public void A_negative_content_is_refused_with_the_unit() =>
        Should
            .Throw<ArgumentOutOfRangeException>(() => Example.Split(Ppm(-5), Celsius(20)))
            .Message.ShouldContain("total is -5 mg/kg; allowed: 0 to 500000 mg/kg");

    [Fact]
    public void Points_at_one_temperature_or_falling_with_temperature_are_refused()
    {
        Should
            .Throw<ArgumentException>(() =>
                SaturationCurve.FromTwoPoints("x", Celsius(40), Ppm(100), Celsius(40), Ppm(200), Example.Source)
            )
            .Message.ShouldContain("two different temperatures");
        Should
            .Throw<ArgumentException>(() =>
                SaturationCurve.FromTwoPoints("x", Celsius(20), Ppm(200), Celsius(60), Ppm(100), Example.Source)
            )
            .Message.ShouldContain("must rise with temperature");
    }
}
