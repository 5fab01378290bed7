using OilCondition.Planning;
using static OilCondition.Tests.Planning.Plant;

namespace OilCondition.Tests.Planning;

/// <summary>What does not fit is named, with the hours that are missing; all cases by hand.</summary>
public class MisfitTests
{
    [Fact]
    public void A_window_that_is_too_short()
    {
        var outcome = NoFit([
            Task("HP-X", 40, 100, connect: 1, disconnect: 1, windows: [Hours(0, 20), Hours(50, 80)]),
            Task("HP-Y", 5, 100),
        ]);

        var misfit = outcome.Misfits.ShouldHaveSingleItem();
        misfit.Reason.ShouldBe(MisfitReason.WindowTooShort);
        misfit.ShortBy.ShouldBe(TimeSpan.FromHours(12));
        misfit.ToString().ShouldBe("HP-X: needs 42 h, its longest window is 30 h: 12 h short");
        outcome.IsProven.ShouldBeTrue();
        Order(outcome.Nearest).ShouldBe("HP-Y");
        outcome.Nearest.LeftOut.ShouldHaveSingleItem().Id.ShouldBe("HP-X");
    }

    /// <summary>The window is long enough, and has begun: 20 h are left of it.</summary>
    [Fact]
    public void A_window_that_ends_while_processing() =>
        NoFit([Task("HP-X", 30, 100, windows: [Hours(-20, 20)])]).Misfits[0].ShortBy.ShouldBe(TimeSpan.FromHours(10));

    [Fact]
    public void Windows_of_the_past() =>
        NoFit([Task("HP-X", 30, 100, windows: [Hours(-20, -10)])])
            .Misfits[0]
            .Text.ShouldBe("needs 30 h, no window is left: 30 h short");

    /// <summary>The unit is away from hour 10 to 20, in the midst of the window: stretches of 10 and 15 h are left.</summary>
    [Fact]
    public void An_outage_of_the_unit_that_starts_midway()
    {
        var misfit = NoFit(
            [Task("HP-X", 18, 100, windows: [Hours(0, 35)])],
            Unit(unavailable: [Hours(10, 20)])
        ).Misfits[0];

        (misfit.Reason, misfit.ShortBy).ShouldBe((MisfitReason.UnitAwayTooOften, TimeSpan.FromHours(3)));
    }

    [Fact]
    public void A_hire_that_is_too_short()
    {
        var misfit = NoFit([Task("HP-X", 60, 100)], Unit(hiredFrom: 10, hiredUntil: 50)).Misfits[0];

        (misfit.Reason, misfit.ShortBy).ShouldBe((MisfitReason.UnitAwayTooOften, TimeSpan.FromHours(20)));
    }

    [Fact]
    public void Attended_hours_that_no_crew_has()
    {
        var unit = Unit(crewHours: WorkWindow.Daily(At(0), At(8), 20));
        var misfit = NoFit([Task("HP-X", 10, 100, connect: 1, isAttended: true)], unit).Misfits[0];

        (misfit.Reason, misfit.ShortBy).ShouldBe((MisfitReason.CrewHours, TimeSpan.FromHours(3)));
        Planned([Task("HP-X", 7, 100, connect: 1, isAttended: true)], unit)
            .Schedule.UnitHours.ShouldBe(TimeSpan.FromHours(8));
    }

    [Fact]
    public void A_latest_end_that_no_plan_can_keep()
    {
        var misfit = NoFit([Task("HP-X", 30, 100, release: 10, latestEnd: 35)]).Misfits[0];

        (misfit.Reason, misfit.ShortBy).ShouldBe((MisfitReason.LatestEnd, TimeSpan.FromHours(5)));
    }

    [Fact]
    public void A_machine_out_of_reach()
    {
        var misfit = NoFit(
            [Task("HP-X", 10, 100, place: "dam", windows: [Hours(0, 25)])],
            Unit(travel: Travel(("hall", "dam", 20)))
        ).Misfits[0];

        (misfit.Reason, misfit.ShortBy).ShouldBe((MisfitReason.Unreachable, TimeSpan.FromHours(5)));
    }

    /// <summary>Each fits alone by hour 20; both together take 24 h, so that one ends 4 h too late.</summary>
    [Fact]
    public void Two_that_fit_alone_and_not_together()
    {
        var outcome = NoFit([Task("A", 12, 100, latestEnd: 20), Task("B", 12, 100, latestEnd: 20), Task("C", 12, 100)]);

        var misfit = outcome.Misfits.ShouldHaveSingleItem();
        (misfit.Reason, misfit.ShortBy).ShouldBe((MisfitReason.Together, TimeSpan.FromHours(4)));
        outcome.IsProven.ShouldBeTrue();
        outcome.Nearest.Visits[^1].Task.Id.ShouldBe("C");
    }

    /// <summary>One window of 20 h for two visits of 12 h: the second would begin at 12, its last begin is 8.</summary>
    [Fact]
    public void Two_for_one_window()
    {
        var outcome = NoFit([Task("A", 12, 100, windows: [Hours(0, 20)]), Task("B", 12, 100, windows: [Hours(0, 20)])]);

        outcome.Misfits.ShouldHaveSingleItem().ShortBy.ShouldBe(TimeSpan.FromHours(4));
        outcome.Nearest.LeftOut.Count.ShouldBe(1);
        outcome.IsProven.ShouldBeTrue();
    }

    /// <summary>Earliest due date first breaks B's latest end, the plan does not: the rule is said not to fit.</summary>
    [Fact]
    public void A_rule_that_does_not_fit()
    {
        var planned = Planned([Task("A", 10, 10), Task("B", 5, 20, latestEnd: 8)]);

        Order(planned.Schedule).ShouldBe("B A");
        planned.GainOverDueDate.ShouldBeNull();
        planned.ByDueDate.Visits[1].PastLatestEnd.ShouldBe(TimeSpan.FromHours(7));
        planned.ToString().ShouldContain("does not fit");
    }
}
