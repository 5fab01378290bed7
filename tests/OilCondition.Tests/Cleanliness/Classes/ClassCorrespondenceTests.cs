using OilCondition.Cleanliness;
using OilCondition.Tests.Reference;

namespace OilCondition.Tests.Cleanliness;

public class ClassCorrespondenceTests
{
    public static TheoryData<string> Classes() =>
        [.. ReferenceFolder.Rows("iso_nas_crossref.csv").Select(row => row["class"])];

    [Theory]
    [MemberData(nameof(Classes))]
    public void A_class_means_a_range_of_scale_numbers_and_two_printed_codes(string written)
    {
        // iso_nas_crossref.csv: ranges derived by others, one public sheet of the trade, informative annex of a Russian national standard.
        var row = ReferenceFolder.Rows("iso_nas_crossref.csv").Single(one => one["class"] == written);
        var cleanlinessClass = CleanlinessClass.Parse(written);

        Span(As4059Size.B, cleanlinessClass).ToString().ShouldBe(row["spanned_6"]);
        Span(As4059Size.C, cleanlinessClass).ToString().ShouldBe(row["spanned_14"]);
        string.Join(
                "/",
                new[] { As4059Size.A, As4059Size.B, As4059Size.C }.Select(size => Span(size, cleanlinessClass).Highest)
            )
            .ShouldBe(row["limit_iso_A_B_C"]);
        string[] printed = row["trade_iso"][0] == '(' ? [] : [row["trade_iso"], row["annex_iso"]];
        ClassCorrespondence
            .Printed(cleanlinessClass)
            .Select(one => one.Code.ToString())
            .ShouldBe(printed.Where(code => code.Length > 0));
    }

    [Fact]
    public void The_printed_codes_carry_who_prints_them()
    {
        var printed = ClassCorrespondence.Printed(CleanlinessClass.Of(6));

        printed.Select(one => one.PrintedBy.Kind).ShouldBe([SourceKind.CommonPractice, SourceKind.Standard]);
        ClassCorrespondence.Printed(CleanlinessClass.Class00).ShouldBeEmpty();
        ClassCorrespondence.Printed(CleanlinessClass.Above(12)).ShouldBeEmpty();
        ClassCorrespondence.Printed(CleanlinessClass.Above(6)).ShouldBeEmpty();
    }

    /// <summary>Second route: every count from the coarse limits on, looked up in both tables.</summary>
    [Theory]
    [InlineData(As4059Size.A, true)]
    [InlineData(As4059Size.B, true)]
    [InlineData(As4059Size.B, false)]
    [InlineData(As4059Size.C, true)]
    [InlineData(As4059Size.C, false)]
    public void The_ranges_are_what_counts_show(As4059Size size, bool isExact)
    {
        var printing = isExact ? As4059.Exact : As4059.Rounded;
        // Limits of both tables are whole per 100 mL: each limit and the half above it touch every interval there is.
        double[] edges =
        [
            0,
            .. Enumerable.Range(0, 29).Select(number => Math.Round(100 * Iso4406.UpperLimitPerMillilitre(number))),
            .. Enumerable
                .Range(0, 13)
                .Select(CleanlinessClass.Of)
                .Concat([CleanlinessClass.Class000, CleanlinessClass.Class00])
                .Select(one => (double)printing.UpperLimitPer100Millilitres(size, one)),
        ];
        var seen = edges
            .SelectMany(edge => new[] { edge, edge + 0.5 })
            .Select(count => (Class: printing.ClassOf(size, count), Number: Iso4406.ScaleNumber(count / 100)))
            .ToArray();
        foreach (var group in seen.GroupBy(pair => pair.Class))
        {
            var range = ClassCorrespondence.ScaleNumbers(size, group.Key, printing);
            range.Lowest.Number.ShouldBe(group.Min(pair => pair.Number), $"{group.Key}{size}");
            range.Highest.Number.ShouldBe(group.Max(pair => pair.Number), $"{group.Key}{size}");
        }

        foreach (var group in seen.Where(pair => pair.Number <= 28).GroupBy(pair => pair.Number))
        {
            var range = ClassCorrespondence.Classes(size, group.Key, printing);
            range.Lowest.Rank.ShouldBe(group.Min(pair => pair.Class.Rank), $"{group.Key} at {size}");
            range.Highest.Rank.ShouldBe(group.Max(pair => pair.Class.Rank), $"{group.Key} at {size}");
        }
    }

    [Fact]
    public void A_differential_class_bounds_the_scale_numbers_from_above()
    {
        // Class 6: sums 19462 and 3462 per 100 mL are 15 and 12. From below only the largest range speaks, above 8 per 100 mL (class 5): 0.08 per mL.
        Differential(As4059Size.B, "6").ShouldBe("4-15");
        Differential(As4059Size.C, "6").ShouldBe("0-12");
        Differential(As4059Size.B, "00").ShouldBe("0-8"); // 152 per 100 mL
        Differential(As4059Size.B, ">12").ShouldBe("11->28"); // above 1024 per 100 mL
        foreach (var row in ReferenceFolder.Rows("nas1638.csv"))
        {
            Differential(As4059Size.B, row["class"]).ShouldEndWith("-" + row["iso5_of_limit"]);
            Differential(As4059Size.C, row["class"]).ShouldEndWith("-" + row["iso15_of_limit"]);
        }
    }

    [Fact]
    public void Sizes_and_classes_without_a_counterpart_are_refused()
    {
        Should
            .Throw<ArgumentOutOfRangeException>(() => Span(As4059Size.D, CleanlinessClass.Of(6)))
            .Message.ShouldContain("size is D; allowed: A to C");
        Should.Throw<ArgumentOutOfRangeException>(() => Differential(As4059Size.A, "6"));
        Should.Throw<ArgumentOutOfRangeException>(() => Differential(As4059Size.B, "000"));
        Should.Throw<ArgumentOutOfRangeException>(() => Differential(As4059Size.C, ">6"));
        Should.Throw<ArgumentOutOfRangeException>(() => Span(As4059Size.B, CleanlinessClass.Above(6)));
        Should.Throw<ArgumentOutOfRangeException>(() => ClassCorrespondence.Classes(As4059Size.B, 29, As4059.Exact));
    }

    private static CodeRange<ScaleNumber> Span(As4059Size size, CleanlinessClass cleanlinessClass) =>
        ClassCorrespondence.ScaleNumbers(size, cleanlinessClass, As4059.Exact);

    private static string Differential(As4059Size size, string written) =>
        ClassCorrespondence.ScaleNumbersOfDifferential(size, CleanlinessClass.Parse(written)).ToString();
}
