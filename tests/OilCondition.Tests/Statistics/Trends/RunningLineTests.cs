using MathNet.Numerics;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>The line of readings that come one by one, held against the fit of all of them by MathNet.Numerics at once.</summary>
public class RunningLineTests
{
    [Theory]
    [InlineData(new double[] { 0, 30, 61, 90, 122, 150, 181, 212 }, 0, 1)]
    [InlineData(new double[] { 45000, 45000, 45000, 45031, 45031, 45090 }, 1e6, 2)]
    [InlineData(new double[] { 5, -3, 5, 11, 0.5, -3 }, -20, 3)]
    public void Each_line_is_that_of_all_readings_so_far(double[] times, double level, int seed)
    {
        var random = new Random(seed);
        double[] values = [.. times.Select(t => level + 0.3 * t + DecayNoiseSource.Normal(random))];
        var running = new RunningLine();
        for (var i = 0; i < times.Length; i++)
        {
            running.Line.Count.ShouldBe(i);
            running.Add(times[i], values[i]);
            double[] t = times[..(i + 1)];
            double[] y = values[..(i + 1)];
            var line = running.Line;
            line.IsDetermined.ShouldBe(i >= 2 && t.Distinct().Count() > 1);
            if (!line.IsDetermined)
            {
                continue;
            }

            var (intercept, slope) = Fit.Line(t, y);
            var mean = y.Average();
            line.Slope.ShouldBe(slope, 1e-8);
            line.ValueAt(times[0]).ShouldBe(intercept + slope * times[0], 1e-8 * (1 + Math.Abs(level)));
            line.MeanPosition.ShouldBe(t.Average(), 1e-9);
            line.PositionSumOfSquares.ShouldBe(t.Sum(x => Math.Pow(x - t.Average(), 2)), 1e-7);
            line.ValueSumOfSquares.ShouldBe(y.Sum(v => Math.Pow(v - mean, 2)), 1e-7);
            line.ResidualSumOfSquares.ShouldBe(
                t.Zip(y, (x, v) => Math.Pow(v - mean - slope * (x - t.Average()), 2)).Sum(),
                1e-7
            );
        }
    }
}
