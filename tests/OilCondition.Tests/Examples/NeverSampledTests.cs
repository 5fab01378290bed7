using HarrowPoint;
using OilCondition.Reporting;
using OilCondition.Tests.Architecture;

namespace OilCondition.Tests.Examples;

/// <summary>A machine of which there is no record goes through the whole main job beside the others.</summary>
public class NeverSampledTests
{
    private static readonly StationRecords TheStation = StationRecords.Read(
        RepositoryFiles.PathOf("examples", "HarrowPoint", "Data")
    );

    [Fact]
    public void A_fleet_with_a_machine_that_was_never_sampled_is_assessed_decided_reported_and_replayed()
    {
        List<(OilHistory History, LimitSet Limits)> fleet =
        [
            .. TheStation.Machines.Select(
                (one, i) => i == 2 ? (OilHistory.Create(one.History.Machine, [], [], []), one.Limits) : one
            ),
        ];
        var never = fleet[2].History.Machine.Id;

        List<ConditionAssessment> assessments =
        [
            .. fleet.Select(one =>
                ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(TheStation.AsOf))
            ),
        ];
        var decisions = TreatmentDecision.Of(assessments, TheStation.Station);
        var html = ConditionReport.ToHtml("Oil condition", assessments, new ReportOptions(decisions: decisions));
        var journal = AlertJournal.Empty.Reconcile(assessments);
        var backtest = Backtest.Of(
            [.. fleet.Select(one => one.History)],
            machine => fleet.Single(one => one.History.Machine.Id == machine.Id).Limits,
            new BacktestOptions(TheStation.AsOf.AddDays(-90), TheStation.AsOf)
        );

        assessments[2].ToString().ShouldContain("No sample and no sensor reading of this oil is on record");
        assessments[2].ToJson().ShouldContain("\"never-sampled\"");
        decisions.ShouldNotContain(decision => decision.Assessment.History.Machine.Id == never);
        html.ShouldContain("nobody knows its condition");
        journal.Find(never + "/undated/sampling")!.Severity.ShouldBe(Severity.Alert);
        backtest.DayCount.ShouldBeGreaterThan(0);
    }
}
