using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Tests.Properties;
using UnitsNet;

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

        code.TryWorstExcess(new CleanlinessCode(18, 16, 13), out var above).ShouldBeTrue();
        code.TryWorstExcess(new CleanlinessCode(19, 18, 15), out var below).ShouldBeTrue();
        (above, below).ShouldBe((1, -1));
    }

    [Fact]
    public void More_particles_never_give_a_lower_number() =>
        Gen.Select(Gen.Double[0, 3e6], Gen.Double[0, 3e6])
            .Holds(
                (a, b) =>
                    Iso4406
                        .ScaleNumber(Math.Max(a, b))
                        .ShouldBeGreaterThanOrEqualTo(Iso4406.ScaleNumber(Math.Min(a, b)))
            );

    [Theory]
    [InlineData("18")]
    [InlineData("18/16/13/9")]
    [InlineData("-/-/-")]
    [InlineData("-/-")]
    [InlineData("18/*/13")]
    [InlineData("29/16/13")]
    [InlineData(">27/16/13")]
    [InlineData("+18/16/13")]
    [InlineData("018/16/13")]
    [InlineData("≥/16/13")]
    [InlineData("18//13")]
    [InlineData("13/16/18")]
    [InlineData("*/-/")]
    [InlineData("18/16/x")]
    [InlineData("")]
    [InlineData(null)]
    public void Anything_else_is_not_a_code(string? text) => CleanlinessCode.TryParse(text, out _).ShouldBeFalse();

    [Theory]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void An_impossible_count_is_refused(double count) =>
        Should.Throw<ArgumentOutOfRangeException>(() => Iso4406.ScaleNumber(count)).Message.ShouldContain("per mL");

    [Theory]
    [InlineData("18/16/13", "18/16/13")]
    [InlineData(" 18 / 16 / 13 ", "18/16/13")]
    [InlineData("-/16/13", "-/16/13")]
    [InlineData("–/16/13", "-/16/13")]
    [InlineData("16/13", "-/16/13")]
    [InlineData("*/19/14", "*/19/14")]
    [InlineData("-/19/14", "-/19/14")]
    [InlineData("14/12/≥7", "14/12/≥7")]
    [InlineData("14/12/>=7", "14/12/≥7")]
    [InlineData("14/12/>= 7", "14/12/≥7")]
    [InlineData(">28/20/15", ">28/20/15")]
    [InlineData("15/12/09", "15/12/9")]
    public void Laboratories_write_a_code_in_many_ways(string text, string written) =>
        CleanlinessCode.Parse(text).ToString().ShouldBe(written);

    [Fact]
    public void Two_numbers_are_5_and_15_micrometres_and_never_4_and_6()
    {
        var code = CleanlinessCode.Parse("16/13");

        code.At4.ShouldBe(ScaleNumber.NotCounted);
        code.At6.ShouldBe(ScaleNumber.Of(16));
        code.At14.ShouldBe(ScaleNumber.Of(13));
        code.ShouldBe(CleanlinessCode.FromMicroscope(640, 80)); // upper limits of 16 and 13, table 1 by eye
        Should.Throw<InvalidOperationException>(() => code.At4.Number);
    }

    [Fact]
    public void What_is_no_code_says_how_one_looks() =>
        Should.Throw<FormatException>(() => CleanlinessCode.Parse("clean")).Message.ShouldContain("18/16/13");

    private static readonly Gen<ScaleNumber> AnyNumber = Gen.OneOf(
        Gen.Int[0, 29].Select(ScaleNumber.Of),
        Gen.Int[0, 29].Select(ScaleNumber.OfFewCounted),
        Gen.Const(ScaleNumber.TooNumerous),
        Gen.Const(ScaleNumber.NotCounted)
    );

    [Fact]
    public void Every_valid_code_reads_back_as_written()
    {
        var valid = 0;
        Gen.Select(AnyNumber, AnyNumber, AnyNumber)
            .Holds(
                (at4, at6, at14) =>
                {
                    CleanlinessCode code;
                    try
                    {
                        code = new CleanlinessCode(at4, at6, at14);
                    }
                    catch (ArgumentException)
                    {
                        CleanlinessCode.TryParse($"{at4}/{at6}/{at14}", out _).ShouldBeFalse();
                        return;
                    }

                    Interlocked.Increment(ref valid);
                    CleanlinessCode.Parse(code.ToString()).ShouldBe(code);
                    CleanlinessCode.Parse(code.ToString("A")).ShouldBe(code);
                },
                iter: 5000
            );
        valid.ShouldBeGreaterThan(1000);
    }

    /// <summary>61 numbers a size, with marks, too numerous and not counted: every code that does not rise, in both spellings.</summary>
    [Fact]
    public void Every_code_there_is_reads_back_as_written()
    {
        ScaleNumber[] all =
        [
            .. Enumerable.Range(0, 30).Select(ScaleNumber.Of),
            .. Enumerable.Range(0, 29).Select(ScaleNumber.OfFewCounted),
            ScaleNumber.TooNumerous,
            ScaleNumber.NotCounted,
        ];
        static int Place(ScaleNumber number) => number.HasNumber ? number.Number : 30;
        static bool MayFollow(ScaleNumber smaller, ScaleNumber larger) =>
            smaller == ScaleNumber.NotCounted || larger == ScaleNumber.NotCounted || Place(larger) <= Place(smaller);
        var codes =
            from at4 in all
            from at6 in all
            where MayFollow(at4, at6)
            from at14 in all
            where MayFollow(at6, at14) && MayFollow(at4, at14)
            where (at4, at6, at14) != (ScaleNumber.NotCounted, ScaleNumber.NotCounted, ScaleNumber.NotCounted)
            select new CleanlinessCode(at4, at6, at14);
        var read = 0;
        foreach (var code in codes)
        {
            if (CleanlinessCode.Parse(code.ToString()) != code || CleanlinessCode.Parse(code.ToString("A")) != code)
            {
                Assert.Fail(code.ToString());
            }

            read++;
        }

        read.ShouldBeGreaterThan(40_000);
    }

    [Fact]
    public void Every_plain_code_of_the_table_reads_back_as_written()
    {
        for (var at4 = 0; at4 <= 29; at4++)
        {
            for (var at6 = 0; at6 <= at4; at6++)
            {
                for (var at14 = 0; at14 <= at6; at14++)
                {
                    var code = new CleanlinessCode(at4, at6, at14);
                    (CleanlinessCode.Parse(code.ToString()) == code).ShouldBeTrue();
                }
            }
        }
    }

    [Fact]
    public void No_text_makes_TryParse_throw() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789/-*≥>= –"], 0, 12], OddText.Any)
            .Holds(
                text =>
                {
                    var isCode = CleanlinessCode.TryParse(text, out var code);
                    (code is not null).ShouldBe(isCode);
                },
                iter: 20000
            );

    [Theory]
    [InlineData(19, "≥8")]
    [InlineData(20, "8")]
    [InlineData(0, "≥0")]
    [InlineData(13, "≥7")] // 1.3 per mL: on the inclusive limit of 7
    public void Fewer_than_twenty_counted_are_marked(int counted, string written)
    {
        new ParticleCount(counted, Volume.FromMilliliters(10)).ScaleNumber.ToString().ShouldBe(written);
        new ParticleCount(counted, Volume.FromLiters(0.01)).ScaleNumber.ToString().ShouldBe(written);
        new ParticleCount(counted, Volume.FromMilliliters(1000), 100).ScaleNumber.ToString().ShouldBe(written);
    }

    [Fact]
    public void A_count_on_a_limit_stays_on_it_whatever_the_unit_of_its_volume()
    {
        var seen = 0;
        foreach (var millilitres in new[] { 1, 2, 5, 7, 10, 15, 20, 25, 30, 50, 60, 70, 90, 100, 110 })
        {
            Volume[] volumes =
            [
                Volume.FromMilliliters(millilitres),
                Volume.FromLiters(millilitres / 1000.0),
                Volume.FromCubicMeters(millilitres / 1e6),
                Volume.FromCubicCentimeters(millilitres),
                Volume.FromDeciliters(millilitres / 100.0),
                Volume.FromMicroliters(millilitres * 1000.0),
                Volume.FromUsGallons(millilitres / 3785.411784),
            ];
            for (var number = 0; number <= 20; number++)
            {
                // Limits are whole per 100 mL, so that this count is on the limit where it is whole.
                var limitPer100 = (long)Math.Round(100 * Iso4406.UpperLimitPerMillilitre(number));
                foreach (var dilution in new[] { 1, 3, 10, 30 })
                {
                    if (limitPer100 * millilitres % (100 * dilution) != 0)
                    {
                        continue;
                    }

                    foreach (var volume in volumes)
                    {
                        var count = new ParticleCount(limitPer100 * millilitres / (100 * dilution), volume, dilution);
                        Iso4406.ScaleNumber(count.PerMillilitre).ShouldBe(number, $"{count}");
                        count.Per100Millilitres.ShouldBe(limitPer100);
                        seen++;
                    }
                }
            }
        }

        seen.ShouldBeGreaterThan(1000);
    }

    [Fact]
    public void The_mark_stands_at_its_own_size_only()
    {
        var volume = Volume.FromMilliliters(10);

        CleanlinessCode
            .FromCounts(new ParticleCount(1000, volume), new ParticleCount(300, volume), new ParticleCount(7, volume))
            .ToString()
            .ShouldBe("14/12/≥7"); // the example of ISO 4406, secondary reproduction
        CleanlinessCode
            .FromMicroscope(new ParticleCount(300, volume), new ParticleCount(7, volume))
            .ToString()
            .ShouldBe("-/12/≥7");
    }

    [Fact]
    public void Above_the_table_is_open_upwards_without_a_mark() =>
        new ParticleCount(19, Volume.FromMilliliters(1), 1e6).ScaleNumber.ToString().ShouldBe(">28");

    [Theory]
    [InlineData("18/16/13", "18/16/13", TargetOutcome.Met, 0)]
    [InlineData("19/16/12", "18/16/13", TargetOutcome.Exceeded, 1)]
    [InlineData("14/12/≥7", "14/12/9", TargetOutcome.MetOnFewCounted, 0)]
    [InlineData("14/12/≥10", "14/12/9", TargetOutcome.Exceeded, 1)]
    [InlineData("22/15/12", "-/16/13", TargetOutcome.Met, -1)]
    [InlineData(">28/15/12", "20/16/13", TargetOutcome.Exceeded, 9)]
    [InlineData("-/15/13", "16/13", TargetOutcome.Met, 0)]
    public void A_target_is_held_size_by_size(string measured, string target, TargetOutcome outcome, int worst)
    {
        var (code, asked) = (CleanlinessCode.Parse(measured), CleanlinessCode.Parse(target));

        code.Compare(asked).ShouldBe(outcome);
        code.UnjudgedSizes(asked).ShouldBeEmpty();
        code.TryWorstExcess(asked, out var excess).ShouldBeTrue();
        excess.ShouldBe(worst);
    }

    [Theory]
    [InlineData("*/16/13", "18/16/13", TargetOutcome.Exceeded, "At4")]
    [InlineData("*/*/13", "18/16/14", TargetOutcome.Exceeded, "At4 At6")]
    [InlineData("-/15/13", "18/16/13", TargetOutcome.NotDetermined, "At4")]
    [InlineData("-/18/13", "18/16/13", TargetOutcome.Exceeded, "At4")]
    [InlineData("18/-/13", "18/16/13", TargetOutcome.NotDetermined, "At6")]
    [InlineData("18/16/-", "18/16/13", TargetOutcome.NotDetermined, "At14")]
    [InlineData("18/16/13", "*/16/13", TargetOutcome.NotDetermined, "At4")]
    public void A_worst_excess_is_not_given_where_a_required_size_has_no_number(
        string measured,
        string target,
        TargetOutcome outcome,
        string unjudged
    )
    {
        var (code, asked) = (CleanlinessCode.Parse(measured), CleanlinessCode.Parse(target));

        code.Compare(asked).ShouldBe(outcome);
        string.Join(" ", code.UnjudgedSizes(asked)).ShouldBe(unjudged);
        code.TryWorstExcess(asked, out _).ShouldBeFalse();
    }

    [Fact]
    public void The_sizes_that_have_an_excess_keep_it()
    {
        var (code, target) = (CleanlinessCode.Parse("*/18/13"), CleanlinessCode.Parse("18/16/13"));

        code.TryExcess(target, CodeSize.At6, out var excess).ShouldBeTrue();
        excess.ShouldBe(2);
        code.TryExcess(target, CodeSize.At4, out _).ShouldBeFalse();
    }

    [Fact]
    public void A_code_and_its_numbers_have_an_ascii_form()
    {
        CleanlinessCode.Parse("14/12/≥7").ToString("A").ShouldBe("14/12/>=7");
        $"{CleanlinessCode.Parse("14/12/>=7"):G}".ShouldBe("14/12/≥7");
        ScaleNumber.Parse(" ≥7 ").ToString("A").ShouldBe(">=7");
        ScaleNumber.Parse("16").IsFewCounted.ShouldBeFalse();
        Should.Throw<FormatException>(() => ScaleNumber.Parse("30")).Message.ShouldContain("0 to 28");
        Should
            .Throw<FormatException>(() => new CleanlinessCode(18, 16, 13).ToString("X"))
            .Message.ShouldContain("G, A");
        ScaleNumber.TryParse(null, out var none).ShouldBeFalse();
        none.ShouldBe(ScaleNumber.NotCounted);
    }

#if !NETSTANDARD_BUILD
    [Fact]
    public void Codes_and_numbers_are_parsable_texts()
    {
        Read<CleanlinessCode>("14/12/>=7").ToString().ShouldBe("14/12/≥7");
        Read<ScaleNumber>("≥7").ToString().ShouldBe("≥7");
        Read<As4059Code>("7b/6c").ToString().ShouldBe("7B/6C");
        Read<CleanlinessClass>("> 12").ToString().ShouldBe(">12");
    }

    private static T Read<T>(string text)
        where T : IParsable<T>
    {
        var read = T.Parse(text, null);
        T.TryParse(text, null, out var same).ShouldBeTrue();
        same.ShouldBe(read);
        return read;
    }
#endif

    [Fact]
    public void A_typical_count_belongs_to_its_number()
    {
        for (var number = 0; number <= Iso4406.HighestScaleNumber; number++)
        {
            Iso4406.ScaleNumber(Iso4406.TypicalCountPerMillilitre(number)).ShouldBe(number);
        }

        Iso4406.TypicalCountPerMillilitre(13).ShouldBe(56.568, 0.001); // √(40·80) by hand
        Iso4406.LowerLimitPerMillilitre(29).ShouldBe(2_500_000);
    }

    [Fact]
    public void An_impossible_raw_count_is_refused()
    {
        Should.Throw<ArgumentOutOfRangeException>(() => new ParticleCount(-1, Volume.FromMilliliters(10)));
        Should.Throw<ArgumentOutOfRangeException>(() => new ParticleCount(1, Volume.Zero)).Message.ShouldContain("mL");
        Should.Throw<ArgumentOutOfRangeException>(() => new ParticleCount(1, Volume.FromMilliliters(10), double.NaN));
    }
}
