using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>
/// Simulation: truth 1000 to 100 at one per unit of time, target 200 at ln 9; nominal 90 %. The
/// coverage mode of the benchmark project runs more of it, and longer (docs/statistics-exponential-fit.md).
/// </summary>
public class DecayCoverageTests
{
    private const int Runs = 2000;

    public static TheoryData<int, double, DecayNoise> Cells()
    {
        var cells = new TheoryData<int, double, DecayNoise>();
        foreach (var count in new[] { 6, 8, 12, 24 })
        {
            foreach (var span in new[] { 1.0, 2, 3 })
            {
                cells.Add(count, span, DecayNoise.Constant);
                cells.Add(count, span, DecayNoise.Proportional);
            }
        }

        return cells;
    }

    [Theory]
    [MemberData(nameof(Cells))]
    public void Profile_intervals_cover_as_often_as_they_say(int count, double span, DecayNoise noise) =>
        // Binomial standard error 0.67 points: the band of 87 to 93 % is more than four of them.
        Covered(count, span, noise, lowestFloor: null).ShouldAllBe(covered => covered >= 87 && covered <= 93);

    [Theory]
    [InlineData(6, 1, DecayNoise.Constant)]
    [InlineData(12, 1, DecayNoise.Constant)]
    [InlineData(8, 1, DecayNoise.Proportional)]
    [InlineData(12, 2, DecayNoise.Constant)]
    public void With_the_floor_bound_on_they_cover_no_less_and_hardly_more(int count, double span, DecayNoise noise) =>
        // The truth is 95.5 % at most (10,000 runs a cell in docs/statistics-exponential-fit.md): 97 is three standard errors above it.
        Covered(count, span, noise, lowestFloor: 0).ShouldAllBe(covered => covered >= 87 && covered <= 97);

    /// <summary>Percent of intervals for rate, floor and time that hold the truth.</summary>
    private static double[] Covered(int count, double span, DecayNoise noise, double? lowestFloor)
    {
        var random = new Random(20260317);
        var options = new ExponentialDecayOptions(noise, lowestFloor);
        var truth = Math.Log(9);
        double[] times = [.. Enumerable.Range(0, count).Select(i => span * i / (count - 1))];
        var (rate, floor, time) = (0, 0, 0);
        for (var run = 0; run < Runs; run++)
        {
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
            var reach = analysis.Reach(200, 0.9);
            time += reach.HasLower && reach.Lower <= truth && (!reach.HasUpper || truth <= reach.Upper) ? 1 : 0;
        }

        return [100.0 * rate / Runs, 100.0 * floor / Runs, 100.0 * time / Runs];
    }
}
