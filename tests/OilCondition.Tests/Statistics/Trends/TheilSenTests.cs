using CsCheck;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Statistics;

public class TheilSenTests
{
    [Fact]
    public void Slope_and_ends_are_those_of_a_full_sort() =>
        MannKendallTests.Series.Holds(series =>
        {
            var (t, y) = series;
            var slopes = Slopes(t, y);
            var fit = TheilSen.Fit(t, y, default, 0.8);
            fit.SlopeCount.ShouldBe(slopes.Count);
            fit.Slope.ShouldBe(At(slopes, (slopes.Count + 1) / 2.0), 1e-12);

            // z of 80 % from a table of the normal distribution: 1.2815515655446004.
            var c = 1.2815515655446004 * Math.Sqrt(MannKendall.Test(t, y).Variance);
            var lower = (slopes.Count - c) / 2;
            fit.SlopeInterval.Lower.HasValue.ShouldBe(lower >= 1);
            if (lower >= 1)
            {
                fit.SlopeInterval.Lower.ShouldBe(At(slopes, lower), 1e-9);
                fit.SlopeInterval.Upper.ShouldBe(At(slopes, slopes.Count + 1 - lower), 1e-9);
            }
        });

    [Theory]
    [InlineData(0, 1)]
    [InlineData(0, 0)]
    [InlineData(1, 1)]
    [InlineData(3, 1)]
    [InlineData(0, 40)]
    public void Searched_slopes_are_those_of_a_full_sort_to_the_last_bit(int decimals, double spread)
    {
        // Rounded values tie (0 decimals most); a spread of 40 puts the slopes over many powers of ten, 0 makes all values alike.
        var random = new Random(77);
        for (var run = 0; run < 600; run++)
        {
            var n = 2 + run % 60;
            double[] t = [.. Enumerable.Range(0, n).Select(i => run % 3 == 0 ? i / 2 : i + 0.5 * random.NextDouble())];
            double[] y =
            [
                .. t.Select(x =>
                    spread > 1
                        ? Math.Exp(spread * DecayNoiseSource.Normal(random))
                        : Math.Round(0.1 * x + 3 * spread * DecayNoiseSource.Normal(random), decimals)
                ),
            ];
            var slopes = Slopes(t, y);
            if (slopes.Count == 0)
            {
                continue;
            }

            var fit = TheilSen.Fit(t, y, default, 0.9, TheilSenRankRule.Rounded);
            fit.Slope.ShouldBe(At(slopes, (slopes.Count + 1) / 2.0));
            var c = 1.6448536269514722 * Math.Sqrt(MannKendall.Test(t, y).Variance);
            var lower = Math.Round((slopes.Count - c) / 2, MidpointRounding.ToEven);
            var upper = Math.Round((slopes.Count + c) / 2, MidpointRounding.ToEven) + 1;
            fit.SlopeInterval.Lower.HasValue.ShouldBe(lower >= 1);
            fit.SlopeInterval.Lower.ShouldBe(lower >= 1 ? At(slopes, lower) : null);
            fit.SlopeInterval.Upper.HasValue.ShouldBe(upper <= slopes.Count);
            fit.SlopeInterval.Upper.ShouldBe(upper <= slopes.Count ? At(slopes, upper) : null);
        }
    }

    [Fact]
    public void Score_and_variance_do_not_depend_on_the_order_of_readings() =>
        MannKendallTests.Series.Holds(series =>
        {
            // Readings in ascending order take another way than others.
            var (t, y) = series;
            var ascending = MannKendall.Test(t, y);
            var other = MannKendall.Test([.. t.Reverse()], [.. y.Reverse()]);
            other.Score.ShouldBe(ascending.Score);
            other.Variance.ShouldBe(ascending.Variance, 1e-9);
        });

    [Fact]
    public void Rules_differ_as_they_say()
    {
        // Sen 1968, worked example: N = 21. At 93 % the exact rule takes ranks 5 and 17, since P(S ≥ 13) = 0.035 for seven values.
        double[] x = [1, 2, 3, 4, 10, 12, 18];
        double[] y = [9, 15, 19, 20, 45, 55, 78];
        var slopes = Slopes(x, y);
        var exact = TheilSen.Fit(x, y, default, 0.93, TheilSenRankRule.Exact).SlopeInterval;
        var rounded = TheilSen.Fit(x, y, default, 0.93, TheilSenRankRule.Rounded).SlopeInterval;
        var interpolated = TheilSen.Fit(x, y, default, 0.93).SlopeInterval;

        (exact.Lower, exact.Upper).ShouldBe((slopes[4], slopes[16]));
        (rounded.Lower, rounded.Upper).ShouldBe((slopes[3], slopes[17]));
        interpolated.Lower.ShouldBeInRange(slopes[3], slopes[4]);
        interpolated.Upper.ShouldBeInRange(slopes[16], slopes[17]);
    }

    [Fact]
    public void Exact_rule_covers_at_least_as_often_as_it_says()
    {
        var random = new Random(7);
        const int Runs = 3000;
        var covered = 0;
        double[] times = [0, 1, 3, 4, 8, 9, 11];
        for (var run = 0; run < Runs; run++)
        {
            double[] values = [.. times.Select(t => 0.4 * t + DecayNoiseSource.Normal(random))];
            covered += TheilSen.Fit(times, values, default, 0.9, TheilSenRankRule.Exact).SlopeInterval.Contains(0.4)
                ? 1
                : 0;
        }

        // n = 7: P(S ≥ 13) = 0.035 a side, hence 93.1 %; binomial standard error 0.46 points.
        (100.0 * covered / Runs).ShouldBeInRange(91.2, 95);
    }

    [Fact]
    public void Units_shifts_order_and_reversed_time_do_what_they_should() =>
        MannKendallTests.Series.Holds(series =>
        {
            var (t, y) = series;
            var plain = TheilSen.Fit(t, y);
            var rescaled = TheilSen.Fit([.. t.Select(x => 24 * x + 1000)], [.. y.Select(x => 3 * x - 7)]);
            rescaled.Slope.ShouldBe(plain.Slope / 8, 1e-9);
            rescaled.SlopeInterval.Upper.ShouldBe(plain.SlopeInterval.Upper / 8, 1e-9);
            rescaled.ValueAt(24 * 5 + 1000).ShouldBe(3 * plain.ValueAt(5) - 7, 1e-8);
            TheilSen.Fit([.. t.Reverse()], [.. y.Reverse()]).Slope.ShouldBe(plain.Slope, 1e-12);
            var reversed = TheilSen.Fit([.. t.Select(x => -x)], y);
            reversed.Slope.ShouldBe(-plain.Slope, 1e-12);
            reversed.SlopeInterval.Lower.ShouldBe(-plain.SlopeInterval.Upper, 1e-12);
        });

    [Fact]
    public void More_scatter_never_narrows_the_interval() =>
        Gen.Double[1, 20]
            .Select(Gen.Int[0, 1000])
            .Holds(
                (more, seed) =>
                {
                    var random = new Random(seed);
                    double[] t = [.. Enumerable.Range(0, 12).Select(i => (double)i)];
                    double[] e = [.. t.Select(_ => DecayNoiseSource.Normal(random))];
                    var less = TheilSen.Fit(t, [.. t.Select((x, i) => 2 * x + e[i])]).SlopeInterval;
                    var wide = TheilSen.Fit(t, [.. t.Select((x, i) => 2 * x + more * e[i])]).SlopeInterval;
                    (wide.Upper - wide.Lower).ShouldBeGreaterThanOrEqualTo((less.Upper - less.Lower) * (1 - 1e-9));
                }
            );

    [Fact]
    public void One_wild_reading_hardly_moves_the_slope()
    {
        double[] t = [0, 1, 2, 3, 4, 5, 6, 7];
        double[] y = [1, 2.1, 2.9, 4.2, 5, 6.1, 6.8, 900];
        TheilSen.Fit(t, y).Slope.ShouldBe(1, 0.1);
    }

    [Fact]
    public void Pairs_at_one_time_are_left_out()
    {
        // Slopes: only from time 0 to time 1: 1, 3, 2, 4.
        var fit = TheilSen.Fit([0, 0, 1, 1], [2, 1, 3, 5]);
        fit.SlopeCount.ShouldBe(4);
        fit.Slope.ShouldBe(2.5);
        TheilSen.Fit([3, 3, 3], [1, 2, 3]).Status.ShouldBe(LineStatus.SamePosition);
        TheilSen.Fit([3], [1]).Status.ShouldBe(LineStatus.TooFewReadings);
    }

    [Fact]
    public void Four_readings_bound_no_slope_at_95_percent()
    {
        var fit = TheilSen.Fit([0, 1, 2, 3], [1, 2, 4, 3]);
        fit.SlopeInterval.Outcome.ShouldBe(IntervalOutcome.NotDetermined);
        TheilSen
            .Fit([0, 1, 2, 3], [1, 2, 4, 3], default, 0.95, TheilSenRankRule.Exact)
            .SlopeInterval.Upper.ShouldBeNull();
    }

    [Fact]
    public void Correlation_widens_the_interval()
    {
        double[] t = [.. Enumerable.Range(0, 20).Select(i => (double)i)];
        double[] y = [.. t.Select(x => x + 5 * Math.Sin(3 * x))];
        var plain = TheilSen.Fit(t, y).SlopeInterval;
        var correlated = TheilSen.Fit(t, y, default, 0.95, TheilSenRankRule.Interpolated, 0.5).SlopeInterval;
        correlated.Lower.ShouldBeLessThan(plain.Lower);
        correlated.Upper.ShouldBeGreaterThan(plain.Upper);
    }

    [Fact]
    public void Along_the_censored_slope_the_score_changes_its_sign()
    {
        // Akritas, Murphy and LaValley 1995 define the slope so. Checked by Mann-Kendall on what is left, censored as it was.
        var random = new Random(99);
        for (var run = 0; run < 300; run++)
        {
            var (t, y, censoring) = Censored(random, 10 + run % 10, 0.1);
            var fit = TheilSen.Fit(t, y, censoring);
            fit.Status.ShouldBe(LineStatus.Determined);
            Score(fit.Slope - 1e-6).ShouldBeGreaterThanOrEqualTo(0);
            Score(fit.Slope + 1e-6).ShouldBeLessThanOrEqualTo(0);

            int Score(double slope) => MannKendall.Test(t, [.. t.Select((x, i) => y[i] - slope * x)], censoring).Score;
        }
    }

    [Fact]
    public void Censored_interval_covers_the_slope()
    {
        var random = new Random(5);
        const int Runs = 1500;
        var covered = 0;
        for (var run = 0; run < Runs; run++)
        {
            var (t, y, censoring) = Censored(random, 16, 0.1);
            covered += TheilSen.Fit(t, y, censoring, 0.9).SlopeInterval.Contains(0.1) ? 1 : 0;
        }

        // Binomial standard error 0.8 points. Censoring makes it err to the safe side, as said in the docs.
        (100.0 * covered / Runs).ShouldBeInRange(87.5, 97);
    }

    [Fact]
    public void Censoring_that_hides_no_order_changes_nothing_but_is_not_needed()
    {
        double[] t = [0, 1, 2, 3, 4, 5];
        double[] y = [1, 2, 2.5, 4, 5.5, 6];
        TheilSen.Fit(t, y, new Censoring[6]).ShouldBe(TheilSen.Fit(t, y));
        var allBelow = TheilSen.Fit(t, y, [.. Enumerable.Repeat(Censoring.Below, 6)]);
        allBelow.Status.ShouldBe(LineStatus.NotDetermined);
        Should.Throw<InvalidOperationException>(() => allBelow.ValueAt(0));
    }

    [Fact]
    public void The_level_is_unknown_where_censoring_hides_the_median()
    {
        double[] t = [0, 1, 2, 3, 4, 5, 6];
        double[] y = [5, 5, 5, 5, 6, 8, 9];
        Censoring[] censoring =
        [
            Censoring.Below,
            Censoring.Below,
            Censoring.Below,
            Censoring.Below,
            Censoring.None,
            Censoring.None,
            Censoring.None,
        ];
        TheilSen.Fit(t, y, censoring).HasIntercept.ShouldBeFalse();
        censoring[3] = Censoring.None;
        var known = TheilSen.Fit(t, y, censoring);
        known.HasIntercept.ShouldBeTrue();
        known.MedianValue.ShouldBe(5);
    }

    private static (double[] Times, double[] Values, Censoring[] Censoring) Censored(
        Random random,
        int count,
        double slope
    )
    {
        double[] t = [.. Enumerable.Range(0, count).Select(i => (double)i)];
        double[] y = [.. t.Select(x => slope * x + DecayNoiseSource.Normal(random))];
        var censoring = new Censoring[count];
        for (var i = 0; i < count; i++)
        {
            if (y[i] < 0.2)
            {
                (y[i], censoring[i]) = (0.2, Censoring.Below);
            }
        }

        return (t, y, censoring);
    }

    private static List<double> Slopes(double[] t, double[] y) =>
        [
            .. Enumerable
                .Range(0, t.Length)
                .SelectMany(i => Enumerable.Range(i + 1, t.Length - i - 1).Select(j => (i, j)))
                .Where(p => t[p.j] != t[p.i])
                .Select(p => (y[p.j] - y[p.i]) / (t[p.j] - t[p.i]))
                .Order(),
        ];

    private static double At(List<double> sorted, double rank)
    {
        var lower = (int)Math.Floor(rank);
        var fraction = rank - lower;
        return fraction > 0 ? sorted[lower - 1] + fraction * (sorted[lower] - sorted[lower - 1]) : sorted[lower - 1];
    }
}
