using CsCheck;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Statistics;

public class PercentileTests
{
    [Theory]
    [InlineData(2, 0.95, 0.95, 26.2596739831)]
    [InlineData(3, 0.9, 0.95, 6.15528110334)]
    [InlineData(5, 0.99, 0.95, 5.74108451725)]
    [InlineData(8, 0.95, 0.9, 2.75428442063)]
    [InlineData(15, 0.99, 0.99, 4.22236449445)]
    [InlineData(100, 0.9, 0.75, 1.37975454904)]
    [InlineData(1000, 0.95, 0.95, 1.7272632696713)]
    public void Normal_factor_agrees_with_the_noncentral_t_of_R(
        int count,
        double content,
        double confidence,
        double k
    ) =>
        // R 4.2.2, qt(confidence, n - 1, qnorm(content) * sqrt(n)) / sqrt(n); for n = 1000, where that loses digits and warns, R's integrate().
        ToleranceLimits.NormalFactor(count, content, confidence).ShouldBe(k, 1e-8 * k);

    [Fact]
    public void Normal_factor_falls_to_the_normal_quantile()
    {
        ToleranceLimits.NormalFactor(1_000_000, 0.95, 0.95).ShouldBe(1.644853627, 0.004);
        ToleranceLimits.NormalFactor(10, 0.5, 0.5).ShouldBe(0, 1e-9);
        Gen.Int[2, 200]
            .Select(Gen.Double[0.5, 0.999], Gen.Double[0.5, 0.999])
            .Holds(
                (n, content, confidence) =>
                    ToleranceLimits
                        .NormalFactor(n + 1, content, confidence + 0.0005)
                        .ShouldBeLessThan(ToleranceLimits.NormalFactor(n, content + 0.0005, confidence + 0.0005)),
                iter: 30
            );
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void Normal_limit_bounds_the_content_as_often_as_it_says(int side)
    {
        var random = new Random(21);
        const int Runs = 2000;
        var held = 0;
        for (var run = 0; run < Runs; run++)
        {
            double[] values = [.. Enumerable.Range(0, 12).Select(_ => DecayNoiseSource.Normal(random))];
            var deviation = Math.Sqrt(values.Sum(v => Math.Pow(v - values.Average(), 2)) / 11);
            var limit = values.Average() + side * ToleranceLimits.NormalFactor(12, 0.9, 0.8) * deviation;

            // The 90 % point of the standard normal distribution is 1.2815515655.
            held += side * limit >= 1.2815515655 ? 1 : 0;
        }

        // Binomial standard error 0.9 points.
        (100.0 * held / Runs).ShouldBeInRange(76.5, 83.5);
    }

    [Fact]
    public void Fifty_eight_readings_do_not_support_a_95_95_limit_and_59_do()
    {
        // Wilks 1941: 1 − 0.95^n ≥ 0.95 from n = 59 on.
        ToleranceLimits.SmallestCount(0.95, 0.95).ShouldBe(59);
        ToleranceLimits.SmallestCount(0.95, 0.95, 2).ShouldBe(93);
        ToleranceLimits.DistributionFreeConfidence(58, 0.95).ShouldBe(1 - Math.Pow(0.95, 58), 1e-12);
    }

    [Fact]
    public void Confidence_of_an_order_statistic_is_a_binomial_sum()
    {
        // Second route: sums of binomial terms.
        for (var n = 1; n < 40; n += 6)
        {
            for (var r = 1; r <= n; r++)
            {
                var sum = Enumerable
                    .Range(r, n - r + 1)
                    .Sum(i => Binomial(n, i) * Math.Pow(0.1, i) * Math.Pow(0.9, n - i));
                ToleranceLimits.DistributionFreeConfidence(n, 0.9, r).ShouldBe(sum, 1e-11);
            }
        }

        static double Binomial(int n, int k) =>
            Enumerable.Range(1, k).Aggregate(1.0, (product, i) => product * (n - k + i) / i);
    }

    [Fact]
    public void Rules_of_quantiles_agree_with_R()
    {
        // R 4.2.2, quantile(type = ...).
        double[] values = [3, 1, 4, 1, 5, 9, 2, 6];
        Quantiles.Of(values, 0.9, Quantiles.Rule.Type6).ShouldBe(9, 1e-12);
        Quantiles.Of(values, 0.9).ShouldBe(6.9, 1e-12);
        Quantiles.Of(values, 0.9, Quantiles.Rule.Type8).ShouldBe(8.5, 1e-12);
        foreach (var rule in Enum.GetValues<Quantiles.Rule>())
        {
            Quantiles.Of(values, 0.5, rule).ShouldBe(3.5, 1e-12);
            (Quantiles.Of(values, 0, rule), Quantiles.Of(values, 1, rule)).ShouldBe((1, 9));
            Quantiles.Of([7], 0.3, rule).ShouldBe(7);
        }
    }

    [Fact]
    public void Quantiles_rise_with_probability_and_follow_the_unit() =>
        Gen.Double[-100, 100]
            .Array[1, 40]
            .Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Enum<Quantiles.Rule>())
            .Holds(
                (values, p, q, rule) =>
                {
                    var low = Quantiles.Of(values, Math.Min(p, q), rule);
                    low.ShouldBeLessThanOrEqualTo(Quantiles.Of(values, Math.Max(p, q), rule) + 1e-9);
                    Quantiles
                        .Of([.. values.Reverse().Select(v => 1.8 * v + 32)], Math.Min(p, q), rule)
                        .ShouldBe(1.8 * low + 32, 1e-9);
                }
            );

    [Fact]
    public void Order_interval_holds_the_quantile_as_often_as_it_says_or_refuses()
    {
        double[] fifty = [.. Enumerable.Range(1, 50).Select(i => (double)i)];
        var median = Quantiles.IntervalOf(fifty, 0.5, 0.95);

        // Conover 1980, binomial table n = 50, p = 1/2: ranks 18 and 33 with 96.7 % (from memory; the sum is checked by the second route above).
        (median.Lower, median.Upper).ShouldBe((18, 33));
        median.Confidence.ShouldBe(0.9672, 1e-4);
        Quantiles.IntervalOf(fifty, 0.99, 0.95).Outcome.ShouldBe(IntervalOutcome.TooFewReadings);
        Quantiles.IntervalOf([], 0.5, 0.9).Outcome.ShouldBe(IntervalOutcome.TooFewReadings);
    }
}
