using OilCondition.Statistics;
using OilCondition.Tests.Statistics;

namespace OilCondition.Tests.Prognosis;

/// <summary>
/// Simulation: the mean moves 0 to 1, the limit lies at 1.4, nominal 90 %. A few cells of those that the coverage-life mode of the
/// benchmark project runs in full (docs/prognosis.md).
/// </summary>
public class LifeCoverageTests
{
    private const int Runs = 1000;
    private const double Limit = 1.4;

    [Theory]
    [InlineData(10, 0.25, 0.1)]
    [InlineData(16, 0.15, 0)]
    [InlineData(7, 0.3, 0)]
    [InlineData(12, 0, 0.15)]
    public void The_default_interval_holds_the_truth_as_often_as_is_aimed_at(int count, double randomWalk, double noise)
    {
        var random = new Random(20260503);
        var inside = 0;
        var early = 0;
        for (var run = 0; run < Runs; )
        {
            var (times, values, state, touched) = Draw(random, count, randomWalk, noise);
            if (touched)
            {
                continue;
            }

            run++;

            // The chance of the true remaining time: simulated for the walk, known for the line.
            var truth = randomWalk > 0 ? Passage(random, Limit - state, randomWalk) : Limit - 1;
            var chance = Degradation.Fit(times, values).Above(Limit).ChanceBefore(truth);
            inside += chance is >= 0.05 and <= 0.95 ? 1 : 0;
            early += chance < 0.05 ? 1 : 0;
        }

        // Aim 85 % and at most 10 % early; three standard errors of 1000 runs are 3.4 and 2.8 points.
        (100.0 * inside / Runs).ShouldBeGreaterThan(81.6);
        (100.0 * early / Runs).ShouldBeLessThan(12.8);
    }

    private static (double[] Times, double[] Values, double State, bool Touched) Draw(
        Random random,
        int count,
        double randomWalk,
        double noise
    )
    {
        double[] times = [.. Enumerable.Range(0, count).Select(i => (double)i / (count - 1))];
        var values = new double[count];
        double state = 0;
        for (var i = 0; i < count; i++)
        {
            if (i > 0)
            {
                var step = times[i] - times[i - 1];
                var next = state + step + randomWalk * Math.Sqrt(step) * DecayNoiseSource.Normal(random);
                if (
                    randomWalk > 0
                    && (
                        next >= Limit
                        || random.NextDouble()
                            < Math.Exp(-2 * (Limit - state) * (Limit - next) / (randomWalk * randomWalk * step))
                    )
                )
                {
                    return (times, values, state, true);
                }

                state = next;
            }

            values[i] = state + noise * DecayNoiseSource.Normal(random);
        }

        return (times, values, state, values[^1] > Limit);
    }

    /// <summary>First passage with drift 1 (Michael, Schucany and Haas 1976).</summary>
    private static double Passage(Random random, double distance, double randomWalk)
    {
        var shape = distance * distance / (randomWalk * randomWalk);
        var y = distance * Math.Pow(DecayNoiseSource.Normal(random), 2) / (2 * shape);
        var small = distance * (1 + y - Math.Sqrt(2 * y + y * y));
        return random.NextDouble() <= distance / (distance + small) ? small : distance * distance / small;
    }
}
