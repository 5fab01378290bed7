using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>What a trend rests on once steps, wild readings and jumps were looked at: never less than a plant must see.</summary>
public class TrendScreenTests
{
    /// <summary>Invented scatter of about one, without any pattern.</summary>
    private static readonly double[] Scatter =
    [
        0.3,
        -1.1,
        0.8,
        0.2,
        -0.6,
        1.2,
        -0.9,
        0.5,
        -0.2,
        1.0,
        -1.3,
        0.1,
        0.7,
        -0.4,
        -0.8,
        0.9,
        0.4,
        -1.0,
        0.6,
        -0.3,
    ];

    private static TrendAssessment Of(
        Func<int, double> level,
        int count,
        TrendVerdict? worse,
        double readingError = 0
    ) =>
        TrendAssessment.Of(
            [.. Enumerable.Range(0, count).Select(i => 30.0 * i)],
            [.. Enumerable.Range(0, count).Select(i => level(i) + Scatter[i])],
            default,
            new TrendOptions(worse: worse, readingError: readingError)
        );

    private static IEnumerable<int> From(int first, int count) => Enumerable.Range(first, count - first);

    [Theory]
    [InlineData(TrendVerdict.Rising, 15)]
    [InlineData(TrendVerdict.Falling, -15)]
    public void A_step_to_the_worse_is_recorded_and_leaves_nothing_out(TrendVerdict worse, double step)
    {
        var trend = Of(i => 50 + (i >= 8 ? step : 0), 16, worse);

        var change = trend.Changes.ShouldHaveSingleItem();
        (change.LastBefore, change.FirstAfter, change.IsToBetter).ShouldBe((7, 8, false));
        change.Step.ShouldBe(step, 2);
        change.PValue.ShouldBeLessThan(1e-5);
        trend.Used.ShouldBe(From(0, 16));
        trend.Outliers.ShouldBeEmpty();
        trend.Reasons.ShouldContain(TrendReason.SuddenlyWorse);
        trend.Reasons.ShouldNotContain(TrendReason.SinceChange);
    }

    [Theory]
    [InlineData(TrendVerdict.Rising, -15)]
    [InlineData(TrendVerdict.Falling, 15)]
    public void A_step_to_the_better_starts_the_series_anew(TrendVerdict worse, double step)
    {
        var trend = Of(i => 50 + (i >= 8 ? step : 0), 16, worse);

        trend.Changes.ShouldHaveSingleItem().IsToBetter.ShouldBeTrue();
        trend.Used.ShouldBe(From(8, 16));
        trend.Reasons.ShouldContain(TrendReason.SinceChange);
        trend.Reasons.ShouldNotContain(TrendReason.SuddenlyWorse);
    }

    [Theory]
    [InlineData(15)]
    [InlineData(-15)]
    public void Where_no_side_is_the_better_one_no_step_hides_anything(double step)
    {
        var trend = Of(i => 50 + (i >= 8 ? step : 0), 16, worse: null);

        trend.Changes.ShouldHaveSingleItem().IsToBetter.ShouldBeFalse();
        trend.Used.ShouldBe(From(0, 16));
    }

    /// <summary>30 more, then 10 back: the machine is still worse than it was.</summary>
    [Fact]
    public void What_comes_part_of_the_way_back_is_no_new_beginning()
    {
        var trend = Of(
            i =>
                i < 7 ? 50
                : i < 14 ? 80
                : 70,
            20,
            TrendVerdict.Rising
        );

        trend.Changes.ShouldContain(change => !change.IsToBetter && change.FirstAfter == 7);
        trend.Used.ShouldBe(From(0, 20));
    }

    /// <summary>What came and went is no step on a line: seldom readings are wild, many are left in, and nothing is called a trend.</summary>
    [Theory]
    [InlineData(12, 3, new[] { 12, 13, 14 })]
    [InlineData(8, 8, new int[0])]
    public void What_comes_all_the_way_back_is_no_change_any_more(int before, int during, int[] wild)
    {
        var trend = Of(i => i < before || i >= before + during ? 50 : 80, before + during + 3, TrendVerdict.Rising);

        trend.Changes.ShouldBeEmpty();
        trend.Outliers.ShouldBe(wild);
        trend.Verdict.ShouldBe(TrendVerdict.NoTrend);
    }

    [Theory]
    [InlineData(40, true)]
    [InlineData(-40, false)]
    public void The_latest_reading_stays_where_it_is_wild_on_the_worse_side(double off, bool stays)
    {
        var trend = Of(i => 50 + (i == 13 ? off : 0), 14, TrendVerdict.Rising);

        trend.LatestIsWild.ShouldBe(stays);
        trend.Outliers.ShouldBe(stays ? [] : [13]);
        trend.Used.Contains(13).ShouldBe(stays);
    }

    [Theory]
    [InlineData(40)]
    [InlineData(-40)]
    public void With_no_better_side_the_latest_stays_on_both(double off)
    {
        var trend = Of(i => 50 + (i == 13 ? off : 0), 14, worse: null);

        trend.LatestIsWild.ShouldBeTrue();
        trend.Used.ShouldBe(From(0, 14));
        trend.Changes.ShouldHaveSingleItem().FirstAfter.ShouldBe(13);
    }

    [Theory]
    [InlineData(40)]
    [InlineData(-40)]
    public void A_wild_reading_in_the_middle_is_set_aside_on_both_sides(double off)
    {
        var trend = Of(i => 50 + (i == 6 ? off : 0), 14, TrendVerdict.Rising);

        trend.Outliers.ShouldBe([6]);
        trend.LatestIsWild.ShouldBeFalse();
        trend.Changes.ShouldBeEmpty();
        trend.Used.Count.ShouldBe(13);
    }

    /// <summary>One in six of 14 readings is two.</summary>
    [Theory]
    [InlineData(4, 4, false)]
    [InlineData(4, 9, true)]
    public void A_search_that_ends_at_its_most_says_so(int first, int second, bool isMost)
    {
        var trend = Of(i => 50 + (i == first || i == second ? 40 : 0), 14, TrendVerdict.Rising);

        trend.Outliers.Count.ShouldBe(isMost ? 2 : 1);
        trend.Reasons.Contains(TrendReason.MoreOutliersPossible).ShouldBe(isMost);
        trend
            .ToString()
            .EndsWith(", as many outliers as are looked for: there may be more", StringComparison.Ordinal)
            .ShouldBe(isMost);
    }

    [Theory]
    [InlineData(12, 40, 1, true)] // the last one
    [InlineData(12, 40, 2, true)] // the last two
    [InlineData(12, -40, 2, false)] // on the better side
    [InlineData(5, 40, 1, true)] // five before it are enough
    [InlineData(4, 40, 1, false)] // four are not
    [InlineData(12, 2, 1, false)] // within the scatter
    public void A_jump_of_the_last_readings_is_recorded(int before, double off, int late, bool isFound)
    {
        var trend = Of(i => 50 + (i >= before ? off : 0), before + late, TrendVerdict.Rising);

        trend.Changes.Any(change => !change.IsToBetter).ShouldBe(isFound);
        if (!isFound)
        {
            return;
        }

        var jump = trend.Changes.ShouldHaveSingleItem();
        (jump.LastBefore, jump.FirstAfter).ShouldBe((before - 1, before));
        jump.Step.ShouldBe(off, 6);
        jump.PValue.ShouldBeLessThan(0.001);
        trend.Used.ShouldBe(From(0, before + late));
        trend.Reasons.ShouldContain(TrendReason.SuddenlyWorse);
    }

    [Fact]
    public void Of_two_the_one_that_jumped_speaks_alone_and_one_that_came_back_says_nothing()
    {
        Of(i => 50 + (i == 13 ? 40 : 0), 14, TrendVerdict.Rising)
            .Changes.ShouldHaveSingleItem()
            .FirstAfter.ShouldBe(13);

        var back = Of(i => 50 + (i == 12 ? 40 : 0), 14, TrendVerdict.Rising);
        back.Changes.ShouldBeEmpty();
        back.Outliers.ShouldBe([12]);
    }

    /// <summary>The chance by its definition: Student's of the distance from a line through the twelve before, over its standard error of prediction; times seven, since seven places are tried.</summary>
    [Fact]
    public void The_chance_of_a_jump_is_that_of_a_new_reading()
    {
        double[] times = [.. Enumerable.Range(0, 13).Select(i => 30.0 * i)];
        double[] values = [.. Enumerable.Range(0, 13).Select(i => 50 + Scatter[i] + (i == 12 ? 8 : 0))];
        var jump = TrendAssessment
            .Of(times, values, default, new TrendOptions(worse: TrendVerdict.Rising))
            .Changes.ShouldHaveSingleItem();

        var (slope, level) = (Slope(times[..12], values[..12]), values[..12].Average());
        var middle = times[..12].Average();
        var squares = times[..12].Sum(t => (t - middle) * (t - middle));
        var left = times[..12].Zip(values, (t, y) => Math.Pow(y - level - slope * (t - middle), 2)).Sum() / 10;
        var off = values[12] - level - slope * (times[12] - middle);
        var error = Math.Sqrt(left * (1 + 1.0 / 12 + Math.Pow(times[12] - middle, 2) / squares));
        jump.Step.ShouldBe(off, 1e-9);
        jump.PValue.ShouldBe(7 * MathNet.Numerics.Distributions.StudentT.CDF(0, 1, 10, -off / error), 1e-9);
    }

    private static double Slope(double[] times, double[] values)
    {
        var (t, y) = (times.Average(), values.Average());
        return times.Zip(values, (a, b) => (a - t) * (b - y)).Sum() / times.Sum(a => (a - t) * (a - t));
    }

    /// <summary>Twelve times 0.12, then 0.13: the last digit, not the oil. 0.21 is something else.</summary>
    [Theory]
    [InlineData(0.13, 1, false)]
    [InlineData(0.13, 2, false)]
    [InlineData(0.13, 3, false)]
    [InlineData(0.13, 6, false)]
    [InlineData(0.21, 1, true)]
    [InlineData(0.21, 3, true)]
    public void Equal_rounded_readings_make_no_jump_of_the_last_digit(double last, int late, bool isJump) =>
        TrendAssessment
            .Of(
                [.. Enumerable.Range(0, 12 + late).Select(i => 30.0 * i)],
                [.. Enumerable.Repeat(0.12, 12), .. Enumerable.Repeat(last, late)],
                default,
                new TrendOptions(worse: TrendVerdict.Rising)
            )
            .Changes.Any()
            .ShouldBe(isJump);

    /// <summary>A laboratory that repeats itself to 0.01 by luck reproduces no better than its method.</summary>
    [Theory]
    [InlineData(0, true)]
    [InlineData(0.05, false)]
    public void The_error_of_the_test_method_is_a_floor(double readingError, bool isJump)
    {
        double[] values = [.. Enumerable.Range(0, 12).Select(i => 0.20 + 0.01 * (i % 2)), 0.28];

        TrendAssessment
            .Of(
                [.. Enumerable.Range(0, 13).Select(i => 30.0 * i)],
                values,
                default,
                new TrendOptions(worse: TrendVerdict.Rising, readingError: readingError)
            )
            .Changes.Any()
            .ShouldBe(isJump);
    }

    [Fact]
    public void Steps_and_jumps_are_not_looked_for_where_nobody_asks()
    {
        double[] values = [.. Enumerable.Range(0, 16).Select(i => 50 + Scatter[i] + (i >= 8 ? 30 : 0))];
        TrendAssessment
            .Of(
                [.. Enumerable.Range(0, 16).Select(i => 30.0 * i)],
                values,
                default,
                new TrendOptions(worse: TrendVerdict.Rising, changeSignificance: null)
            )
            .Changes.ShouldBeEmpty();
        Should.Throw<ArgumentOutOfRangeException>(() => new TrendOptions(worse: TrendVerdict.NoTrend));
        Should.Throw<ArgumentOutOfRangeException>(() => new TrendOptions(cycle: 0));
        Should.Throw<ArgumentOutOfRangeException>(() => new TrendOptions(readingError: -1));
    }
}
