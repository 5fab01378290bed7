using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>How often a trend is seen where there is none, and found where there is one: fixed seeds, two-sided 5 %, hundreds of runs, bounds on both sides.</summary>
public class TrendRateTests
{
    private static double[] Even(int count) => [.. Enumerable.Range(0, count).Select(i => (double)i)];

    private static double Rate(int runs, double[] times, Func<double, double> course, double correlation)
    {
        var random = new Random(20261126);
        var found = 0;
        for (var run = 0; run < runs; run++)
        {
            var error = DecayNoiseSource.Normal(random);
            var values = new double[times.Length];
            for (var i = 0; i < times.Length; i++)
            {
                error =
                    correlation * error + Math.Sqrt(1 - correlation * correlation) * DecayNoiseSource.Normal(random);
                values[i] = course(times[i] / times[^1]) + error;
            }

            var verdict = TrendAssessment.Of(times, values).Verdict;
            found += verdict is TrendVerdict.Rising or TrendVerdict.Falling ? 1 : 0;
        }

        return (double)found / runs;
    }

    /// <summary>The old way had 10 to 25 % here. A standard error is 1 point.</summary>
    [Theory]
    [InlineData(12)]
    [InlineData(24)]
    [InlineData(40)]
    public void Readings_that_follow_one_another_are_seldom_called_a_trend(int count) =>
        Rate(600, Even(count), _ => 0, correlation: 0.6).ShouldBeInRange(0.02, 0.10);

    /// <summary>From below as well: whoever allows for more correlation than there is loses what is there.</summary>
    [Theory]
    [InlineData(5)]
    [InlineData(12)]
    [InlineData(24)]
    public void Independent_readings_are_called_a_trend_at_the_rate_asked_for(int count) =>
        Rate(600, Even(count), _ => 0, correlation: 0).ShouldBeInRange(0.01, 0.07);

    [Fact]
    public void Three_dates_with_ten_bottles_each_are_no_thirty_dates() =>
        Rate(400, [.. Enumerable.Range(0, 30).Select(i => (double)(i / 10))], _ => 0, correlation: 0)
            .ShouldBeInRange(0.01, 0.07);

    /// <summary>Of a rise of two standard deviations over 24 independent readings a test that knew of no correlation would find some 85 %.</summary>
    [Fact]
    public void A_rise_within_the_scatter_is_found() =>
        Rate(400, Even(24), u => 2 * u, correlation: 0).ShouldBeGreaterThan(0.6);

    [Fact]
    public void A_rise_that_comes_late_is_found() =>
        Rate(300, Even(24), u => 4 * (Math.Exp(5 * u) - 1) / (Math.Exp(5) - 1), correlation: 0)
            .ShouldBeGreaterThan(0.6);
}
