using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Tests.Properties;
using UnitsNet;

namespace OilCondition.Tests.Cleanliness;

public class KidneyLoopTests
{
    private static KidneyLoop Loop(double ingressionPerMinute) =>
        new(Volume.FromLiters(1000), VolumeFlow.FromLitersPerMinute(20), new FilterBeta(200), ingressionPerMinute);

    /// <summary>Second route: the balance stepped through in small steps (midpoint rule).</summary>
    [Fact]
    public void The_count_follows_the_balance_stepped_through()
    {
        double count = 20000;
        for (var i = 0; i < 60000; i++)
        {
            double Slope(double n) => (5e6 - (20000 * (1 - (1 / 200.0)) * n)) / 1e6;
            count += 0.001 * Slope(count + (0.0005 * Slope(count)));
        }

        Loop(5e6).CountAfter(20000, TimeSpan.FromMinutes(60)).ShouldBe(count, 1e-4);
    }

    [Fact]
    public void The_count_at_the_time_to_a_target_is_the_target() =>
        Gen.Select(Gen.Double[1000, 1e6], Gen.Double[300, 999])
            .Holds(
                (start, target) =>
                {
                    var time = Loop(5e6).TimeTo(start, target);

                    var expected = time.ShouldBeOfType<Arrival<TimeSpan>.Expected>().Estimate;
                    Loop(5e6).CountAfter(start, expected).ShouldBe(target, 1e-6 * target);
                    var turnovers = expected.TotalMinutes * 20 / 1000;
                    Loop(5e6).Turnovers(expected).ShouldBe(turnovers, 1e-9 * turnovers);
                }
            );

    [Fact]
    public void A_target_at_or_below_the_steady_state_is_never_reached()
    {
        Loop(5e6).TimeTo(20000, 251).ShouldBeOfType<Arrival<TimeSpan>.Never>(); // 5e6/19900 = 251.26 per mL by hand
        Loop(5e6).TimeTo(20000, 252).ShouldBeOfType<Arrival<TimeSpan>.Expected>();
        Loop(5e6).TimeTo(100, 1000).ShouldBeOfType<Arrival<TimeSpan>.Already>();
    }

    [Fact]
    public void A_ratio_needs_particles_on_both_sides()
    {
        Should.Throw<ArgumentException>(() => FilterBeta.FromCounts([100], [0]));
        Should.Throw<ArgumentException>(() => FilterBeta.FromCounts([], []));
        Should.Throw<ArgumentException>(() => FilterBeta.FromCounts([100], [100]));
        Should.Throw<ArgumentOutOfRangeException>(() => new FilterBeta(double.NaN));
        new FilterBeta(75).Downstream(1500).ShouldBe(20, 1e-12);
    }
}
