using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>The cycle of the year in readings: found by an F test, and only from two cycles on.</summary>
public class SeasonalCycleTests
{
    private const double Year = 365.25;

    private static double[] Monthly(int count) => [.. Enumerable.Range(0, count).Select(i => Year * i / 12)];

    private static double[] Readings(double[] times, double amplitude, double peak, double slope, int seed)
    {
        var random = new Random(seed);
        return
        [
            .. times.Select(t =>
                50
                + slope * t / Year
                + amplitude * Math.Cos(2 * Math.PI * (t - peak) / Year)
                + DecayNoiseSource.Normal(random)
            ),
        ];
    }

    /// <summary>A year low and a year high leaves a saw's tooth beside a line, which an F test alone takes for a cycle.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void A_step_in_the_middle_is_a_step_and_no_cycle(int sign)
    {
        var times = Monthly(24);
        double[] values = [.. times.Select((_, i) => 0.2 + sign * (i < 12 ? -0.1 : 0.1) + 0.004 * ((i * 7 % 5) - 2))];

        SeasonalCycle.Find(times, values, Year).ShouldBeNull();
        var trend = TrendAssessment.Of(
            times,
            values,
            options: new TrendOptions(worse: TrendVerdict.Rising, cycle: Year)
        );
        trend.Changes.Single().FirstAfter.ShouldBe(12);
        trend.Used.Count.ShouldBe(sign > 0 ? 24 : 12);
    }

    /// <summary>Found exactly where MathNet.Numerics' Fisher-Snedecor distribution gives the pair of columns less than 1 %.</summary>
    [Fact]
    public void It_is_found_where_an_f_test_says_so()
    {
        var found = 0;
        for (var run = 0; run < 120; run++)
        {
            var times = Monthly(24 + run % 13);
            var values = Readings(times, amplitude: run % 10 * 0.15, peak: 30 * run, slope: run % 3, seed: run);
            double Left(bool withCycle)
            {
                var design = Matrix<double>.Build.Dense(
                    times.Length,
                    withCycle ? 4 : 2,
                    (i, j) =>
                        j switch
                        {
                            0 => 1,
                            1 => times[i] / Year,
                            2 => Math.Sin(2 * Math.PI * times[i] / Year),
                            _ => Math.Cos(2 * Math.PI * times[i] / Year),
                        }
                );
                var y = Vector<double>.Build.DenseOfArray(values);
                return (y - design * design.QR().Solve(y)).PointwisePower(2).Sum();
            }

            var freedom = times.Length - 4;
            var f = (Left(false) - Left(true)) / 2 / (Left(true) / freedom);
            var chance = 1 - FisherSnedecor.CDF(2, freedom, f);

            // One step beside the line, at any place with three readings on either side, explains as much: then it is no cycle.
            double LeftByStep(int first)
            {
                var design = Matrix<double>.Build.Dense(
                    times.Length,
                    3,
                    (i, j) =>
                        j == 0 ? 1
                        : j == 1 ? times[i] / Year
                        : i >= first ? 1
                        : 0
                );
                var y = Vector<double>.Build.DenseOfArray(values);
                return (y - design * design.QR().Solve(y)).PointwisePower(2).Sum();
            }

            var isStep = Enumerable.Range(3, times.Length - 5).Min(LeftByStep) <= Left(true);
            (SeasonalCycle.Find(times, values, Year) is not null).ShouldBe(chance < 0.01 && !isStep);
            found += chance < 0.01 && !isStep ? 1 : 0;
        }

        found.ShouldBeInRange(20, 100);
    }

    [Theory]
    [InlineData(200)]
    [InlineData(20)]
    public void Size_and_peak_are_those_put_in(double peak)
    {
        var times = Monthly(60);
        var cycle = SeasonalCycle.Find(times, Readings(times, amplitude: 5, peak, slope: 3, seed: 9), Year);

        // Standard errors of both parts: sqrt(2/60) of a scatter of 1.
        cycle.ShouldNotBeNull();
        cycle.Period.ShouldBe(Year);
        cycle.Amplitude.ShouldBe(5, 0.6);
        var off = (cycle.PeakAt(1) - peak) / Year;
        (off - Math.Round(off)).ShouldBe(0, 0.025);
        var offLowest = (cycle.PeakAt(-1) - peak) / Year - 0.5;
        (offLowest - Math.Round(offLowest)).ShouldBe(0, 0.025);
        cycle.At(peak).ShouldBe(cycle.Amplitude, 0.1);
        cycle.At(peak + 3 * Year).ShouldBe(cycle.At(peak), 1e-9);
    }

    [Theory]
    [InlineData(23, false)] // 23 months
    [InlineData(24, true)]
    public void Less_than_two_cycles_show_none(int count, bool isFound)
    {
        var times = Monthly(count);
        (SeasonalCycle.Find(times, Readings(times, 8, 0, 0, 3), Year) is not null).ShouldBe(isFound);
    }

    [Fact]
    public void Nothing_is_found_where_none_is_looked_for_nothing_varies_or_readings_are_few()
    {
        var times = Monthly(36);
        SeasonalCycle.Find(times, Readings(times, 8, 0, 0, 3), null).ShouldBeNull();
        SeasonalCycle.Find(times, [.. times.Select(_ => 4.0)], Year).ShouldBeNull();
        double[] few = [.. Enumerable.Range(0, 11).Select(i => 100.0 * i)];
        SeasonalCycle.Find(few, Readings(few, 50, 0, 0, 3), Year).ShouldBeNull();
    }

    /// <summary>Warm summers, and an oil that ages: the summers are not taken for ageing, the ageing is found.</summary>
    [Fact]
    public void A_trend_is_judged_beside_it()
    {
        var times = Monthly(30);
        var options = new TrendOptions(cycle: Year, confidence: 0.995);
        var summers = TrendAssessment.Of(times, Readings(times, 8, 200, 0, 5), default, options);
        summers.Verdict.ShouldBe(TrendVerdict.NoTrend);
        summers.Reasons.ShouldContain(TrendReason.Cycle);

        var ageing = TrendAssessment.Of(times, Readings(times, 8, 200, 3, 5), default, options);
        ageing.Verdict.ShouldBe(TrendVerdict.Rising);
        (ageing.Slope * Year).ShouldBe(3, 1);
        ageing.SlopeInterval.Contains(3 / Year).ShouldBeTrue();
    }

    /// <summary>A year from the coldest month to the warmest rises by itself: before two years are seen, a season may be behind it.</summary>
    [Fact]
    public void Half_a_season_is_no_clear_trend()
    {
        double[] half = [.. Enumerable.Range(0, 7).Select(i => Year * i / 12)];
        double[] values = [.. Readings(half, 6, Year / 2, 0, 8)];
        TrendAssessment One(double? cycle) => TrendAssessment.Of(half, values, default, new TrendOptions(cycle: cycle));

        One(Year).PValue.ShouldBeGreaterThan(One(null).PValue);
        One(Year).SlopeInterval.Contains(0).ShouldBeTrue();
    }
}
