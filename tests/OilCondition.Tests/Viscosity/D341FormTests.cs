using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Viscosity;

public class D341FormTests
{
    /// <summary>Z of the general form by its definition, term by term, each with the limit to which the standard is remembered to keep it.</summary>
    [Theory]
    [InlineData(0.22)]
    [InlineData(0.27)]
    [InlineData(0.5)]
    [InlineData(1.2)]
    [InlineData(1.8)]
    [InlineData(3)]
    public void The_terms_left_out_above_their_limits_do_not_matter(double v)
    {
        var z = v + 0.7;
        z += v < 2 ? Math.Exp(-1.14883 - (2.65868 * v)) : 0;
        z -= v < 1.65 ? Math.Exp(-0.0038138 - (12.5645 * v)) : 0;
        z += v < 0.9 ? Math.Exp(5.46491 - (37.6289 * v)) : 0;
        z -= v < 0.3 ? Math.Exp(13.0458 - (74.6851 * v)) : 0;
        z += v < 0.3 ? Math.Exp(37.4619 - (192.643 * v)) : 0;
        z -= v < 0.24 ? Math.Exp(80.4945 - (400.468 * v)) : 0;

        ZOf(v, D341Form.General).ShouldBe(z, v < 2 ? 2e-6 : 2e-4);
    }

    [Fact]
    public void The_two_forms_agree_within_half_a_per_cent_and_above_2_within_a_thirtieth() =>
        Gen.Double[-1.56, 5]
            .Select(Math.Exp)
            .Holds(v =>
            {
                var (simplified, general) = (ZOf(v, D341Form.Simplified), ZOf(v, D341Form.General));
                general.ShouldBe(simplified, (v < 2 ? 0.005 : 0.0004) * simplified);
            });

    [Fact]
    public void A_thin_liquid_comes_back_as_it_went_in_and_thinner_is_hotter() =>
        Gen.Select(Gen.Double[0.22, 12], Gen.Double[1.01, 20])
            .Holds(
                (thin, ratio) =>
                {
                    var line = Line(thin * ratio, thin, D341Form.General);
                    line.Form.ShouldBe(D341Form.General);
                    At(line, 100).ShouldBe(thin, 1e-9 * thin);
                    At(line, 40).ShouldBe(thin * ratio, 1e-9 * thin * ratio);
                    At(line, 70).ShouldBeInRange(thin, thin * ratio);
                    line.TemperatureFor(KinematicViscosity.FromCentistokes(thin))
                        .Temperature.DegreesCelsius.ShouldBe(100, 1e-6);
                }
            );

    [Fact]
    public void The_ends_of_the_scale_are_named_in_both_forms()
    {
        var hot = Line(1, 0.3, D341Form.General).ViscosityAt(Temperature.FromDegreesCelsius(200));
        hot.IsThinner.ShouldBeTrue();
        hot.Viscosity.Centistokes.ShouldBe(0.21);
        At(Line(1, 0.21, D341Form.General), 100).ShouldBe(0.21, 1e-9);
    }

    [Fact]
    public void Lines_of_different_forms_are_not_blended()
    {
        var half = Ratio.FromPercent(50);
        var at = Temperature.FromDegreesCelsius(60);

        Should
            .Throw<ArgumentException>(() =>
                ViscosityBlend.OfLines(
                    (half, Line(32, 5.4, D341Form.General)),
                    (half, Line(100, 11.2, D341Form.Simplified))
                )
            )
            .Message.ShouldContain("General, Simplified");
        var both = ViscosityBlend
            .OfLines((half, Line(1.5, 0.6, D341Form.General)), (half, Line(3, 1.1, D341Form.General)))
            .ViscosityAt(at);
        both.Viscosity.Centistokes.ShouldBeInRange(
            At(Line(1.5, 0.6, D341Form.General), 60),
            At(Line(3, 1.1, D341Form.General), 60)
        );
    }

    [Fact]
    public void The_constants_are_said_to_be_from_memory() =>
        ViscosityTemperatureLine.GeneralFormSource.Kind.ShouldBe(SourceKind.FromMemory);

    private static double ZOf(double v, D341Form form)
    {
        var line = Line(v * 10, v, form);
        return Math.Pow(10, Math.Pow(10, line.A - (line.B * Math.Log10(373.15))));
    }

    private static double At(ViscosityTemperatureLine line, double celsius) =>
        line.ViscosityAt(Temperature.FromDegreesCelsius(celsius)).Viscosity.Centistokes;

    private static ViscosityTemperatureLine Line(double kv40, double kv100, D341Form form)
    {
        var (cold, hot) = (Temperature.FromDegreesCelsius(40), Temperature.FromDegreesCelsius(100));
        var (thick, thin) = (KinematicViscosity.FromCentistokes(kv40), KinematicViscosity.FromCentistokes(kv100));
        return form == D341Form.General
            ? ViscosityTemperatureLine.OfThinLiquid(cold, thick, hot, thin)
            : ViscosityTemperatureLine.FromTwoPoints(cold, thick, hot, thin);
    }
}
