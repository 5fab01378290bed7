using OilCondition.Tests.Reference;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Viscosity;

public class IsoViscosityGradeTests
{
    [Fact]
    public void The_grades_are_those_of_the_table()
    {
        var rows = ReferenceFolder.Rows("iso_vg.csv");
        rows.Count.ShouldBe(IsoViscosityGrade.All.Count);
        foreach (var (row, grade) in rows.Zip(IsoViscosityGrade.All))
        {
            grade.ToString().ShouldBe("VG " + row["iso_vg"]);
            grade.Midpoint.Centistokes.ShouldBe(Read(row["midpoint"]));
            grade.Lowest.Centistokes.ShouldBe(Read(row["min"]));
            grade.Highest.Centistokes.ShouldBe(Read(row["max"]));
            // ISO 3448: 10 % to either side.
            grade.Lowest.Centistokes.ShouldBe(0.9 * grade.Midpoint.Centistokes, 1e-9);
            grade.Highest.Centistokes.ShouldBe(1.1 * grade.Midpoint.Centistokes, 1e-9);
        }
    }

    [Fact]
    public void Limits_belong_to_the_grade_and_gaps_do_not()
    {
        foreach (var grade in IsoViscosityGrade.All)
        {
            foreach (var limit in new[] { grade.Lowest, grade.Highest })
            {
                var converted = KinematicViscosity.FromSquareMetersPerSecond(limit.SquareMetersPerSecond);
                IsoViscosityGrade.TryFind(converted, out var found).ShouldBeTrue();
                found.ShouldBe(grade);
                IsoViscosityGrade.Nearest(limit).ShouldBe(grade);
            }

            var below = grade.Check(grade.Lowest * 0.99999);
            (below.IsInGrade, below.FromMidpoint.DecimalFractions < 0).ShouldBe((false, true));
            var above = grade.Check(grade.Highest * 1.00001);
            (above.IsInGrade, above.FromMidpoint.DecimalFractions > 0).ShouldBe((false, true));
            IsoViscosityGrade.TryFind(grade.Highest * 1.00001, out _).ShouldBeFalse();
        }
    }

    [Theory]
    [InlineData(1.9, 2)]
    [InlineData(38, 32)]
    [InlineData(39, 46)]
    [InlineData(5000, 3200)]
    public void A_value_without_a_grade_has_none_and_names_the_nearest(double centistokes, int nearest)
    {
        var viscosity = KinematicViscosity.FromCentistokes(centistokes);
        IsoViscosityGrade.TryFind(viscosity, out var grade).ShouldBeFalse();
        grade.ShouldBeNull();
        IsoViscosityGrade.Nearest(viscosity).Number.ShouldBe(nearest);
    }

    [Fact]
    public void The_off_grade_report_says_by_how_much_and_what_it_is_instead()
    {
        var check = IsoViscosityGrade.FromNumber(46).Check(KinematicViscosity.FromCentistokes(69));
        check.IsInGrade.ShouldBeFalse();
        check.FromMidpoint.Percent.ShouldBe(50, 1e-9);
        check.Nearest.Number.ShouldBe(68);
        IsoViscosityGrade.FromNumber(46).Check(KinematicViscosity.FromCentistokes(46)).IsInGrade.ShouldBeTrue();
    }

    [Fact]
    public void An_unknown_grade_and_a_viscosity_of_nothing_are_refused()
    {
        Should
            .Throw<ArgumentOutOfRangeException>(() => IsoViscosityGrade.FromNumber(47))
            .Message.ShouldContain("gradeNumber is 47; allowed: 2, 3, 5");
        Should.Throw<ArgumentOutOfRangeException>(() => IsoViscosityGrade.TryFind(KinematicViscosity.Zero, out _));
    }

    private static double Read(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
