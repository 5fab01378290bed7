using HarrowPoint;
using HarrowPoint.Generator;
using OilCondition.Prognosis;
using OilCondition.Reporting;
using OilCondition.Tests.Architecture;
using UnitsNet;

namespace OilCondition.Tests.Examples;

/// <summary>The invented station: its files are reproducible, and each machine's story is found.</summary>
public class HarrowPointTests
{
    private static readonly string Data = RepositoryFiles.PathOf("examples", "HarrowPoint", "Data");
    private static readonly StationRecords TheStation = StationRecords.Read(Data);
    private static readonly Truth TheTruth = Truth.Read(Path.Combine(Data, "truth.json"));

    private static ConditionAssessment Assess(string id)
    {
        var (history, limits) = TheStation.Machines.Single(one => one.History.Machine.Id == id);
        return ConditionAssessor.Assess(history, limits, new AssessmentOptions(TheStation.AsOf));
    }

    [Fact]
    public void The_generator_writes_the_same_files_again()
    {
        foreach (var (name, text) in StationGenerator.Generate())
        {
            File.ReadAllText(Path.Combine(Data, name)).ShouldBe(text.TrimStart('\uFEFF'), name);
        }
    }

    [Fact]
    public void Every_planted_bad_cell_is_reported_and_no_other() =>
        TheStation.Problems.Count.ShouldBe(TheTruth.BadCells);

    [Fact]
    public void The_swapped_bottles_are_found_and_no_others() =>
        TheStation
            .Machines.SelectMany(one => one.History.Issues)
            .Where(issue => issue.Kind == HistoryIssueKind.SuspectSample)
            .Select(issue => issue.SampleNumber)
            .Order()
            .ShouldBe(TheTruth.SwappedSamples.Order());

    [Fact]
    public void The_leaking_cooler_brings_the_water_back()
    {
        var finding = Assess("HP-TGB1").Findings.OfType<RemainingLifeFinding>().Single();

        finding.FollowsTreatment.ShouldBeTrue();
        var slope = finding.Life.Trend.Slope;
        Math.Abs(slope - TheTruth.ReturnMgPerKgPerDay).ShouldBeLessThan(4 * finding.Life.Trend.SlopeStandardError);
    }

    /// <summary>What was planted after the treatment comes in: 1800 L of 0.872 kg/L.</summary>
    [Fact]
    public void The_water_that_comes_in_is_estimated_from_the_titrations()
    {
        var history = TheStation.Machines.Single(one => one.History.Machine.Id == "HP-TGB1").History;
        var rising = IngressEstimate
            .Of(history, Density.FromKilogramsPerCubicMeter(872), TheStation.AsOf)
            .ShouldBeOfType<IngressEstimate.Rising>();

        rising.LitresPerDay.Contains(TheTruth.ReturnMgPerKgPerDay * 1e-6 * 1800 * 0.872 / 0.9982).ShouldBeTrue();
    }

    [Fact]
    public void The_governor_collects_dirt() =>
        Assess("HP-GOV1").Alerts.Select(alert => alert.Key).ShouldBe(["HP-GOV1/2024-05-14/dirt"]);

    [Fact]
    public void The_gearbox_has_free_water_at_standstill_only() =>
        Assess("HP-IGG1").Alerts.Single().Key.ShouldBe("HP-IGG1/undated/water");

    [Fact]
    public void The_pump_needs_an_oil_change_before_the_truth_says_so()
    {
        var change = Assess("HP-CWP2").Recommendations.Single(one => one.Action == RecommendedAction.PlanOilChange);
        var date = DateTime.Parse(change.Quantities.Single(item => item.Name == "no later than").Text);

        date.ShouldBeInRange(TheStation.AsOf.DateTime, TheTruth.PumpAcidAlarmAt.DateTime);
    }

    [Fact]
    public void The_healthy_bearing_raises_nothing() => Assess("HP-TGB2").Alerts.ShouldBeEmpty();

    /// <summary>Its past, month by month: both limits that water crossed were told of. The healthy bearing raised one false alert: nine times 0.12 mgKOH/g, then 0.14.</summary>
    [Fact]
    public void The_past_of_the_station_is_replayed()
    {
        var backtest = Trust.Replay(TheStation);

        backtest.MachineCount.ShouldBe(6);
        backtest.NotReplayed.ShouldBeEmpty();
        backtest.Crossings.Select(one => one.MachineId).ShouldBe(["HP-DTG1", "HP-TGB1"]);
        backtest.Crossings.ShouldAllBe(one => one.Measurand.Equals(Measurands.WaterContent) && !one.IsSilent);
        backtest
            .Alerts.Where(one => one.MachineId == "HP-TGB2")
            .Count(one => one.Outcome != Backtest.AlertOutcome.NotJudged)
            .ShouldBeLessThanOrEqualTo(1);
        backtest
            .Alerts.Count(one => one.Alert.Key == "HP-TGB1/undated/water")
            .ShouldBe(2, "before the treatment and after it");
    }

    [Fact]
    public void The_cleanup_under_way_ends_when_the_truth_says_so()
    {
        var cleanup = Assess("HP-DTG1").Cleanup!;
        var expected = cleanup.Status.CurveArrival.ShouldBeOfType<Arrival<DateTimeOffset>.Expected>();

        TheTruth.GateUnitCleanup.TargetAt.ShouldBeInRange(expected.Earliest, expected.Latest);
        cleanup.Status.Curve.RatePerHour.ShouldBe(TheTruth.GateUnitCleanup.RatePerHour, 0.01);
    }

    [Fact]
    public void The_report_names_every_machine_and_caution_and_repeats_byte_for_byte()
    {
        List<ConditionAssessment> assessments = [.. TheStation.Machines.Select(one => Assess(one.History.Machine.Id))];
        var html = ConditionReport.ToHtml("Oil condition", assessments, new ReportOptions("invented <station>"));

        ConditionReport.ToHtml("Oil condition", assessments, new ReportOptions("invented <station>")).ShouldBe(html);
        html.ShouldContain("invented &lt;station&gt;");
        foreach (var assessment in assessments)
        {
            html.ShouldContain(assessment.History.Machine.Name);
            assessment.Alerts.ShouldAllBe(alert => html.Contains(alert.Key));
        }

        html.ShouldContain("Hot oil and hot surfaces burn");
        html.ShouldNotContain("NaN", Case.Sensitive);
    }
}
