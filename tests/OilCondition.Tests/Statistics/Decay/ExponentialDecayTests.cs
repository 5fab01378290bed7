using System.Globalization;
using OilCondition.Statistics;
using OilCondition.Tests.Reference;

namespace OilCondition.Tests.Statistics;

public class ExponentialDecayTests
{
    [Theory]
    [InlineData("C01")]
    [InlineData("C02")]
    [InlineData("C03")]
    public void The_reference_series_are_fitted_to_the_digits_their_file_states(string series)
    {
        // cleanup/expected.csv: 50-digit solution of the normal equations, R nls, nlsLM and scipy beside it.
        var (times, values) = Series(series);
        var fit = ExponentialDecay.Fit(times, values, lowestFloor: -1e9);

        Expected($"{series}.Cinf").ShouldAgree(fit.Floor);
        Expected($"{series}.k").ShouldAgree(fit.Rate);
        Expected($"{series}.rss").ShouldAgree(fit.ResidualSumOfSquares);
        Expected($"{series}.s").ShouldAgree(fit.ResidualStandardDeviation);
        Expected($"{series}.C0").ShouldAgree(fit.ValueAt(0));
    }

    [Fact]
    public void Noiseless_data_return_their_own_parameters()
    {
        double[] times = [0, 1, 2, 4, 8, 16];
        double[] values = [.. times.Select(t => 60 + 790 * Math.Exp(-0.21 * t))];
        var fit = ExponentialDecay.Fit(times, values);

        fit.Status.ShouldBe(ExponentialDecayStatus.Determined);
        fit.Rate.ShouldBe(0.21, 1e-6);
        fit.Floor.ShouldBe(60, 1e-3);
        fit.Start.ShouldBe(850, 1e-3);
    }

    [Fact]
    public void A_straight_fall_is_called_straight_and_a_rise_is_called_rising()
    {
        ExponentialDecay
            .Fit([0, 1, 2, 3, 4], [500, 480, 460, 440, 420], -1e9)
            .Status.ShouldBe(ExponentialDecayStatus.StraightLine);
        ExponentialDecay.Fit([0, 1, 2, 3, 4], [100, 160, 190, 205, 212]).Status.ShouldBe(ExponentialDecayStatus.Rising);
        ExponentialDecay.Fit([0, 1, 2], [3, 2, 1]).Status.ShouldBe(ExponentialDecayStatus.TooFewReadings);
    }

    [Fact]
    public void The_floor_bound_is_kept_and_said()
    {
        // Bends the wrong way: without a bound the best floor is below zero.
        var fit = ExponentialDecay.Fit([0, 2, 4, 6, 8, 10], [300, 255, 214, 170, 121, 84]);

        fit.Floor.ShouldBeGreaterThanOrEqualTo(0);
        fit.Status.ShouldBeOneOf(ExponentialDecayStatus.AtFloorBound, ExponentialDecayStatus.StraightLine);
    }

    [Fact]
    public void A_target_that_the_floor_may_not_reach_has_no_upper_end()
    {
        // C02 with target 200 ppm: the reference states a lower end near 16.04 h for the band and no upper end.
        var (times, values) = Series("C02");
        var fit = ExponentialDecay.Fit(times, values);
        var interval = ExponentialDecay.TimeToValue(fit, times, values, 200, 0.95);

        interval.HasEstimate.ShouldBeTrue();
        interval.HasLower.ShouldBeTrue();
        interval.HasUpper.ShouldBeFalse();
    }

    [Fact]
    public void The_profile_interval_covers_the_truth_as_often_as_it_says()
    {
        // Second route: simulation. Truth 1000 -> 100 at one per hour, target 200 at ln 9 h; nominal 90 %.
        var random = new Random(20260317);
        var covered = 0;
        const int Runs = 400;
        for (var run = 0; run < Runs; run++)
        {
            double[] times = [.. Enumerable.Range(0, 12).Select(i => 3.0 * i / 11)];
            double[] values = [.. times.Select(t => 100 + 900 * Math.Exp(-t) + 30 * Normal(random))];
            var fit = ExponentialDecay.Fit(times, values);
            var interval = ExponentialDecay.TimeToValue(fit, times, values, 200, 0.9);
            var truth = Math.Log(9);
            if (interval.HasLower && interval.Lower <= truth && (!interval.HasUpper || truth <= interval.Upper))
            {
                covered++;
            }
        }

        // Binomial standard error 1.5 %: three of them about the nominal 90 %.
        (100.0 * covered / Runs).ShouldBeInRange(85.5, 94.5);
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static ReferenceCase Expected(string id) => ReferenceFolder.Case("cleanup/expected.csv", id);

    private static (double[] Times, double[] Values) Series(string name)
    {
        var rows = ReferenceFolder.Rows($"cleanup/{name}.csv").Where(row => row["qualifier"].Length == 0).ToList();
        return (
            [.. rows.Select(row => double.Parse(row["t_h"], CultureInfo.InvariantCulture))],
            [.. rows.Select(row => double.Parse(row["water_ppm"], CultureInfo.InvariantCulture))]
        );
    }
}
