using OilCondition.Cleanup;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Cleanup.Stall;

/// <summary>How well a level is known where readings scatter in proportion: by what they scatter there, not by what they scattered at the start.</summary>
public class ObservedLevelTests
{
    [Theory]
    [InlineData(501)]
    [InlineData(502)]
    [InlineData(503)]
    public void The_scatter_of_the_start_is_not_that_of_the_level(int seed)
    {
        // 800 to 20 mg/kg over eight time constants, 4 %: a reading scatters by 0.8 at the level and by 32 at the start; some 20 of the 40 readings lie near the level.
        var random = new Random(seed);
        double[] hours = [.. Enumerable.Range(0, 40).Select(i => (double)i)];
        var curve = CleanupCurve.Fit(
            [.. hours.Select(Runs.At)],
            [.. hours.Select(hour => Runs.Exponential(hour, 800, 20, 0.2) * (1 + 0.04 * Runs.Normal(random)))]
        );

        var level = ObservedLevel.Of(curve, curve.Floor, 0.9);
        level.UncertaintyPpm.ShouldBeInRange(0.05, 0.8, $"seed {seed}");
        Math.Abs(level.Ppm - 20).ShouldBeLessThan(4 * level.UncertaintyPpm, $"seed {seed}");
    }
}
