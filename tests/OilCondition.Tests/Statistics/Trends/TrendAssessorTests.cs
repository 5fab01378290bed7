using CsCheck;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Statistics;

/// <summary>Stories of invented machines, and how often the assessor sees a trend where there is none.</summary>
public class TrendAssessorTests
{
    private static readonly double[] Quarters = [0, 3, 6, 9, 12, 15, 18, 21, 24, 27, 30, 33];

    /// <summary>Invented scatter of about one, without any pattern.</summary>
    private static readonly double[] Scatter = [0.3, -1.1, 0.8, 0.2, -0.6, 1.2, -0.9, 0.5, -0.2, 1.0, -1.3, 0.1];

    [Fact]
    public void A_steady_rise_is_told_by_a_straight_line()
    {
        var trend = TrendAssessment.Of(Quarters, [.. Quarters.Select((t, i) => 10 + 0.5 * t + Scatter[i])]);
        trend.Verdict.ShouldBe(TrendVerdict.Rising);
        trend.Method.ShouldBe(TrendMethod.StraightLine);
        trend.Reasons.ShouldBe([TrendReason.EnoughReadings]);
        trend.SlopeInterval.Contains(0.5).ShouldBeTrue();
        trend.Used.Count.ShouldBe(12);
    }

    [Fact]
    public void Scatter_is_called_scatter()
    {
        var trend = TrendAssessment.Of(Quarters, [.. Scatter.Select(s => 10 + s)]);
        trend.Verdict.ShouldBe(TrendVerdict.NoTrend);
        trend.SlopeInterval.Contains(0).ShouldBeTrue();
        trend.PValue.ShouldBeGreaterThan(0.05);
    }

    [Fact]
    public void A_wild_reading_is_flagged_kept_and_left_out()
    {
        double[] values = [.. Quarters.Select((t, i) => 10 + 0.5 * t + Scatter[i] + (i == 7 ? 40 : 0))];
        var trend = TrendAssessment.Of(Quarters, values);
        trend.Outliers.ShouldBe([7]);
        trend.Used.ShouldBe([0, 1, 2, 3, 4, 5, 6, 8, 9, 10, 11]);
        trend.Reasons.ShouldContain(TrendReason.OutliersLeftOut);
        trend.Changes.ShouldBeEmpty();
        trend.Verdict.ShouldBe(TrendVerdict.Rising);
        trend.Slope.ShouldBe(0.5, 0.1);
    }

    [Fact]
    public void An_oil_change_nobody_recorded_splits_the_series()
    {
        double[] values = [.. Quarters.Select((t, i) => 10 + 0.6 * (i < 6 ? t : t - 18) + 0.3 * Scatter[i])];
        var trend = TrendAssessment.Of(Quarters, values, default, new TrendOptions(worse: TrendVerdict.Rising));
        trend.Changes.Count.ShouldBe(1);
        trend.Changes[0].IsToBetter.ShouldBeTrue();
        (trend.Changes[0].LastBefore, trend.Changes[0].FirstAfter).ShouldBe((5, 6));
        trend.Changes[0].Step.ShouldBe(-10.8, 1);
        trend.Used.ShouldBe([6, 7, 8, 9, 10, 11]);
        trend.Reasons.ShouldContain(TrendReason.SinceChange);
        trend.Verdict.ShouldBe(TrendVerdict.Rising);
    }

    [Fact]
    public void An_accelerating_rise_is_a_rise_and_no_step()
    {
        var trend = TrendAssessment.Of(Quarters, [.. Quarters.Select((t, i) => 10 + 0.02 * t * t + 0.2 * Scatter[i])]);
        trend.Changes.ShouldBeEmpty();
        trend.Verdict.ShouldBe(TrendVerdict.Rising);
        trend.Method.ShouldBe(TrendMethod.StraightLine);
        trend.Reasons[0].ShouldBe(TrendReason.EnoughReadings);
    }

    [Fact]
    public void A_long_bent_rise_is_no_step_though_a_step_would_fit_better_than_a_line()
    {
        var random = new Random(77);
        double[] t = [.. Enumerable.Range(0, 200).Select(i => i / 200.0)];
        double[] y = [.. t.Select(x => 100 * x * x + 3 * DecayNoiseSource.Normal(random))];
        var step = LineStep.Find(t, y);
        step.PValue.ShouldBeLessThan(0.01);
        LineStep.IsBend(t, y, step).ShouldBeTrue();
        TrendAssessment.Of(t, y).Changes.ShouldBeEmpty();
    }

    [Theory]
    [InlineData(1.5)]
    [InlineData(3.0)]
    public void The_steep_end_of_an_exponential_rise_is_not_wild(double growth)
    {
        double[] values = [.. Quarters.Select((t, i) => 10 * Math.Exp(growth * t / 33) + Scatter[i])];
        var trend = TrendAssessment.Of(Quarters, values);
        trend.Outliers.ShouldBeEmpty();
        trend.Verdict.ShouldBe(TrendVerdict.Rising);
    }

    [Fact]
    public void Five_readings_are_judged_and_fewer_are_not()
    {
        var five = TrendAssessment.Of([0, 1, 2, 3, 4], [1, 2.2, 2.9, 4.1, 5]);
        (five.Method, five.Verdict).ShouldBe((TrendMethod.StraightLine, TrendVerdict.Rising));
        five.Reasons[0].ShouldBe(TrendReason.EnoughReadings);

        var four = TrendAssessment.Of([0, 1, 2, 3], [1, 2, 3, 4]);
        (four.Verdict, four.Method, four.PValue).ShouldBe((TrendVerdict.TooFewReadings, TrendMethod.None, 1));
        four.Reasons.ShouldBe([TrendReason.TooFewReadings]);
        TrendAssessment.Of([], []).Verdict.ShouldBe(TrendVerdict.TooFewReadings);
        TrendAssessment.Of([2, 2, 2, 2, 2], [1, 2, 3, 4, 5]).Reasons.ShouldBe([TrendReason.SameTime]);
    }

    [Fact]
    public void Readings_below_a_limit_are_judged_by_ranks()
    {
        double[] values = [5, 5, 5, 5, 6, 7, 6, 9, 10, 12, 11, 14];
        var censoring = new Censoring[12];
        censoring.AsSpan(0, 4).Fill(Censoring.Below);
        var trend = TrendAssessment.Of(Quarters, values, censoring);
        trend.Method.ShouldBe(TrendMethod.TheilSen);
        trend.Reasons.ShouldBe([TrendReason.CensoredReadings]);
        trend.Verdict.ShouldBe(TrendVerdict.Rising);
        trend.Slope.ShouldBe(0.33, 0.1);

        var nothing = TrendAssessment.Of(Quarters, values, [.. Enumerable.Repeat(Censoring.Below, 12)]);
        nothing.Verdict.ShouldBe(TrendVerdict.NoTrend);
        nothing.Reasons.ShouldContain(TrendReason.NothingVaries);
    }

    [Fact]
    public void Metals_on_the_logarithmic_scale_double_at_a_steady_rate_and_may_start_with_nothing_found()
    {
        var options = new TrendOptions(NaturalScale.Logarithmic);
        double[] values = [.. Quarters.Select((t, i) => 2 * Math.Pow(2, t / 12) * Math.Exp(0.1 * Scatter[i]))];
        var trend = TrendAssessment.Of(Quarters, values, default, options);
        trend.Slope.ShouldBe(Math.Log(2) / 12, 0.01);

        values[0] = 0;
        var withZero = TrendAssessment.Of(Quarters, values, default, options);
        withZero.Verdict.ShouldBe(TrendVerdict.Rising);
        withZero.Reasons.ShouldBe([TrendReason.CensoredReadings, TrendReason.ZerosTakenAsBelow]);
        TrendAssessment.Of(Quarters, new double[12], default, options).Verdict.ShouldBe(TrendVerdict.NoTrend);
        Should.Throw<ArgumentOutOfRangeException>(() => TrendAssessment.Of([1], [-1], default, options));
        Should.Throw<ArgumentOutOfRangeException>(() => TrendAssessment.Of([1], [0], [Censoring.Above], options));
    }

    [Fact]
    public void Readings_that_follow_one_another_count_as_fewer()
    {
        double[] t = [.. Enumerable.Range(0, 40).Select(i => (double)i)];
        var trend = TrendAssessment.Of(t, [.. t.Select(x => 10 + 0.02 * x + Math.Sin(x / 3))]);
        trend.Reasons.ShouldContain(TrendReason.CorrelatedResiduals);
        trend.Correlation.ShouldBeGreaterThan(0.5);
        trend.SlopeInterval.CoverageInDoubt.ShouldBeTrue();
    }

    [Fact]
    public void A_trend_that_matters_to_nobody_is_none()
    {
        double[] values = [.. Quarters.Select((t, i) => 10 + 0.05 * t + 0.05 * Scatter[i])];
        TrendAssessment.Of(Quarters, values).Verdict.ShouldBe(TrendVerdict.Rising);
        var small = TrendAssessment.Of(Quarters, values, default, new TrendOptions(smallestChange: 3));
        small.Verdict.ShouldBe(TrendVerdict.NoTrend);
        small.Reasons.ShouldContain(TrendReason.BelowSmallestChange);
    }

    [Fact]
    public void Perfect_and_equal_readings_break_nothing()
    {
        var perfect = TrendAssessment.Of(Quarters, [.. Quarters.Select(t => 0.1 * t)]);
        (perfect.Verdict, perfect.Outliers.Count, perfect.Changes.Count).ShouldBe((TrendVerdict.Rising, 0, 0));
        var level = TrendAssessment.Of(Quarters, [.. Quarters.Select(_ => 0.1)]);
        (level.Verdict, level.PValue, level.Slope).ShouldBe((TrendVerdict.NoTrend, 1, 0));
        level.Reasons.ShouldBe([TrendReason.NothingVaries]);
    }

    [Fact]
    public void Order_of_rows_units_and_shifts_change_nothing_and_mirrored_readings_flip_the_sign() =>
        Gen.Int[0, 10_000]
            .Select(Gen.Int[5, 30], Gen.Double[-1, 1])
            .Holds(
                (seed, n, slope) =>
                {
                    var random = new Random(seed);
                    double[] t = [.. Enumerable.Range(0, n).Select(i => i + 0.8 * random.NextDouble())];
                    double[] y = [.. t.Select(x => slope * x + DecayNoiseSource.Normal(random))];
                    var plain = TrendAssessment.Of(t, y);
                    var turned = TrendAssessment.Of([.. t.Reverse()], [.. y.Reverse()]);
                    (turned.Verdict, turned.Method).ShouldBe((plain.Verdict, plain.Method));
                    turned.PValue.ShouldBe(plain.PValue, 1e-9);
                    turned.Outliers.Select(i => n - 1 - i).ShouldBe(plain.Outliers);

                    var scaled = TrendAssessment.Of([.. t.Select(x => 24 * x + 100)], [.. y.Select(v => 5 * v - 30)]);
                    (scaled.Verdict, scaled.Method).ShouldBe((plain.Verdict, plain.Method));
                    scaled.Slope.ShouldBe(plain.Slope * 5 / 24, 1e-9);
                    scaled.PValue.ShouldBe(plain.PValue, 1e-7);

                    var mirrored = TrendAssessment.Of(t, [.. y.Select(v => -v)]);
                    mirrored.Slope.ShouldBe(-plain.Slope, 1e-9);
                    mirrored.PValue.ShouldBe(plain.PValue, 1e-7);
                    mirrored.SlopeInterval.Lower!.Value.ShouldBe(-plain.SlopeInterval.Upper!.Value, 1e-7);
                    mirrored.Used.ShouldBe(plain.Used);
                },
                iter: 200
            );

    [Theory]
    [InlineData(6, 0.055)]
    [InlineData(12, 0.07)]
    [InlineData(24, 0.075)]
    public void Pure_scatter_is_seldom_called_a_trend(int count, double most)
    {
        var random = new Random(20260501);
        const int Runs = 1500;
        var alarms = 0;
        var changes = 0;
        double[] times = [.. Enumerable.Range(0, count).Select(i => (double)i)];
        for (var run = 0; run < Runs; run++)
        {
            var found = TrendAssessment.Of(times, [.. times.Select(_ => DecayNoiseSource.Normal(random))]);
            alarms += found.Verdict is TrendVerdict.Rising or TrendVerdict.Falling ? 1 : 0;
            changes += found.Changes.Count > 0 ? 1 : 0;
        }

        // Nominal 5 % and 1 %; binomial standard errors 0.6 and 0.3 points. The table in docs/statistics-trends.md has 2 to 6.3 %.
        (alarms / (double)Runs).ShouldBeLessThan(most);
        (changes / (double)Runs).ShouldBeLessThan(0.02);
    }

    /// <summary>Another unit is no other course: nothing in it is an absolute size.</summary>
    [Theory]
    [InlineData(1e-9)]
    [InlineData(1e-5)]
    [InlineData(1e6)]
    public void A_trend_in_another_unit_is_the_same_trend(double scale)
    {
        var times = Enumerable.Range(0, 20).Select(i => (double)i).ToArray();
        double[] Scaled(double by) => [.. times.Select((time, i) => by * (time + Math.Sqrt(2) * (i % 3 - 1)))];
        var (one, other) = (TrendAssessment.Of(times, Scaled(1)), TrendAssessment.Of(times, Scaled(scale)));

        one.Verdict.ShouldBe(TrendVerdict.Rising);
        other.Verdict.ShouldBe(one.Verdict);
        (other.Slope / scale).ShouldBe(one.Slope, 1e-6);
        other.PValue.ShouldBe(one.PValue, 1e-4 * one.PValue);
    }
}
