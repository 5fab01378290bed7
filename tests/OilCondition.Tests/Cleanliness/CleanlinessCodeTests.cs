using CsCheck;
using OilCondition.Cleanliness;

namespace OilCondition.Tests.Cleanliness;

public class CleanlinessCodeTests
{
    /// <summary>ISO 4406 table 1, as reproduced in iso4406.csv (five secondary reproductions that agree).</summary>
    public static TheoryData<int, double> Table()
    {
        var data = new TheoryData<int, double>();
        foreach (var row in Reference.ReferenceFolder.Rows("iso4406.csv"))
        {
            if (int.TryParse(row["scale_number"], out var number))
            {
                data.Add(number, double.Parse(row["up_to_and_incl_per_mL"]));
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Table))]
    public void A_limit_belongs_to_its_number_and_the_next_count_above_to_the_next(int number, double upper)
    {
        Iso4406.ScaleNumber(upper).ShouldBe(number);
        Iso4406.ScaleNumber(double.BitDecrement(upper)).ShouldBe(number);
        Iso4406.ScaleNumber(double.BitIncrement(upper)).ShouldBe(number + 1);
        Iso4406.UpperLimitPerMillilitre(number).ShouldBe(upper);
    }

    [Fact]
    public void The_whole_table_was_read() => Table().Count.ShouldBe(29);

    [Fact]
    public void Counts_make_a_code_and_the_code_prints_as_written()
    {
        // 1300 < 2400 <= 2500, 320 < 600 <= 640, 40 < 75 <= 80: table 1 by eye.
        var code = CleanlinessCode.FromCounts(2400, 600, 75);

        code.ToString().ShouldBe("18/16/13");
        CleanlinessCode.TryParse("18/16/13", out var parsed).ShouldBeTrue();
        parsed.ShouldBe(code);
    }

    [Fact]
    public void The_worst_size_decides_the_excess()
    {
        var code = new CleanlinessCode(18, 17, 13);

        code.WorstExcess(new CleanlinessCode(18, 16, 13)).ShouldBe(1);
        code.WorstExcess(new CleanlinessCode(19, 18, 15)).ShouldBe(-1);
    }

    [Fact]
    public void More_particles_never_give_a_lower_number() =>
        Gen.Select(Gen.Double[0, 3e6], Gen.Double[0, 3e6])
            .Sample(
                (a, b) =>
                    Iso4406
                        .ScaleNumber(Math.Max(a, b))
                        .ShouldBeGreaterThanOrEqualTo(Iso4406.ScaleNumber(Math.Min(a, b)))
            );

    [Theory]
    [InlineData("16/13")]
    [InlineData("13/16/18")]
    [InlineData("18/16/x")]
    [InlineData("")]
    [InlineData(null)]
    public void Anything_else_is_not_a_three_number_code(string? text) =>
        CleanlinessCode.TryParse(text, out _).ShouldBeFalse();

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void An_impossible_count_is_refused(double count) =>
        Should.Throw<ArgumentOutOfRangeException>(() => Iso4406.ScaleNumber(count)).Message.ShouldContain("per mL");
}
