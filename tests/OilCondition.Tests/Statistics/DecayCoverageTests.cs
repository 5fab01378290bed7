using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>
/// Simulation: truth 1000 to 100 at one per unit of time, target 200 at ln 9; nominal 90 %. Two of the cells that the
/// coverage mode of the benchmark project runs in full (docs/statistics-exponential-fit.md).
/// </summary>
public class DecayCoverageTests
{
    private const int Runs = 2000;

    [Theory]
    [InlineData(8, 3, DecayNoise.Constant)]
    [InlineData(12, 2, DecayNoise.Constant)]
    [InlineData(8, 2, DecayNoise.Proportional)]
    public void Profile_intervals_cover_as_often_as_they_say(int count, double span, DecayNoise noise)
    {
        var random = new Random(20260317);
        var options = new ExponentialDecayOptions(noise, lowestFloor: null);
        int rate = 0;
        int floor = 0;
        int time = 0;
        for (var run = 0; run < Runs; run++)
        {
            double[] times = [.. Enumerable.Range(0, count).Select(i => span * i / (count - 1))];
            double[] values =
            [
                .. times.Select(t =>
                {
                    var y = 100 + 900 * Math.Exp(-t);
                    return y + (noise == DecayNoise.Constant ? 30 : 0.05 * y) * DecayNoiseSource.Normal(random);
                }),
            ];
            var analysis = ExponentialDecay.Analyze(times, values, options);
            rate += analysis.Rate(0.9).Contains(1) ? 1 : 0;
            floor += analysis.Floor(0.9).Contains(100) ? 1 : 0;
            var reach = analysis.TimeTo(200, 0.9);
            var truth = Math.Log(9);
            time += reach.HasLower && reach.Lower <= truth && (!reach.HasUpper || truth <= reach.Upper) ? 1 : 0;
        }

        // Binomial standard error 0.67 points: the band of 87 to 93 % is more than four of them.
        foreach (var covered in new[] { rate, floor, time })
        {
            (100.0 * covered / Runs).ShouldBeInRange(87, 93);
        }
    }
}
