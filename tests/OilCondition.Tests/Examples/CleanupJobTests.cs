using HarrowPoint.Generator;
using OilCondition.Cleanup;
using OilCondition.Tests.Architecture;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Examples;

/// <summary>The example of a whole cleanup: what the generator put into the invented log is found again.</summary>
public class CleanupJobTests
{
    private static readonly string Data = RepositoryFiles.PathOf("examples", "HarrowPoint", "Data");
    private static readonly Truth TheTruth = Truth.Read(Path.Combine(Data, "truth.json"));

    private static CleanupStatus Status() =>
        CleanupMonitor
            .Of(CleanupJob.Job.Monitoring, CleanupJob.Job.Log(Path.Combine(Data, "sensor-HP-TGB1-2025-12.csv")))
            .Status();

    [Fact]
    public void The_log_gives_back_the_planted_curve()
    {
        var curve = Status().Curve;
        var truth = TheTruth.GuideBearingCleanup;

        curve.RatePerHour.ShouldBe(truth.RatePerHour, 0.05 * truth.RatePerHour);
        curve.Floor.ShouldBe(truth.FloorMgPerKg, 0.1 * truth.FloorMgPerKg);
    }

    [Fact]
    public void The_target_is_met_and_held_after_the_planted_moment()
    {
        var status = Status();
        var record = CleanupRecord.Of(status, CleanupJob.Job.Facts);

        record.Verdict.ShouldBe(CleanupVerdict.TargetMet);
        (status.HoldingSince!.Value - TheTruth.GuideBearingCleanup.TargetAt).TotalHours.ShouldBeInRange(-1, 3);
        record.CondensateAgrees.ShouldBe(true);
        record.WaterCameIn.ShouldNotBeNull();
        status.Arrival.ShouldBeOfType<Arrival<DateTimeOffset>.Already>().At.ShouldBe(status.MetAt!.Value);
    }

    [Fact]
    public void The_plan_meets_the_target_and_the_run_is_diagnosed_as_done()
    {
        var plan = PurificationPlan.Create(CleanupJob.Job.Task, CleanupJob.Job.Unit);
        plan.MeetsTarget.ShouldBeTrue();

        StallDiagnosis
            .Of(Status(), RunConditions.Of(plan, Temperature.FromDegreesCelsius(60), Pressure.FromPascals(1500)))
            .Verdict.ShouldBe(StallVerdict.Done);
    }

    /// <summary>Ten grams an hour were put into the log of the leaking cooler.</summary>
    [Fact]
    public void The_stalled_run_names_the_leak()
    {
        var status = CleanupMonitor.Of(CleanupJob.Job.Monitoring, CleanupJob.StalledRun.Log()).Status();
        status.Phase.ShouldBe(CleanupPhase.Stalled);
        status.Arrival.ShouldBeOfType<Arrival<DateTimeOffset>.Never>();

        var why = StallDiagnosis.Of(
            status,
            RunConditions.Of(CleanupJob.Job.Plan, Temperature.FromDegreesCelsius(60), Pressure.FromPascals(1500))
        );
        why.Verdict.ShouldBe(StallVerdict.Stalled);
        why.Causes[0].Kind.ShouldBe(StallCauseKind.WaterIngress);
        why.Causes[0].Evidence.Single(one => one.Name == "water that comes in").Value!.Value.ShouldBe(10, 0.7);

        var record = CleanupRecord.Of(status, CleanupJob.Job.FactsOf(240, 0.78), why);
        record.CondensateAgrees.ShouldBe(true);
        record.WaterCameIn!.Estimate!.Value.Liters.ShouldBe(0.6, 0.05);
    }

    [Fact]
    public void The_comparison_shows_all_treatments_and_why_not()
    {
        var rows = CleanupJob.Job.Compare().Rows;
        rows.Count.ShouldBe(9);
        rows.Single(row => row.Treatment == CleanupJob.Job.Train).MeetsTarget.ShouldBeTrue();
        rows.Where(row => !row.MeetsTarget)
            .Select(row => row.WhyNot!.Value)
            .ShouldBeSubsetOf([WhyNot.FloorAboveTarget, WhyNot.NotTouched, WhyNot.TakesTooLong]);
    }
}
