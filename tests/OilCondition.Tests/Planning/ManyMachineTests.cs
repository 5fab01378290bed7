using OilCondition.Planning;
using static OilCondition.Tests.Planning.Plant;

namespace OilCondition.Tests.Planning;

/// <summary>More machines than are enumerated without a bound, with plans whose best is known by hand.</summary>
public class ManyMachineTests
{
    private static readonly SchedulingOptions Brief = new(Start, TimeSpan.FromHours(1), effort: 1);

    /// <summary>
    /// Five times the same three machines, 1000 h apart: 10 h due at 12 with weight 1, 4 h due at 4, and 2 h due at 40. By hand the 4 h come first, then the
    /// 10 h, 2 h late; then the 2 h. Each time costs 2, and the last visit ends 16 h after its begin.
    /// </summary>
    [Fact]
    public void Copies_far_apart_cost_as_much_as_each_alone()
    {
        var tasks = Enumerable
            .Range(0, 5)
            .Select(copy => copy * 1000.0)
            .SelectMany(begin =>
                new[]
                {
                    Task($"{begin:0000} A", 10, begin + 12, release: begin),
                    Task($"{begin:0000} B", 4, begin + 4, release: begin),
                    Task($"{begin:0000} C", 2, begin + 40, release: begin),
                }
            )
            .ToList();

        var planned = Planned(tasks, options: Brief);

        planned.Schedule.WeightedLatenessHours.ShouldBe(10);
        planned.IsOptimal.ShouldBeTrue();
        planned.Schedule.UnitHours.ShouldBe(TimeSpan.FromHours(4016));
        Order(planned.Schedule).ShouldStartWith("0000 B 0000 A 0000 C 1000 B");
    }

    /// <summary>Twenty machines in a row of places 1 h apart, all due late: the unit goes along the row, 20 · 5 h of work and 20 h of ways.</summary>
    [Fact]
    public void Where_all_have_time_nothing_is_late_and_the_ways_are_short()
    {
        var places = Enumerable.Range(0, 21).Select(i => i == 0 ? "hall" : $"P{i:00}").ToList();
        var legs = places
            .SelectMany((from, i) => places.Select((to, k) => (from, to, Math.Abs(i - k) * 1.0)))
            .ToArray();
        var random = new Random(3);
        var tasks = places
            .Skip(1)
            .OrderBy(_ => random.Next())
            .Select(at => Task($"at {at}", 5, 2000, place: at))
            .ToList();

        var planned = Planned(tasks, Unit(travel: Travel(legs)), Brief);

        (planned.Schedule.WeightedLatenessHours, planned.IsOptimal).ShouldBe((0, true));
        planned.Schedule.UnitHours.ShouldBe(TimeSpan.FromHours(120));
        planned.MostUnitHoursFromBest.ShouldBe(TimeSpan.Zero);
    }

    /// <summary>Smith 1956: where all is due at once, by weight over length; the least is Σ w C in that order.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Twenty_that_are_due_at_once_go_by_weight_an_hour(int seed)
    {
        var random = new Random(seed);
        var tasks = Enumerable
            .Range(0, 20)
            .Select(i => Task($"M{i:00}", random.Next(1, 40), 0, random.Next(1, 10)))
            .ToList();
        double at = 0;
        double least = 0;
        foreach (var task in tasks.OrderByDescending(task => task.Weight / task.Process.TotalHours))
        {
            at += task.Process.TotalHours;
            least += task.Weight * at;
        }

        var planned = Planned(tasks, options: Brief);

        planned.Schedule.WeightedLatenessHours.ShouldBe(least, 1e-6);
        planned.IsOptimal.ShouldBeTrue();
    }

    /// <summary>Thirteen visits of 10 h by hour 125: one ends 5 h too late at the least, and which one is said.</summary>
    [Fact]
    public void Thirteen_that_do_not_fit_together()
    {
        var outcome = UnitSchedule
            .Plan([.. Enumerable.Range(0, 13).Select(i => Task($"M{i:00}", 10, 200, latestEnd: 125))], Unit(), Brief)
            .ShouldBeOfType<ScheduleOutcome.DoesNotFit>();

        outcome.Misfits.ShouldHaveSingleItem().ShortBy.ShouldBe(TimeSpan.FromHours(5));
    }
}
