using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Reference;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Viscosity;

public class ViscosityIndexTests
{
    [Fact]
    public void Basic_values_are_those_of_the_table_and_lie_on_the_quadratics_of_the_appendix()
    {
        // ASTM D2270 appendix X2 follows its table within 0.12 %.
        var quadratics = ReferenceFolder.Rows("viscosity_index_quadratics.csv");
        var rows = ReferenceFolder.Rows("viscosity_index_LH.csv");
        rows.Count.ShouldBe(311);
        foreach (var row in rows)
        {
            var y = Read(row["kv100"]);
            var index = Index(y + 1000, y);
            index.L.Centistokes.ShouldBe(Read(row["L"]), 1e-9);
            index.H.Centistokes.ShouldBe(Read(row["H"]), 1e-9);
            var q = quadratics.First(range => y >= Read(range["y_min"]) && y <= Read(range["y_max"]));
            index.L.Centistokes.ShouldBe(
                (Read(q["a"]) * y + Read(q["b"])) * y + Read(q["c"]),
                0.0012 * index.L.Centistokes
            );
            index.H.Centistokes.ShouldBe(
                (Read(q["d"]) * y + Read(q["e"])) * y + Read(q["f"]),
                0.0012 * index.H.Centistokes
            );
        }
    }

    [Fact]
    public void Above_70_the_equations_go_on_from_the_table()
    {
        // ASTM D2270: at 70 mm²/s the table has 4905 and 1558, the equations 4903.87 and 1557.66.
        var above = Index(5000, 70 + 1e-9);
        above.L.Centistokes.ShouldBe(4903.87, 0.005);
        above.H.Centistokes.ShouldBe(1557.66, 0.005);
        Index(5000, 70).L.Centistokes.ShouldBe(4905, 1e-9);
    }

    [Fact]
    public void The_procedures_meet_at_index_100() =>
        Gen.Double[2, 69]
            .Holds(y =>
            {
                var h = Index(y + 1000, y).H.Centistokes;
                var a = Index(h, y);
                a.IsProcedureB.ShouldBeFalse();
                a.Unrounded.ShouldBe(100, 1e-9);
                var b = Index(h * (1 - 1e-9), y);
                b.IsProcedureB.ShouldBeTrue();
                b.Unrounded.ShouldBe(100, 1e-3);
            });

    [Fact]
    public void The_index_falls_as_the_oil_at_40_thickens() =>
        Gen.Select(Gen.Double[2, 80], Gen.Double[1.1, 20], Gen.Double[1.001, 2])
            .Holds(
                (y, ratio, factor) =>
                    Index(y * ratio * factor, y).Unrounded.ShouldBeLessThan(Index(y * ratio, y).Unrounded)
            );

    [Fact]
    public void The_viscosity_at_100_for_an_index_has_that_index() =>
        Gen.Select(Gen.Double[20, 3000], Gen.Double[0, 250])
            .Holds(
                (u, index) =>
                {
                    var y = ViscosityIndex.ViscosityAt100(KinematicViscosity.FromCentistokes(u), index);
                    // Where table and equations meet, 70 mm²/s, the index itself steps by 0.03.
                    Index(u, y.Centistokes)
                        .Unrounded.ShouldBe(index, Math.Abs(y.Centistokes - 70) < 0.01 ? 0.1 : 1e-4);
                }
            );

    [Theory]
    [InlineData(116.5, 116)] // ASTM E29, halves to even (recalled)
    [InlineData(115.5, 116)]
    [InlineData(115.49, 115)]
    [InlineData(-0.5, 0)]
    [InlineData(-1.5, -2)]
    [InlineData(116.50000000000003, 116)]
    public void Rounds_halves_to_even(double index, int whole) => ViscosityIndex.Round(index).ShouldBe(whole);

    [Fact]
    public void A_thick_oil_with_a_steep_line_has_a_negative_index()
    {
        // L = 119.94 and H = 69.48 at 8.86 mm²/s (worked example of ASTM D2270): (119.94 − 150)/0.5046 = −59.6.
        Index(150, 8.86).Unrounded.ShouldBe(-59.57, 0.05);
        Index(150, 8.86).Reported.ShouldBe(-60);
    }

    [Fact]
    public void What_has_no_index_is_refused_with_value_and_range()
    {
        Should
            .Throw<ArgumentOutOfRangeException>(() => Index(5, 1.99))
            .Message.ShouldContain("viscosityAt100 is 1.99 mm²/s; allowed: 2 to");
        Should
            .Throw<ArgumentException>(() => Index(8, 9))
            .Message.ShouldContain("viscosityAt40 is 8 mm²/s, viscosityAt100 is 9 mm²/s");
        Should.Throw<ArgumentException>(() => Index(9, 9));
        Should.Throw<ArgumentOutOfRangeException>(() =>
            ViscosityIndex.ViscosityAt100(KinematicViscosity.FromCentistokes(6), 0)
        );
        Should.Throw<ArgumentOutOfRangeException>(() => ViscosityIndex.Round(double.NaN));
    }

    private static ViscosityIndex Index(double kv40, double kv100) =>
        ViscosityIndex.FromViscosities(
            KinematicViscosity.FromCentistokes(kv40),
            KinematicViscosity.FromCentistokes(kv100)
        );

    private static double Read(string text) =>
        text.Length == 0
            ? double.PositiveInfinity
            : double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
