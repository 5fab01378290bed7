using HarrowPoint.Generator;
using OilCondition.Purification;
using OilCondition.Tests.Architecture;
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
        (status.HoldingSince - TheTruth.GuideBearingCleanup.TargetAt).TotalHours.ShouldBeInRange(-1, 3);
        record.Condensate.ShouldBe(CondensateAgreement.Agrees);
    }

    [Fact]
    public void The_plan_meets_the_target_and_the_run_is_diagnosed_as_done()
    {
        var plan = PurificationPlan.Create(CleanupJob.Job.Task, CleanupJob.Job.Unit);
        plan.Outcome.ShouldBe(TreatmentOutcome.Reached);

        StallDiagnosis
            .Of(
                Status().Curve,
                MassFraction.FromPartsPerMillion(60),
                PlannedPerformance.Of(plan),
                RunConditions.Of(plan, Temperature.FromDegreesCelsius(60), Pressure.FromPascals(1500))
            )
            .Verdict.ShouldBe(StallVerdict.Done);
    }
}
