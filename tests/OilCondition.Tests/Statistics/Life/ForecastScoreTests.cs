using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

public class ForecastScoreTests
{
    [Theory]
    [InlineData(3, 2, 4)]
    [InlineData(100, 15, 60)]
    public void The_ranked_probability_score_is_the_integral_of_squared_differences(
        double mean,
        double sd,
        double outcome
    )
    {
        // Definition: ∫ (F(x) − 1{x ≥ y})² dx.
        double Left(double x) => Math.Pow(Normal.CDF(mean, sd, x), 2);
        double Right(double x) => Math.Pow(1 - Normal.CDF(mean, sd, x), 2);
        var integral =
            GaussLegendreRule.Integrate(Left, mean - 12 * sd, outcome, 300)
            + GaussLegendreRule.Integrate(Right, outcome, mean + 12 * sd, 300);
        ForecastScore.NormalRankedProbability(mean, sd, outcome).ShouldBe(integral, 1e-9 * sd);
    }

    [Fact]
    public void Many_members_of_a_normal_forecast_score_like_the_normal()
    {
        double[] members = [.. Enumerable.Range(0, 2000).Select(i => Normal.InvCDF(10, 2, (i + 0.5) / 2000))];
        ForecastScore
            .EnsembleRankedProbability(members, 13)
            .ShouldBe(ForecastScore.NormalRankedProbability(10, 2, 13), 2e-3);
        ForecastScore.EnsembleRankedProbability([5], 8).ShouldBe(3);
    }

    [Fact]
    public void An_interval_pays_for_its_width_and_for_every_miss()
    {
        ForecastScore.Interval(10, 20, 15, 0.9).ShouldBe(10);
        ForecastScore.Interval(10, 20, 8, 0.9).ShouldBe(10 + 20 * 2, 1e-9);
        ForecastScore.Interval(10, 20, 23, 0.9).ShouldBe(10 + 20 * 3, 1e-9);
        Should
            .Throw<ArgumentOutOfRangeException>(() => ForecastScore.Interval(10, 9, 8, 0.9))
            .ParamName.ShouldBe("upper");
        Should.Throw<ArgumentException>(() => ForecastScore.EnsembleRankedProbability([], 8));
        Should.Throw<ArgumentOutOfRangeException>(() => ForecastScore.RelativeAccuracy(0, 8));
    }

    [Fact]
    public void Coverage_limits_are_those_at_which_the_count_has_the_tail_probability()
    {
        // Definition of Clopper and Pearson: P(X ≥ hits | lower) = P(X ≤ hits | upper) = tail.
        var coverage = new IntervalCoverage(17, 20);
        var interval = coverage.ShareInterval(0.9);
        (1 - Binomial.CDF(interval.Lower!.Value, 20, 16)).ShouldBe(0.05, 1e-8);
        Binomial.CDF(interval.Upper!.Value, 20, 17).ShouldBe(0.05, 1e-8);
        new IntervalCoverage(0, 5).ShareInterval(0.9).Lower.ShouldBe(0);
        new IntervalCoverage(5, 5).ShareInterval(0.9).Upper.ShouldBe(1);
        new IntervalCoverage(18, 20).ChanceIfHonest(0.9).ShouldBe(1, 1e-9);
        Should.Throw<ArgumentOutOfRangeException>(() => new IntervalCoverage(6, 5)).ParamName.ShouldBe("hits");
        Should.Throw<ArgumentOutOfRangeException>(() => new IntervalCoverage(0, 0)).ParamName.ShouldBe("count");
    }
}
