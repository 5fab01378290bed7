using OilCondition.Statistics;
using OilCondition.Tests.Cleanup;

namespace OilCondition.Tests.Statistics;

/// <summary>Readings that do not belong to the curve of the others: flagged however few readings there are, and allowed for where that is asked.</summary>
public class DecayOutlierTests
{
    private static double[] Fall(Random random, double[] hours, double scatter) =>
        [.. hours.Select(t => 50 + 750 * Math.Exp(-t) + scatter * Runs.Normal(random))];

    [Theory]
    [InlineData(6)]
    [InlineData(9)]
    [InlineData(16)]
    public void A_reading_of_a_hundred_thousand_is_flagged_wherever_it_stands(int count)
    {
        var hours = Runs.Evenly(count, 3);
        for (var place = 0; place < count; place++)
        {
            foreach (var noise in new[] { DecayNoise.Constant, DecayNoise.TwoComponent })
            {
                var values = Fall(new Random(place + 1), hours, 5);
                values[place] = 100_000;
                ExponentialDecay
                    .Analyze(hours, values, new ExponentialDecayOptions(noise))
                    .FlaggedReadings.ShouldContain(place, $"{noise}, {count} readings, at {place}");
            }
        }
    }

    [Fact]
    public void Leaving_one_out_is_the_F_test_of_a_shift_of_its_own()
    {
        // Second route by hand: sums of squares with and without the reading, F(1, n − 4), Bonferroni for n readings.
        var hours = Runs.Evenly(10, 3);
        var values = Fall(new Random(8), hours, 10);
        values[4] += 70;
        var all = ExponentialDecay.Fit(hours, values).ResidualSumOfSquares;
        var without = ExponentialDecay
            .Fit([.. hours.Where((_, i) => i != 4)], [.. values.Where((_, i) => i != 4)])
            .ResidualSumOfSquares;
        var p = 1 - MathNet.Numerics.Distributions.FisherSnedecor.CDF(1, 6, (all - without) / (without / 6));

        (10 * p).ShouldBeLessThan(0.05);
        ExponentialDecay.Analyze(hours, values).FlaggedReadings.ShouldBe([4]);
    }

    /// <summary>Nominal 5 % of series: 600 runs, standard error 0.9 points.</summary>
    [Fact]
    public void Without_an_outlier_few_series_have_one()
    {
        var random = new Random(12);
        var hours = Runs.Evenly(12, 3);
        var flagged = Enumerable
            .Range(0, 600)
            .Count(_ => ExponentialDecay.Analyze(hours, Fall(random, hours, 20)).FlaggedReadings.Count > 0);

        (flagged / 6.0).ShouldBeInRange(1, 9, "seed 12");
    }

    /// <summary>Nominal 90 %: with weights of Tukey 74 % of six readings. 400 runs, standard error 1.6 points.</summary>
    [Theory]
    [InlineData(6, 300)]
    [InlineData(6, 100)]
    [InlineData(12, 300)]
    public void Robust_intervals_hold_with_one_outlier_at_any_place(int count, double size)
    {
        var random = new Random(14);
        var hours = Runs.Evenly(count, 2.5);
        var holds = 0;
        for (var run = 0; run < 400; run++)
        {
            var values = Fall(random, hours, 25);
            values[random.Next(count)] += size;
            holds += ExponentialDecay
                .Analyze(hours, values, new ExponentialDecayOptions(lowestFloor: null, robust: true))
                .Rate(0.9)
                .Contains(1)
                ? 1
                : 0;
        }

        (holds / 4.0).ShouldBeInRange(86, 99, "seed 14");
    }

    [Fact]
    public void Two_wet_bottles_are_both_found()
    {
        var hours = Runs.Evenly(14, 3);
        var values = Fall(new Random(15), hours, 8);
        values[5] += 400;
        values[9] += 350;

        var analysis = ExponentialDecay.Analyze(hours, values);
        analysis.FlaggedReadings.ShouldBe([5, 9]);
        analysis.MoreFlagsPossible.ShouldBeTrue(); // a sixth of 14 is two
        values[9] -= 350;
        ExponentialDecay.Analyze(hours, values).FlaggedReadings.ShouldBe([5]);
        ExponentialDecay.Analyze(hours, values).MoreFlagsPossible.ShouldBeFalse();
    }
}
