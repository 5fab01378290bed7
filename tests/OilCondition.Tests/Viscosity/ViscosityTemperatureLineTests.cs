using System.Globalization;
using CsCheck;
using OilCondition.Tests.Reference;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Viscosity;

public class ViscosityTemperatureLineTests
{
    public static TheoryData<string, string, string> Rows() =>
        ReferenceFolder.Theory("viscosity.csv", row => row.Quantity == "kv_at_t");

    [Theory]
    [MemberData(nameof(Rows))]
    [Trait("Category", "Reference")]
    public void Viscosity_at_a_temperature(string file, string id, string description)
    {
        description.ShouldNotBeEmpty();
        var row = ReferenceFolder.Case(file, id);
        var line = Line(First(row, "t1"), First(row, "kv1"), First(row, "t2"), First(row, "kv2"));
        row.ShouldAgree(line.ViscosityAt(Temperature.FromDegreesCelsius(First(row, "t"))).Viscosity.Centistokes);
    }

    [Fact]
    public void The_line_passes_its_points_and_falls() =>
        Gen.Select(Gen.Double[5, 1000], Gen.Double[0.05, 0.8], Gen.Double[-20, 120])
            .Sample(
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

    private static double First(ReferenceCase row, string name) =>
        double.Parse(row.Arguments[name].Split(' ')[0], CultureInfo.InvariantCulture);

    private static ViscosityTemperatureLine Line(double t1, double v1, double t2, double v2) =>
        ViscosityTemperatureLine.FromTwoPoints(
            Temperature.FromDegreesCelsius(t1),
            KinematicViscosity.FromCentistokes(v1),
            Temperature.FromDegreesCelsius(t2),
            KinematicViscosity.FromCentistokes(v2)
        );
}
