using OilCondition.LabFiles;

namespace OilCondition.Tests.LabFiles;

/// <summary>Cleanliness codes after ISO 4406 in one column or three; counts are those of the standard's table 1.</summary>
public class CodeTests
{
    private static LabFileResult Read(string header, string cells) =>
        LabFile.Read(new StringReader($"Machine,Date,{header}\nM1,2026-03-14,{cells}\n"), "lab.csv", ColumnMap.Default);

    private static string Counts(LabFileResult file)
    {
        var readings = file.SamplesOf("M1").Single().Readings;
        return string.Join(
            " ",
            new[] { Measurands.Particles4, Measurands.Particles6, Measurands.Particles14 }.Select(size =>
                readings.TryGetValue(size, out var reading) ? reading.ToString() : "."
            )
        );
    }

    [Theory]
    [InlineData("18/16/13", "≈2500 ≈640 ≈80")]
    [InlineData("ISO 18/16/13", "≈2500 ≈640 ≈80")]
    [InlineData(" 18 / 16 / 13 ", "≈2500 ≈640 ≈80")]
    [InlineData("-/16/13", ". ≈640 ≈80")]
    [InlineData("–/16/13", ". ≈640 ≈80")]
    [InlineData("16/13", ". ≈640 ≈80")]
    [InlineData("*/16/13", ">320 ≈640 ≈80")] // at least as many as of 6 µm(c)
    [InlineData(">28/25/22", ">2500000 ≈320000 ≈40000")]
    [InlineData("14/12/>=7", "≈160 ≈40 >0.64")] // fewer than 20 counted: the true number may be higher
    public void A_code_in_one_column(string code, string expected)
    {
        var file = Read("ISO 4406", code);

        Counts(file).ShouldBe(expected);
        file.Columns[2].Use.ShouldBe(ColumnUse.CleanlinessCode);
        file.Cells.Readings.ShouldBe(1);
    }

    [Theory]
    [InlineData("18/19/13")]
    [InlineData("31/16/13")]
    [InlineData("18/16/13/10")]
    [InlineData("18-16-13")]
    [InlineData("18")]
    [InlineData("clean")]
    public void What_is_no_code_is_refused_with_what_is_allowed(string code) =>
        Read("ISO code", code)
            .Problems.Single()
            .Reason.ShouldContain("numbers from 0 to 28 that do not rise with size");

    [Fact]
    public void Three_columns_of_scale_numbers()
    {
        Counts(Read("ISO >4,ISO >6,ISO >14", "18,16,13")).ShouldBe("≈2500 ≈640 ≈80");
        Counts(Read("ISO >4,ISO >6,ISO >14", ">28,16,<13")).ShouldBe(">2500000 ≈640 <80");
    }

    [Theory]
    [InlineData("29")]
    [InlineData("16.5")]
    [InlineData("-1")]
    [InlineData("640")]
    public void A_bad_scale_number_says_what_is_allowed(string number) =>
        Read("ISO >4", number)
            .Problems.Single()
            .Reason.ShouldBe($"{number} is no scale number after ISO 4406; allowed: whole numbers from 0 to 28");

    [Fact]
    public void A_code_beside_its_counts_says_the_same_once_and_a_contradiction_is_a_problem()
    {
        var agrees = Read("ISO 4406,>4 [per mL],>6 [per mL],>14 [per mL],ISO >4", "18/16/13,2100,600,75,18");
        agrees.Problems.ShouldBeEmpty();
        Counts(agrees).ShouldBe("2100 600 75");

        var contradicts = Read("ISO 4406,>4 [per mL]", "18/16/13,4000");
        contradicts
            .Problems.Single()
            .Reason.ShouldBe("another column of this row says 4000 per mL, which is scale number 19");
        Counts(contradicts).ShouldBe("4000 . .");
    }
}
