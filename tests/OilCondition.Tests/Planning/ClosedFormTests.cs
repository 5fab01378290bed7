using CsCheck;
using OilCondition.Planning;
using OilCondition.Tests.Properties;
using static OilCondition.Tests.Planning.Plant;

namespace OilCondition.Tests.Planning;

/// <summary>Plans whose best order is known: by hand, or by a theorem.</summary>
public class ClosedFormTests
{
    private static readonly SchedulingOptions Brief = new(Start, TimeSpan.FromHours(1), effort: 0.1);

    private static readonly Gen<UnitTask[]> Tasks =
        from count in Gen.Int[1, 9]
        from lengths in Gen.Int[1, 40].Array[count]
        from weights in Gen.Int[1, 10].Array[count]
        from dues in Gen.Int[0, 150].Array[count]
        select Enumerable.Range(0, count).Select(i => Task($"M{i}", lengths[i], dues[i], weights[i])).ToArray();

    /// <summary>Smith 1956: where all is due at once, by weight over length; the least is then Σ w C in that order.</summary>
    [Fact]
    public void Due_at_once_the_most_weight_an_hour_goes_first() =>
        Tasks.Holds(
            drawn =>
            {
                var tasks = drawn.Select(task => Task(task.Id, task.Process.TotalHours, 0, task.Weight)).ToArray();
                double at = 0;
                double least = 0;
                foreach (var task in tasks.OrderByDescending(task => task.Weight / task.Process.TotalHours))
                {
                    at += task.Process.TotalHours;
                    least += task.Weight * at;
                }

                var planned = Planned(tasks, options: Brief);
                planned.Schedule.WeightedLatenessHours.ShouldBe(least, 1e-6);
                planned.ByUrgency.WeightedLatenessHours.ShouldBe(least, 1e-6); // the rule is Smith's where nothing has slack
            },
            iter: 15
        );

    /// <summary>Jackson 1955: no order has a smaller largest lateness than that of the due dates.</summary>
    [Fact]
    public void By_due_date_the_largest_lateness_is_least() =>
        Tasks.Holds(
            drawn =>
            {
                var planned = Planned(drawn, options: Brief);
                Largest(planned.ByDueDate).ShouldBeLessThanOrEqualTo(Largest(planned.Schedule));
                Largest(planned.ByDueDate).ShouldBeLessThanOrEqualTo(Largest(planned.ByUrgency));
                var by = planned.ByDueDate.Visits.Select(visit => visit.Task.Due).ToList();
                by.ShouldBe(by.Order());
            },
            iter: 15
        );

    [Fact]
    public void A_plan_is_never_worse_than_a_rule() =>
        Tasks.Holds(
            drawn =>
            {
                var planned = Planned(drawn, options: Brief);
                planned.GainOverUrgency!.Value.ShouldBeGreaterThanOrEqualTo(0);
                planned.GainOverDueDate!.Value.ShouldBeGreaterThanOrEqualTo(0);
            },
            iter: 15
        );

    /// <summary>
    /// By hand: A needs 10 h and is due at 12, B needs 4 h and is due at 4. B first: A ends at 14, 2 h late; A first: B ends at 14, 10 h late. With weights 6
    /// and 1 the costs are 12 and 10, so that A goes first.
    /// </summary>
    [Theory]
    [InlineData(1, 1, "B A", 2)]
    [InlineData(6, 1, "A B", 10)]
    [InlineData(5, 1, "A B", 10)] // a tie: both cost 10 and the unit is free at 14 either way
    public void Two_machines(double weightA, double weightB, string order, double hours)
    {
        var planned = Planned([Task("A", 10, 12, weightA), Task("B", 4, 4, weightB)]);

        planned.Schedule.WeightedLatenessHours.ShouldBe(hours);
        planned.IsOptimal.ShouldBeTrue();
        planned.Schedule.UnitHours.ShouldBe(TimeSpan.FromHours(14));
        if (weightA != 5)
        {
            Order(planned.Schedule).ShouldBe(order);
        }
    }

    /// <summary>
    /// By hand: nothing is late, so that only the ways count. Hall to dam 3 h, dam to gate 1 h, hall to gate 5 h: by dam 3 + 2 + 1 + 2 = 8 h, by gate
    /// 5 + 2 + 1 + 2 = 10 h.
    /// </summary>
    [Fact]
    public void Where_nothing_is_late_the_unit_is_free_early()
    {
        var planned = Planned(
            [Task("gate", 2, 100, place: "gate"), Task("dam", 2, 100, place: "dam")],
            Unit(travel: Travel(("hall", "dam", 3), ("dam", "gate", 1), ("hall", "gate", 5)))
        );

        Order(planned.Schedule).ShouldBe("dam gate");
        planned.Schedule.UnitHours.ShouldBe(TimeSpan.FromHours(8));
        planned.MostUnitHoursFromBest.ShouldBe(TimeSpan.Zero);
    }

    /// <summary>By hand: hall to dam 1 h and back 6 h; dam first, as due, costs 1 + 2 + 6 + 2 = 11 h; hall first 2 + 1 + 2 = 5 h.</summary>
    [Fact]
    public void The_way_back_may_take_longer()
    {
        var planned = Planned(
            [Task("at hall", 2, 100), Task("at dam", 2, 50, place: "dam")],
            Unit(travel: Travel(("hall", "dam", 1), ("dam", "hall", 6)))
        );

        planned.Schedule.UnitHours.ShouldBe(TimeSpan.FromHours(5));
        planned.ByDueDate.UnitHours.ShouldBe(TimeSpan.FromHours(11));
    }

    /// <summary>
    /// By hand, crew from hour 0 to 8 of each day: connect 0 to 2, warm until 5, treated until 25, hour 1 of the second day; off 25 to 26. The next: connect
    /// 26 to 28, treated until 41; the crew has gone at 32, off at 48.
    /// </summary>
    [Fact]
    public void Every_time_of_a_visit_is_as_by_hand()
    {
        var planned = Planned(
            [
                Task("A", 20, due: 20, weight: 2, connect: 2, heatUp: 3, disconnect: 1),
                Task("B", 13, due: 60, connect: 2, disconnect: 1),
            ],
            Unit(crewHours: WorkWindow.Daily(At(0), At(8), 10))
        );

        var (a, b) = (planned.Schedule.Visits[0], planned.Schedule.Visits[1]);
        (a.ConnectStart, a.ProcessStart, a.ProcessEnd, a.DisconnectStart, a.DisconnectEnd).ShouldBe(
            (At(0), At(5), At(25), At(25), At(26))
        );
        a.Lateness.ShouldBe(TimeSpan.FromHours(5));
        (b.ConnectStart, b.ProcessStart, b.ProcessEnd, b.DisconnectStart, b.DisconnectEnd).ShouldBe(
            (At(26), At(28), At(41), At(48), At(49))
        );
        b.WaitAfter.ShouldBe(TimeSpan.FromHours(7));
        b.SlackToDue.ShouldBe(TimeSpan.FromHours(19));
        planned.Schedule.WeightedLatenessHours.ShouldBe(10);
        planned.Schedule.Next.ShouldBe(a);
    }

    private static TimeSpan Largest(UnitSchedule schedule) => schedule.Visits.Max(visit => -visit.SlackToDue);
}
