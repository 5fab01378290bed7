using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Reference;
using UnitsNet;

namespace OilCondition.Tests.Cleanliness;

public class As4059Tests
{
    private static readonly As4059Size[] Sizes = [.. Enum.GetValues<As4059Size>()];

    /// <summary>SAE AS4059 rev. E table 2, both printings, as reproduced in as4059.csv: limits by size, classes 000 to 12 in order.</summary>
    private static Dictionary<As4059Size, (string Class, int Limit)[]> Table(As4059 printing)
    {
        var name = printing == As4059.Exact ? "cumulative_exact" : "cumulative_rounded";
        return ReferenceFolder
            .Rows("as4059.csv")
            .Where(row => row["table"] == name)
            .GroupBy(row => Enum.Parse<As4059Size>(row["size"]))
            .ToDictionary(
                group => group.Key,
                group => group.Select(row => (row["class"], int.Parse(row["max_per_100mL"]))).ToArray()
            );
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void A_limit_belongs_to_its_class_and_the_next_count_above_to_a_later_one(bool isExact)
    {
        var printing = isExact ? As4059.Exact : As4059.Rounded;
        var table = Table(printing);
        table.Values.Sum(limits => limits.Length).ShouldBe(15 * 6);
        foreach (var size in Sizes)
        {
            // Several classes may share a limit at the largest sizes; the cleanest of them is given.
            string Expected(double count) =>
                table[size].Where(row => count <= row.Limit).Select(row => row.Class).FirstOrDefault(">12");
            foreach (var (written, limit) in table[size])
            {
                var cleanlinessClass = CleanlinessClass.Parse(written);
                printing.UpperLimitPer100Millilitres(size, cleanlinessClass).ShouldBe(limit);
                double[] around =
                [
                    limit,
                    double.BitIncrement(limit),
                    limit + 1,
                    Math.Max(0, double.BitDecrement(limit)),
                ];
                foreach (var count in around)
                {
                    printing.ClassOf(size, count).ToString().ShouldBe(Expected(count), $"{count:R} at {size}");
                }
            }
        }
    }

    [Fact]
    public void The_printings_differ_where_the_table_was_rounded()
    {
        // 19462 and 19500: class 6B exact and rounded, as4059.csv.
        As4059.Exact.ClassOf(As4059Size.B, 19480).ShouldBe(CleanlinessClass.Of(7));
        As4059.Rounded.ClassOf(As4059Size.B, 19480).ShouldBe(CleanlinessClass.Of(6));
    }

    [Fact]
    public void More_particles_never_give_a_cleaner_class() =>
        Gen.Select(
                One(Sizes),
                Gen.Double[0, 15].Select(Math.Exp),
                Gen.Double[0, 15].Select(Math.Exp),
                One(As4059.Exact, As4059.Rounded)
            )
            .Holds(
                (size, a, b, printing) =>
                    printing
                        .ClassOf(size, Math.Max(a, b))
                        .Rank.ShouldBeGreaterThanOrEqualTo(printing.ClassOf(size, Math.Min(a, b)).Rank)
            );

    [Fact]
    public void A_raw_count_stands_on_its_limit_whatever_the_unit_of_its_volume()
    {
        // Limits of as4059.csv: 6B is 19462, 000C is 14, 00C is 27.
        As4059
            .Exact.ClassOf(As4059Size.B, new ParticleCount(9731, Volume.FromMilliliters(50)))
            .ShouldBe(CleanlinessClass.Of(6));
        As4059
            .Exact.ClassOf(As4059Size.C, new ParticleCount(14, Volume.FromLiters(0.1)))
            .ShouldBe(CleanlinessClass.Class000);
        As4059
            .Exact.ClassOf(As4059Size.C, new ParticleCount(27, Volume.FromCubicMeters(0.001), 10))
            .ShouldBe(CleanlinessClass.Class00);
        new ParticleCount(7, Volume.FromMilliliters(10)).Per100Millilitres.ShouldBe(70);
    }

    [Fact]
    public void Counts_give_a_class_a_size_or_the_worst_of_a_span()
    {
        var counts = new Dictionary<As4059Size, double>
        {
            [As4059Size.D] = 300,
            [As4059Size.B] = 38000,
            [As4059Size.C] = 3400,
        };

        As4059.Exact.CodeOf(counts).ToString().ShouldBe("7B/6C/5D"); // table 2 by eye
        As4059.Exact.SpanOf(counts).ToString().ShouldBe("7B-D");
        counts.Remove(As4059Size.C);
        As4059.Exact.CodeOf(counts).ToString().ShouldBe("7B/5D");
        Should.Throw<ArgumentException>(() => As4059.Exact.SpanOf(counts)).Message.ShouldContain("B, D");
        counts[As4059Size.E] = 301;
        Should
            .Throw<ArgumentException>(() => As4059.Exact.CodeOf(counts))
            .Message.ShouldContain("300 per 100 mL at size D and 301 at E");
    }

    [Theory]
    [InlineData("6", "6B")]
    [InlineData("6B", "6B")]
    [InlineData(" 6 b ", "6B")]
    [InlineData("00A", "00A")]
    [InlineData("000", "000B")]
    [InlineData("7B/6C/5D", "7B/6C/5D")]
    [InlineData("7A / 7B / 6C / 5D", "7A/7B/6C/5D")]
    [InlineData("6B-F", "6B-F")]
    [InlineData("6 A – F", "6A-F")]
    [InlineData("6b\u2212f", "6B-F")]
    [InlineData(">12A/9B", ">12A/9B")]
    [InlineData("> 12A", ">12A")]
    [InlineData("8A/6B-F", "8A/6B-F")]
    public void A_code_is_written_in_several_forms(string text, string written)
    {
        As4059Code.Parse(text).ToString().ShouldBe(written);
        As4059Code.Parse(written).ShouldBe(As4059Code.Parse(text));
        As4059Code.Parse(written).GetHashCode().ShouldBe(As4059Code.Parse(text).GetHashCode());
    }

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("B")]
    [InlineData("13B")]
    [InlineData("06B")]
    [InlineData("0000B")]
    [InlineData("-1B")]
    [InlineData(">6B")]
    [InlineData("6G")]
    [InlineData("6BF")]
    [InlineData("6B-")]
    [InlineData("6-F")]
    [InlineData("6B-B")]
    [InlineData("6F-B")]
    [InlineData("6B-D-F")]
    [InlineData("6C/7B")]
    [InlineData("6B/7B")]
    [InlineData("6B-D/7C")]
    [InlineData("6B/")]
    [InlineData("7/6C")]
    [InlineData("6.5B")]
    [InlineData("class 6")]
    [InlineData("18/16/13")]
    public void Anything_else_is_not_a_code(string? text) => As4059Code.TryParse(text, out _).ShouldBeFalse();

    [Fact]
    public void What_is_no_code_says_how_one_looks()
    {
        Should.Throw<FormatException>(() => As4059Code.Parse("clean")).Message.ShouldContain("7B/6C/5D");
        Should.Throw<FormatException>(() => CleanlinessClass.Parse("13")).Message.ShouldContain("0 to 12");
        Should.Throw<ArgumentNullException>(() => As4059Code.Parse(null!));
    }

    private static readonly CleanlinessClass[] AllClasses =
    [
        CleanlinessClass.Class000,
        CleanlinessClass.Class00,
        .. Enumerable.Range(0, 13).Select(CleanlinessClass.Of),
        CleanlinessClass.Above(12),
    ];

    [Fact]
    public void Every_part_there_is_reads_back_as_written()
    {
        var read = 0;
        foreach (var cleanlinessClass in AllClasses)
        {
            CleanlinessClass.Parse(cleanlinessClass.ToString()).ShouldBe(cleanlinessClass);
            foreach (var first in Sizes)
            {
                foreach (var last in Sizes.Where(size => size >= first))
                {
                    var code = new As4059Code([new As4059Part(cleanlinessClass, first, last)]);
                    As4059Code.Parse(code.ToString()).ShouldBe(code);
                    read++;
                }
            }
        }

        read.ShouldBe(16 * 21);
    }

    [Fact]
    public void Every_code_reads_back_as_written() =>
        Gen.Select(One(AllClasses).Array[6], Gen.Bool.Array[6], Gen.Bool.Array[5])
            .Where(t => t.Item2.Any(there => there))
            .Holds(
                (classes, there, joined) =>
                {
                    // Each size there, joined to the next with the same class where both are.
                    List<As4059Part> parts = [];
                    for (var i = 0; i < 6; i++)
                    {
                        var first = i;
                        while (there[first] && i < 5 && joined[i] && there[i + 1])
                        {
                            i++;
                        }

                        if (there[first])
                        {
                            parts.Add(new As4059Part(classes[first], (As4059Size)first, (As4059Size)i));
                        }
                    }

                    var code = new As4059Code(parts);
                    As4059Code.Parse(code.ToString()).ShouldBe(code);
                },
                iter: 5000
            );

    [Fact]
    public void No_text_makes_TryParse_throw() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789ABCDEF/->–  b"], 0, 12], OddText.Any)
            .Holds(
                text =>
                {
                    As4059Code.TryParse(text, out var code).ShouldBe(code is not null);
                    if (CleanlinessClass.TryParse(text, out var cleanlinessClass))
                    {
                        CleanlinessClass.Parse(cleanlinessClass.ToString()).ShouldBe(cleanlinessClass);
                    }
                },
                iter: 20000
            );

    [Theory]
    [InlineData("6B", "6B", TargetOutcome.Met, "", "")]
    [InlineData("7B/6C/5D", "6B-D", TargetOutcome.Exceeded, "B", "")]
    [InlineData("6B/6C/5D", "6B-D", TargetOutcome.Met, "", "")]
    [InlineData("6B/6C", "6B-D", TargetOutcome.NotDetermined, "", "D")]
    [InlineData("6B-F", "7C", TargetOutcome.Met, "", "")]
    [InlineData("7B-D", "6C", TargetOutcome.NotDetermined, "", "C")] // the 7 may be B's or D's
    [InlineData("7B-D", "6B-D", TargetOutcome.Exceeded, "", "B C D")] // wherever the 7 is, it is above 6
    [InlineData("7B-D", "6B/7C/6D", TargetOutcome.NotDetermined, "", "B D")] // the 7 may be C's
    [InlineData(">12B", "12B", TargetOutcome.Exceeded, "B", "")]
    [InlineData("000A/00B/0C", "00A-C", TargetOutcome.Exceeded, "C", "")]
    public void A_code_is_compared_with_a_target(
        string measured,
        string target,
        TargetOutcome outcome,
        string exceeded,
        string open
    )
    {
        var (code, asked) = (As4059Code.Parse(measured), As4059Code.Parse(target));

        code.Compare(asked).ShouldBe(outcome);
        string.Join(" ", code.ExceededSizes(asked)).ShouldBe(exceeded);
        string.Join(" ", code.UndeterminedSizes(asked)).ShouldBe(open);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Should.Throw<ArgumentOutOfRangeException>(() => As4059.Exact.ClassOf(As4059Size.B, -1));
        Should
            .Throw<ArgumentOutOfRangeException>(() => As4059.Exact.ClassOf(As4059Size.B, double.NaN))
            .Message.ShouldContain("countPer100Millilitres is NaN per 100 mL");
        Should.Throw<ArgumentOutOfRangeException>(() => As4059.Exact.ClassOf((As4059Size)6, 1));
        Should.Throw<ArgumentException>(() => As4059.Exact.CodeOf(new Dictionary<As4059Size, double>()));
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                As4059.Exact.UpperLimitPer100Millilitres(As4059Size.A, CleanlinessClass.Above(12))
            )
            .Message.ShouldContain("is >12; allowed: 000 to 12");
        Should
            .Throw<ArgumentException>(() => As4059Code.Parse("6B").Compare(As4059Code.Parse(">12B")))
            .Message.ShouldContain("limits nothing");
        Should.Throw<ArgumentException>(() => new As4059Code([]));
        Should.Throw<ArgumentException>(() => new As4059Part(default, As4059Size.C, As4059Size.B));
        Should.Throw<ArgumentException>(() => new As4059Part(CleanlinessClass.Above(6), As4059Size.B, As4059Size.B));
        Should.Throw<ArgumentOutOfRangeException>(() => CleanlinessClass.Of(13));
    }

    private static Gen<T> One<T>(params T[] all) => Gen.Int[0, all.Length - 1].Select(i => all[i]);
}
