using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Viscosity;

public class ViscosityBlendTests
{
    [Fact]
    public void A_blend_lies_between_its_parts_and_dilution_finds_the_share_again() =>
        Gen.Select(Gen.Double[5, 1000], Gen.Double[1.2, 50], Gen.Double[0.01, 0.99])
            .Holds(
                (thin, ratio, share) =>
                {
                    var blend = ViscosityBlend.OfTwo(Kv(thin * ratio), Kv(thin), Ratio.FromDecimalFractions(share));
                    blend.Centistokes.ShouldBeInRange(thin, thin * ratio);
                    Estimate(thin * ratio, thin, blend.Centistokes, 0).Fraction.DecimalFractions.ShouldBe(share, 1e-3);
                }
            );

    [Fact]
    public void From_lines_the_blend_lies_between_its_parts_and_one_part_alone_is_itself() =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[-20, 150])
            .Holds(
                (share, celsius) =>
                {
                    var (thin, thick) = (Line(32, 5.4), Line(100, 11.2));
                    var at = Temperature.FromDegreesCelsius(celsius);
                    var blend = ViscosityBlend.OfLines(Part(1 - share, thin), Part(share, thick)).ViscosityAt(at);
                    var (low, high) = (
                        thin.ViscosityAt(at).Viscosity.Centistokes,
                        thick.ViscosityAt(at).Viscosity.Centistokes
                    );
                    blend.Viscosity.Centistokes.ShouldBeInRange(low * (1 - 1e-9), high * (1 + 1e-9));
                    blend.IsExtrapolated.ShouldBe(celsius is < 40 or > 100);
                    ViscosityBlend
                        .OfLines(Part(1, thick))
                        .ViscosityAt(at)
                        .Viscosity.Centistokes.ShouldBe(high, 1e-9 * high);
                }
            );

    [Fact]
    public void The_uncertainty_is_the_scatter_of_repeated_estimates()
    {
        // Second route: each viscosity moved by its own uncertainty, the changes of the share added in squares.
        double Share(double oil, double fuel, double mix) => Estimate(oil, fuel, mix, 0).Fraction.DecimalFractions;
        const double u = 0.01;
        var moved = new[]
        {
            Share(150 * (1 + u), 3, 110) - Share(150 * (1 - u), 3, 110),
            Share(150, 3 * (1 + u), 110) - Share(150, 3 * (1 - u), 110),
            Share(150, 3, 110 * (1 + u)) - Share(150, 3, 110 * (1 - u)),
        };
        var expected = Math.Sqrt(moved.Sum(change => change * change / 4));
        var estimate = Estimate(150, 3, 110, u);
        estimate.StandardUncertainty.DecimalFractions.ShouldBe(expected, 1e-3 * expected);
        // 1.959964: normal quantile of 97.5 %.
        (estimate.Highest - estimate.Fraction).DecimalFractions.ShouldBe(1.959964 * expected, 2e-3 * expected);
        estimate.IsDetected.ShouldBeTrue();
    }

    [Theory]
    [InlineData(149, true, false)]
    [InlineData(110, true, true)]
    [InlineData(180, false, false)]
    [InlineData(2, false, false)]
    public void What_the_viscosity_shows_is_named(double mixture, bool isExplained, bool isDetected)
    {
        var estimate = Estimate(150, 3, mixture, 0.01);
        (estimate.IsExplained, estimate.IsDetected).ShouldBe((isExplained, isDetected));
        estimate.Fraction.DecimalFractions.ShouldBeInRange(0, 1);
    }

    [Fact]
    public void Five_per_cent_between_the_viscosities_is_enough_to_tell_oils_apart()
    {
        foreach (var (oil, diluent) in new[] { (100, 105.0001), (105.0001, 100.0), (1000, 1050.001) })
        {
            Estimate(oil, diluent, diluent, 0.001).Fraction.Percent.ShouldBe(100, 1e-6);
        }

        Should
            .Throw<ArgumentException>(() => Estimate(100, 104.9999, 102, 0.01))
            .Message.ShouldContain("ratio of 1.05");
        Should.Throw<ArgumentException>(() => Estimate(104.9999, 100, 102, 0.01));
    }

    /// <summary>The share of a wrong oil by hand, W = lg lg Z to five figures.</summary>
    [Fact]
    public void A_thicker_diluent_raises_the_share_as_the_mixture_thickens()
    {
        // lg lg 46.7 = 0.22254, lg lg 220.7 = 0.36992, lg lg 53.3 = 0.23722 for 52.6 mm²/s: (0.23722 − 0.22254)/0.14738 = 9.96 %.
        Estimate(46, 220, 52.6, 0.01).Fraction.Percent.ShouldBe(9.96, 0.02);
        Estimate(220, 46, 52.6, 0.01).Fraction.Percent.ShouldBe(90.04, 0.02);
        Estimate(46, 220, 60, 0.01).Fraction.ShouldBeGreaterThan(Estimate(46, 220, 52.6, 0.01).Fraction);
    }

    [Fact]
    public void A_part_without_a_share_does_not_make_a_blend_extrapolated()
    {
        var at = Temperature.FromDegreesCelsius(20);
        var cold = ViscosityTemperatureLine.FromTwoPoints(
            Temperature.FromDegreesCelsius(0),
            Kv(300),
            Temperature.FromDegreesCelsius(50),
            Kv(30)
        );

        ViscosityBlend.OfLines(Part(1, cold), Part(0, Line(32, 5.4))).ViscosityAt(at).IsExtrapolated.ShouldBeFalse();
        ViscosityBlend.OfLines(Part(0.5, cold), Part(0.5, Line(32, 5.4))).ViscosityAt(at).IsExtrapolated.ShouldBeTrue();
        ViscosityBlend
            .OfLines(Part(0.5, cold), Part(0.5, Line(32, 5.4)))
            .ViscosityAt(Temperature.FromDegreesCelsius(45))
            .IsExtrapolated.ShouldBeFalse();
        ViscosityBlend
            .OfLines(Part(0.5, cold), Part(0.5, Line(32, 5.4)))
            .ViscosityAt(Temperature.FromDegreesCelsius(60))
            .IsExtrapolated.ShouldBeTrue();
    }

    [Fact]
    public void Shares_that_do_not_add_up_and_oils_too_alike_are_refused()
    {
        var at = Temperature.FromDegreesCelsius(40);
        Should
            .Throw<ArgumentException>(() => ViscosityBlend.OfLines(Part(0.5, Line(32, 5.4))).ViscosityAt(at))
            .Message.ShouldContain("1 parts add to 0.5; allowed: 1");
        Should.Throw<ArgumentException>(() => ViscosityBlend.OfLines().ViscosityAt(at));
        Should
            .Throw<ArgumentException>(() => Estimate(46, 47, 46, 0.01))
            .Message.ShouldContain("oil is 46 mm²/s, diluent is 47 mm²/s");
        Should.Throw<ArgumentOutOfRangeException>(() => ViscosityBlend.OfLines(Part(1.1, Line(32, 5.4))));
    }

    private static OilDilution Estimate(double oil, double diluent, double mixture, double u) =>
        OilDilution.Estimate(
            Kv(oil),
            Kv(diluent),
            Kv(mixture),
            Ratio.FromDecimalFractions(u),
            Ratio.FromDecimalFractions(u),
            Ratio.FromDecimalFractions(u),
            0.95
        );

    private static (Ratio Share, ViscosityTemperatureLine Line) Part(double share, ViscosityTemperatureLine line) =>
        (Ratio.FromDecimalFractions(share), line);

    private static ViscosityTemperatureLine Line(double kv40, double kv100) =>
        ViscosityTemperatureLine.FromTwoPoints(
            Temperature.FromDegreesCelsius(40),
            Kv(kv40),
            Temperature.FromDegreesCelsius(100),
            Kv(kv100)
        );

    private static KinematicViscosity Kv(double centistokes) => KinematicViscosity.FromCentistokes(centistokes);
}
