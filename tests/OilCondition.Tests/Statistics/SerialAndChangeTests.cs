using CsCheck;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Statistics;

public class SerialAndChangeTests
{
    [Fact]
    public void Lag_one_correlation_agrees_with_R()
    {
        // R 4.2.2, acf(Nile): 0.498408184133. The Nile series is data set CP1 of the reference files (R datasets).
        double[] nile =
        [
            .. Reference
                .ReferenceFolder.Rows("trend-data.csv")
                .Where(r => r["dataset"] == "CP1")
                .Select(r => double.Parse(r["y"], System.Globalization.CultureInfo.InvariantCulture)),
        ];
        SerialCorrelation.Lag1(nile).ShouldBe(0.498408184133, 1e-11);
    }

    [Fact]
    public void Durbin_Watson_and_lag_one_are_two_views_of_one_thing() =>
        // d = 2 (1 − r) but for the two end terms: exact identity for residuals with mean 0.
        Gen.Double[-5, 5]
            .Array[3, 40]
            .Where(e => e.Distinct().Count() > 1)
            .Holds(values =>
            {
                var mean = values.Average();
                double[] e = [.. values.Select(v => v - mean)];
                var squares = e.Sum(v => v * v);
                var ends = (e[0] * e[0] + e[^1] * e[^1]) / squares;
                SerialCorrelation.DurbinWatson(e).ShouldBe(2 * (1 - SerialCorrelation.Lag1(e)) - ends, 1e-9);
            });

    [Fact]
    public void Nothing_that_varies_gives_no_correlation()
    {
        SerialCorrelation.Lag1([2, 2, 2]).ShouldBe(0);
        SerialCorrelation.DurbinWatson([0, 0, 0]).ShouldBe(2);
        SerialCorrelation.EffectiveCount(30, 0).ShouldBe(30);
        SerialCorrelation.EffectiveCount(30, -0.5).ShouldBe(90);
    }

    [Fact]
    public void Cuts_are_the_cheapest_of_all_cuts() =>
        // Second route: every subset of places, for up to nine values.
        Gen.Select(Gen.Int[0, 20].Array[2, 9], Gen.Int[0, 60], Gen.Int[1, 3])
            .Holds(
                (numbers, penalty, least) =>
                {
                    double[] values = [.. numbers.Select(v => (double)v)];
                    var best = AllCuts(values, penalty, Math.Min(least, values.Length));
                    var found = Segmentation.Of(values, penalty, least);
                    found.Cost.ShouldBe(best, 1e-9);
                    found.Segments.Sum(s => s.Count).ShouldBe(values.Length);
                    (found.ResidualSumOfSquares + penalty * found.ChangeCount).ShouldBe(found.Cost, 1e-9);
                    (values.Length < 2 * least || found.Segments.All(s => s.Count >= least)).ShouldBeTrue();
                },
                iter: 300
            );

    [Fact]
    public void A_suggested_penalty_finds_the_levels_and_says_nothing_for_equal_neighbours()
    {
        double[] values = [10, 11, 9, 10.5, 9.6, 30, 31, 29.5, 30.4, 29, 12, 11, 12.5, 11.6, 12.2];
        Segmentation
            .Of(values, Segmentation.SuggestedPenalty(values), 2)
            .Segments.Select(s => s.First)
            .ShouldBe([0, 5, 10]);
        Segmentation.SuggestedPenalty([4, 4, 4, 4]).ShouldBe(0);
        Segmentation.Of([4, 4, 4, 4], 0).ChangeCount.ShouldBe(0);
    }

    [Fact]
    public void Pettitt_knows_no_unit_and_only_the_mirror_of_time() =>
        Gen.Int[0, 30]
            .Array[2, 30]
            .Holds(numbers =>
            {
                double[] values = [.. numbers.Select(v => (double)v)];
                var plain = Pettitt.Test(values);
                Pettitt.Test([.. values.Select(v => 4 - 2 * v)]).Statistic.ShouldBe(plain.Statistic, 1e-9);
                Pettitt.Test([.. values.Reverse()]).Statistic.ShouldBe(plain.Statistic, 1e-9);
                plain.PValue.ShouldBeInRange(0, 1);
            });

    [Fact]
    public void A_step_on_a_line_agrees_with_regression_in_R()
    {
        // R 4.2.2: lm(y ~ t + z) for every place of the step z; best place 6, its coefficient and t probability, times 7 places.
        double[] t = [.. Enumerable.Range(0, 12).Select(i => (double)i)];
        double[] y = [10, 11.2, 11.9, 13.1, 14.2, 14.8, 9.9, 11.3, 12.1, 12.8, 14.1, 15.2];
        var step = LineStep.Find(t, y);
        step.FirstAfter.ShouldBe(6);
        step.Step.ShouldBe(-5.94952380952, 1e-9);
        step.Correlation.ShouldBe((-0.231748745504 + 3 / 12.0) / (1 - 4 / 12.0), 1e-9);
        step.BendExplainsAsMuch.ShouldBeFalse();

        // That correlation of 0.027 divides F by 1.056; for t near 32 with 9 degrees of freedom the probability goes with t^−9, by about 1.28.
        step.PValue.ShouldBe(7 * 5.16957986585e-10 * 1.28, 0.05 * 7 * 5.17e-10);
    }

    [Fact]
    public void A_bend_is_no_step()
    {
        double[] t = [.. Enumerable.Range(0, 14).Select(i => (double)i)];
        LineStep.Find(t, [.. t.Select(x => x * x)]).BendExplainsAsMuch.ShouldBeTrue();
        LineStep.Find(t, [.. t.Select(x => 100 * Math.Exp(-x / 5))]).BendExplainsAsMuch.ShouldBeTrue();
        LineStep.Find([1, 2, 3], [1, 2, 3]).IsTried.ShouldBeFalse();
        LineStep.Find([1, 2, 3], [1, 2, 3]).PValue.ShouldBe(1);
        LineStep.Find(t, [.. t.Select(x => 3 * x)]).PValue.ShouldBe(1);
    }

    [Fact]
    public void A_smooth_curve_keeps_a_line_and_shrugs_off_a_wild_reading()
    {
        double[] t = [0, 1, 2, 4, 5, 6, 8, 9, 10, 12, 13, 15];
        var smoothed = new double[12];
        Lowess.Smooth(t, [.. t.Select(x => 3 - 0.5 * x)], smoothed);
        for (var i = 0; i < 12; i++)
        {
            smoothed[i].ShouldBe(3 - 0.5 * t[i], 1e-9);
        }

        double[] wild = [.. t.Select((x, i) => 3 - 0.5 * x + 0.01 * Math.Cos(7 * i) + (i == 5 ? 40 : 0))];
        Lowess.Smooth(t, wild, smoothed);
        smoothed[5].ShouldBe(0, 0.1);
    }

    private static double AllCuts(double[] values, double penalty, int least)
    {
        var best = double.MaxValue;
        for (var mask = 0; mask < 1 << (values.Length - 1); mask++)
        {
            double cost = 0;
            var start = 0;
            var fits = true;
            for (var end = 1; end <= values.Length; end++)
            {
                if (end < values.Length && (mask & (1 << (end - 1))) == 0)
                {
                    continue;
                }

                var run = values[start..end];
                var mean = run.Average();
                cost += run.Sum(v => (v - mean) * (v - mean)) + (start > 0 ? penalty : 0);
                fits &= run.Length >= least;
                start = end;
            }

            best = fits ? Math.Min(best, cost) : best;
        }

        return best;
    }
}
