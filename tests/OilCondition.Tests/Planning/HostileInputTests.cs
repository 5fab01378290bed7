using OilCondition.Planning;
using static OilCondition.Tests.Planning.Plant;

namespace OilCondition.Tests.Planning;

/// <summary>Odd plants, and input that is refused.</summary>
public class HostileInputTests
{
    [Fact]
    public void Nothing_to_do()
    {
        var planned = Planned([]);

        planned.Schedule.Next.ShouldBeNull();
        (planned.IsOptimal, planned.Schedule.UnitHours).ShouldBe((true, TimeSpan.Zero));
        planned.ToString().ShouldStartWith("Next: nothing is left to visit.");
        planned.Schedule.ToCalendar().ShouldBe("no visits");
    }

    [Fact]
    public void Due_in_the_past_counts_from_then() =>
        Planned([Task("A", 10, due: -100, weight: 2)]).Schedule.WeightedLatenessHours.ShouldBe(220);

    [Fact]
    public void Weights_of_zero_leave_only_the_hours_of_the_unit()
    {
        var planned = Planned([Task("A", 10, -5, 0), Task("B", 10, -9, 0, release: 15)]);

        (planned.Schedule.WeightedLatenessHours, planned.IsOptimal).ShouldBe((0, true));
        planned.Schedule.UnitHours.ShouldBe(TimeSpan.FromHours(25));
    }

    /// <summary>The same instants, written in three offsets; the plan is written in that of its own moment.</summary>
    [Fact]
    public void Offsets_do_not_change_a_plan()
    {
        DateTimeOffset In(double hours, int offset) => At(hours).ToOffset(TimeSpan.FromHours(offset));
        UnitTask Of(int offset) =>
            new(
                "A",
                "hall",
                In(2, offset),
                In(9, offset - 1),
                TimeSpan.FromHours(8),
                windows: [new WorkWindow(In(1, offset), In(30, offset + 1))]
            );

        var plans = new[] { 0, 1, 2 }.Select(offset => Planned([Of(offset)]).ToString()).Distinct().ToList();

        plans.Count.ShouldBe(1);
        Planned([Of(2)]).Schedule.WeightedLatenessHours.ShouldBe(1);
        Planned([Of(0)], options: new SchedulingOptions(In(0, 2), TimeSpan.FromHours(1)))
            .Schedule.Visits[0]
            .ConnectStart.Offset.ShouldBe(TimeSpan.FromHours(2));
    }

    /// <summary>Quarter hours: 61 minutes take 75, asOf 06:07 begins at 06:15, a due date of 07:29 counts as 07:15.</summary>
    [Fact]
    public void Rounding_never_promises_too_much()
    {
        var task = new UnitTask("A", "hall", Start, Start.AddMinutes(89), TimeSpan.FromMinutes(61));
        var visit = Planned([task], options: new SchedulingOptions(Start.AddMinutes(7))).Schedule.Visits[0];

        visit.ConnectStart.ShouldBe(Start.AddMinutes(15));
        visit.ProcessEnd.ShouldBe(Start.AddMinutes(90));
        visit.Lateness.ShouldBe(TimeSpan.FromMinutes(15));
    }

    /// <summary>The running visit ends at hour 5; the crew comes at 24. It counts as late in its own line, and not in the sum.</summary>
    [Fact]
    public void A_visit_under_way_comes_first()
    {
        var running = new RunningVisit(Task("R", 12, due: 3, disconnect: 1), At(-8), At(5));
        var planned = Planned([Task("A", 4, 40)], Unit(WorkWindow.Daily(At(0), At(5), 9), running: running));

        Order(planned.Schedule).ShouldBe("R A");
        planned.Schedule.Visits[0].DisconnectEnd.ShouldBe(At(25));
        planned.Schedule.Visits[0].Lateness.ShouldBe(TimeSpan.FromHours(2));
        planned.Schedule.Next!.ConnectStart.ShouldBe(At(25));
        planned.Schedule.WeightedLatenessHours.ShouldBe(0);
    }

    /// <summary>The way of 5 h does not end before the unit is away from 3 to 8, so that it begins after it.</summary>
    [Fact]
    public void No_way_is_travelled_while_the_unit_is_unavailable()
    {
        var visit = Planned(
            [Task("A", 4, 40, place: "dam")],
            Unit(unavailable: [Hours(3, 8)], travel: Travel(("hall", "dam", 5)))
        ).Schedule.Visits[0];

        (visit.Leave, visit.Arrive, visit.ConnectStart).ShouldBe((At(8), At(13), At(13)));
    }

    [Theory]
    [InlineData("release", WaitReason.EarliestStart)]
    [InlineData("window", WaitReason.Window)]
    [InlineData("crew", WaitReason.Crew)]
    [InlineData("unit", WaitReason.Unit)]
    [InlineData("none", WaitReason.None)]
    public void A_wait_has_its_reason(string what, WaitReason reason)
    {
        var task = Task(
            "A",
            4,
            40,
            connect: 1,
            release: what == "release" ? 7 : 0,
            windows: what == "window" ? [Hours(7, 30)] : []
        );
        var unit = Unit(what == "crew" ? [Hours(7, 20)] : null, what == "unit" ? [Hours(2, 7)] : null);
        var visit = Planned([task], unit).Schedule.Visits[0];

        visit.WaitFor.ShouldBe(reason);
        visit.WaitBefore.ShouldBe(TimeSpan.FromHours(reason == WaitReason.None ? 0 : 7));
    }

    [Fact]
    public void The_order_of_the_tasks_does_not_matter_and_two_runs_are_alike()
    {
        var random = new Random(5);
        var tasks = Enumerable
            .Range(0, 12)
            .Select(i =>
                Task(
                    $"M{i:00}",
                    random.Next(2, 30),
                    random.Next(0, 150),
                    random.Next(1, 4),
                    i % 2 == 0 ? "hall" : "dam"
                )
            )
            .ToList();
        var unit = Unit(travel: Travel(("hall", "dam", 3)));
        var options = new SchedulingOptions(Start, TimeSpan.FromHours(1), effort: 1);
        var first = UnitSchedule.Plan(tasks, unit, options);

        UnitSchedule.Plan(tasks, unit, options).ToString().ShouldBe(first.ToString());
        tasks.Reverse();
        UnitSchedule.Plan(tasks, unit, options).ToString().ShouldBe(first.ToString());
        random.Shuffle(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(tasks));
        var shuffled = (ScheduleOutcome.Planned)UnitSchedule.Plan(tasks, unit, options);
        shuffled.ToString().ShouldBe(first.ToString());
        shuffled.Schedule.ToCalendar().ShouldBe(((ScheduleOutcome.Planned)first).Schedule.ToCalendar());
    }

    [Fact]
    public void Sixty_machines_have_a_plan_and_a_bound()
    {
        var tasks = Enumerable.Range(0, 60).Select(i => Task($"M{i:00}", 5 + i % 7, 3 * i, 1 + i % 3)).ToList();
        var planned = Planned(tasks, options: new SchedulingOptions(Start, TimeSpan.FromHours(1), effort: 1));

        planned.Schedule.Visits.Count.ShouldBe(60);
        planned.MostWeightedHoursFromBest.ShouldBeInRange(0, planned.Schedule.WeightedLatenessHours);
        planned.GainOverDueDate!.Value.ShouldBeGreaterThan(0);
    }

    [Fact]
    public void Without_effort_the_better_rule_stands()
    {
        UnitTask[] tasks = [Task("A", 10, 12), Task("B", 4, 4)];
        var planned = Planned(tasks, options: new SchedulingOptions(Start, TimeSpan.FromHours(1), effort: 0));

        planned.IsSearched.ShouldBeFalse();
        planned.Schedule.WeightedLatenessHours.ShouldBe(
            Math.Min(planned.ByDueDate.WeightedLatenessHours, planned.ByUrgency.WeightedLatenessHours)
        );
        planned.MostWeightedHoursFromBest.ShouldBe(2); // alone, neither is late
        planned.ToString().ShouldContain("The solver did not search");
    }

    [Fact]
    public void Bad_input_is_refused_by_name()
    {
        Refused(() => Task("A", 0)).ShouldContain("process is 0 h; allowed: a finite number above 0");
        Refused(() => Task("A", 9000)).ShouldContain("process is 9000 h; allowed: 0 to 8784 h");
        Refused(() => Task("A", 1, weight: double.NaN)).ShouldContain("weight is NaN; allowed: 0 to 10000");
        Refused(() => Task("A", 1, connect: -1)).ShouldContain("connect is -1 h; allowed: 0 to 8784 h");
        Refused(() => Task(" ", 1)).ShouldContain("id is blank");
        Refused(() => Hours(5, 5)).ShouldContain("allowed: after from, 2026-03-02 11:00");
        Refused(() => Travel(("a", "b", 1), ("a", "b", 2))).ShouldContain("a to b twice");
        Refused(() => Travel(("a", "a", 1))).ShouldContain("0 h within one place");
        Refused(() => Unit(hiredFrom: 5, hiredUntil: 4)).ShouldContain("hiredUntil is");
        Refused(() => _ = new SchedulingOptions(Start, TimeSpan.Zero))
            .ShouldContain("step is 0 min; allowed: 1 to 1440 min");
        Refused(() => _ = new SchedulingOptions(default)).ShouldContain("asOf is 0001-01-01");
        Refused(() => UnitSchedule.Plan([Task("A", 1), Task("A", 2)], Unit(), Hourly))
            .ShouldContain("tasks has A twice");
        Refused(() => UnitSchedule.Plan([Task("A", 1, place: "moon")], Unit(), Hourly))
            .ShouldContain("No travel time from hall to moon is stated");
        Refused(() => Unit(running: new RunningVisit(Task("R", 1, place: "dam"), At(0), At(1))))
            .ShouldContain("place is hall; the running visit of R is at dam");
    }

    private static string Refused(Action call) => Should.Throw<ArgumentException>(call).Message;
}
