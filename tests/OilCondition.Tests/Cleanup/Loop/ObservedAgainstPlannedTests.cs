using OilCondition.Cleanup;
using OilCondition.Tests.Treatment;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Cleanup.Loop;

/// <summary>The run beside the plan; truth is the balance of the tank, from which the runs are made.</summary>
public class ObservedAgainstPlannedTests
{
    /// <summary>By hand: k = 0.7 · 0.6 = 0.42 1/h; 50 g/h into 1740 kg is 28.736 mg/kg an hour, 68.42 above the floor of 20.</summary>
    [Fact]
    public void The_plan_by_hand()
    {
        var planned = LiveRuns.Planned(gramPerHour: 50);

        planned.RatePerHour.ShouldBe(0.42, 1e-12);
        planned.Level.PartsPerMillion.ShouldBe(88.419, 0.001);
    }

    [Fact]
    public void A_run_as_planned_agrees_in_all_three()
    {
        var beside = ObservedAgainstPlanned.Of(LiveRuns.Curve(0.7, 20, 50), LiveRuns.Planned(gramPerHour: 50));

        beside.RemovalAgreement.ShouldBe(PlanAgreement.Agrees);
        beside.IngressAgreement.ShouldBe(PlanAgreement.Agrees);
        beside.LevelAgreement.ShouldBe(PlanAgreement.Agrees);
        beside.RemovalPerPass.Estimate!.Value.DecimalFractions.ShouldBe(0.7, 0.003);
        beside.WaterIngress.Estimate!.Value.GramsPerHour.ShouldBe(50, 0.5);
        beside.Level.Estimate!.Value.PartsPerMillion.ShouldBe(88.42, 0.3);
        beside.Planned.Level.PartsPerMillion.ShouldBe(88.419, 0.001);
    }

    [Theory]
    [InlineData(0.66, PlanAgreement.Agrees)]
    [InlineData(0.6, PlanAgreement.Worse)]
    [InlineData(0.35, PlanAgreement.Worse)]
    [InlineData(0.8, PlanAgreement.Better)]
    public void Removal_per_pass(double eta, PlanAgreement expected) =>
        ObservedAgainstPlanned
            .Of(LiveRuns.Curve(eta, 20, 50), LiveRuns.Planned(gramPerHour: 50))
            .RemovalAgreement.ShouldBe(expected);

    [Theory]
    [InlineData(50, PlanAgreement.Agrees)]
    [InlineData(100, PlanAgreement.Worse)]
    [InlineData(5, PlanAgreement.Better)]
    public void Ingress_and_level(double gramPerHour, PlanAgreement expected)
    {
        var beside = ObservedAgainstPlanned.Of(LiveRuns.Curve(0.7, 20, gramPerHour), LiveRuns.Planned(gramPerHour: 50));

        beside.IngressAgreement.ShouldBe(expected);
        beside.LevelAgreement.ShouldBe(expected);
        beside.RemovalAgreement.ShouldBe(PlanAgreement.Agrees);
    }

    [Fact]
    public void A_level_below_the_planned_floor_is_better_not_an_ingress()
    {
        var beside = ObservedAgainstPlanned.Of(LiveRuns.Curve(0.7, 10, 0), LiveRuns.Planned(floor: 40));

        beside.WaterIngress.Outcome.ShouldBe(CleanupFigureOutcome.FloorContradicted);
        beside.IngressAgreement.ShouldBe(PlanAgreement.Better);
        beside.LevelAgreement.ShouldBe(PlanAgreement.Better);
    }

    [Fact]
    public void Three_readings_tell_nothing()
    {
        var beside = ObservedAgainstPlanned.Of(LiveRuns.Curve(0.7, 20, 50, count: 3), LiveRuns.Planned());

        beside.RemovalAgreement.ShouldBe(PlanAgreement.NotDetermined);
        beside.IngressAgreement.ShouldBe(PlanAgreement.NotDetermined);
        beside.LevelAgreement.ShouldBe(PlanAgreement.NotDetermined);
        beside.RemovalPerPass.Outcome.ShouldBe(CleanupFigureOutcome.TooFewReadings);
    }

    [Fact]
    public void A_floor_that_was_stated_is_not_compared()
    {
        var at = Runs.Evenly(20, 12);
        var curve = CleanupCurve.Fit(
            Runs.Moments(at),
            [.. at.Select(hour => Runs.Exponential(hour, 800, 20, 0.42))],
            new CleanupOptions(floor: 20)
        );

        ObservedAgainstPlanned.Of(curve, LiveRuns.Planned()).LevelAgreement.ShouldBe(PlanAgreement.NotDetermined);
    }

    /// <summary>Without sweep air the chamber's equilibrium is that of p alone, and the course of a plan has the η of the unit.</summary>
    [Fact]
    public void A_plan_without_sweep_air_gives_the_units_own_removal()
    {
        var plan = PurificationPlan.Create(Sump.Job(400, 100), Sump.Unit(eta: 0.6));
        var planned = PlannedPerformance.Of(plan);

        planned.RemovalPerPass.DecimalFractions.ShouldBe(0.6, 0.02);
        planned.FloorWithoutIngress.ShouldBe(plan.End.WaterFloor);
        planned.Level.PartsPerMillion.ShouldBe(plan.End.WaterLevel!.Value.PartsPerMillion, 0.01);
    }

    /// <summary>Vapour raises the equilibrium over the film: the course is slower than η says, and the run must not be blamed for it.</summary>
    [Fact]
    public void Sweep_air_makes_the_planned_course_slower_than_the_unit()
    {
        var plan = PurificationPlan.Create(Sump.Job(400, 60), Sump.Unit(eta: 0.6, airKilogramPerHour: 0.5));

        var planned = PlannedPerformance.Of(plan).RemovalPerPass.DecimalFractions;

        planned.ShouldBeInRange(0.05, 0.58);
    }

    [Fact]
    public void Tolerance_is_bounded() =>
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                ObservedAgainstPlanned.Of(
                    LiveRuns.Curve(0.7, 20, 50),
                    LiveRuns.Planned(),
                    tolerance: Ratio.FromPercent(51)
                )
            )
            .ParamName.ShouldBe("tolerance");
}
