using OilCondition.Prognosis;
using UnitsNet;

namespace OilCondition.Tests.Prognosis;

public class NextSampleTests
{
    private static readonly MeasurandSeries Series = InventedSeries.Wandering(5);
    private static readonly DateTimeOffset Now = InventedSeries.End(Series);

    private static SamplingPlan Plan(double percent, double shortest, double longest) =>
        new(Ratio.FromPercent(percent), TimeSpan.FromDays(shortest), TimeSpan.FromDays(longest));

    [Fact]
    public void The_sample_is_due_when_the_risk_is_reached()
    {
        var life = InventedSeries.Default(Series, 0.35).ShouldBeOfType<RemainingLife.Crosses>();
        var next = NextSample.After([life], Now, Plan(5, 7, 2000), Now);

        next.Reason.ShouldBe(NextSampleReason.RiskReached);
        life.Crossing.ChanceUnseenBefore(next.At).ShouldBe(0.05, 1e-3);
        next.ChanceUnseen.ShouldBe(0.05, 1e-3);
        next.IsOverdue.ShouldBeFalse();

        // A smaller risk, or a second limit, is due sooner.
        NextSample.After([life], Now, Plan(1, 7, 2000), Now).At.ShouldBeLessThan(next.At);
        NextSample.After([life, life], Now, Plan(5, 7, 2000), Now).At.ShouldBeLessThan(next.At);
    }

    [Fact]
    public void A_later_now_does_not_put_the_sample_off()
    {
        RemainingLife Life(DateTimeOffset asOf) => LifeForecast.Of(Series, 0.35, LimitSide.Upper, asOf);
        var plan = Plan(5, 7, 2000);
        var due = NextSample.After([Life(Now)], Now, plan, Now).At;

        // Up to when it is due and beyond: that nothing is known to be crossed does not renew the last look.
        foreach (var later in new[] { Now.AddDays(60), due.AddDays(-1), due.AddDays(100) })
        {
            var next = NextSample.After([Life(later)], Now, plan, later);
            next.At.ShouldBe(due, TimeSpan.FromMinutes(2));
            next.IsOverdue.ShouldBe(later > due);
        }
    }

    [Fact]
    public void A_risk_that_the_shortest_interval_reaches_is_said_so()
    {
        var life = InventedSeries.Default(Series, 0.35).ShouldBeOfType<RemainingLife.Crosses>();
        var unseen = life.Crossing.ChanceUnseenBefore(Now.AddDays(100));

        NextSample
            .After([life], Now, Plan(100 * unseen / 1.5, 100, 2000), Now)
            .Reason.ShouldBe(NextSampleReason.ShortestInterval);
        NextSample
            .After([life], Now, Plan(100 * unseen * 1.1, 100, 2000), Now)
            .Reason.ShouldBe(NextSampleReason.RiskReached);
    }

    [Fact]
    public void The_plan_bounds_the_interval_and_says_so()
    {
        var life = InventedSeries.Default(Series, 0.35);
        var soon = NextSample.After([life], Now, Plan(5, 1500, 2000), Now);
        soon.Reason.ShouldBe(NextSampleReason.ShortestInterval);
        soon.At.ShouldBe(Now.AddDays(1500));
        soon.ChanceUnseen.ShouldBeGreaterThan(0.05);

        var late = NextSample.After([InventedSeries.Default(Series, 5)], Now, Plan(5, 30, 180), Now);
        late.Reason.ShouldBe(NextSampleReason.LongestInterval);
        late.At.ShouldBe(Now.AddDays(180));
        late.ChanceUnseen.ShouldBeLessThan(0.05);
    }

    [Fact]
    public void What_is_crossed_or_cannot_be_forecast_is_looked_at_soon_and_what_has_no_limit_by_routine()
    {
        NextSample After(params RemainingLife[] lives) =>
            NextSample.After(lives, Now.AddDays(-3), Plan(5, 14, 90), Now);
        var open = InventedSeries.Default(Series, 5);
        var crossed = After(open, InventedSeries.Default(Series, 0.11));
        (crossed.Reason, crossed.At, crossed.ChanceUnseen).ShouldBe(
            (NextSampleReason.LimitCrossed, Now.AddDays(11), 1)
        );

        // Nobody knows how fast it moves until there are five readings.
        var few = After(InventedSeries.Default(InventedSeries.Wandering(1, 3), 0.4));
        (few.Reason, few.At, few.ChanceUnseen).ShouldBe((NextSampleReason.NoForecast, Now.AddDays(11), 0));

        // Another limit that can be forecast speaks for the machine.
        After(open, InventedSeries.Default(InventedSeries.Wandering(1, 3), 0.4))
            .Reason.ShouldBe(NextSampleReason.LongestInterval);

        var nothing = After();
        (nothing.Reason, nothing.At, nothing.ChanceUnseen).ShouldBe(
            (NextSampleReason.NothingToForecast, Now.AddDays(87), 0)
        );

        var sudden = NextSample.ToConfirm(NextSampleReason.SuddenChange, Now.AddDays(-20), Plan(5, 14, 90), Now);
        (sudden.Reason, sudden.At, sudden.IsOverdue).ShouldBe((NextSampleReason.SuddenChange, Now.AddDays(-6), true));
    }

    [Fact]
    public void What_was_due_before_now_is_overdue()
    {
        var life = InventedSeries.Default(Series, 0.35);
        NextSample.After([life], Now, Plan(5, 14, 90), Now.AddDays(91)).IsOverdue.ShouldBeTrue();
        Should
            .Throw<ArgumentOutOfRangeException>(() => NextSample.After([life], Now.AddDays(1), Plan(5, 14, 90), Now))
            .ParamName.ShouldBe("lastSampleAt");
        Should.Throw<ArgumentOutOfRangeException>(() => Plan(0, 14, 90)).ParamName.ShouldBe("risk");
        Should.Throw<ArgumentOutOfRangeException>(() => Plan(5, 14, 13)).ParamName.ShouldBe("longest");
    }
}
