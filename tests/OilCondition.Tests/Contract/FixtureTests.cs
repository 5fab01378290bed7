using System.Text.Json;
using OilCondition.Contracts;
using OilCondition.Tests.Architecture;
using OilCondition.Tests.Properties;
using Schemas;

namespace OilCondition.Tests.Contract;

/// <summary>
/// Documents of version 1 as they were first written, of the invented Harrow Point. They stay readable for as long as there is a version 1: neither this
/// class nor a file in <c>fixtures/v1</c> is ever changed. What a later 1.x adds gets a folder and a class of its own.
/// </summary>
public class FixtureTests
{
    public static TheoryData<string> All =>
        ["assessment", "cleanup-record", "column-map", "decision", "history", "journal", "limit-set", "station"];

    private static string Fixture(string id) =>
        RepositoryFiles.Read("tests", "OilCondition.Tests", "Contract", "fixtures", "v1", id + ".json");

    [Theory]
    [MemberData(nameof(All))]
    public void It_keeps_to_the_schema_of_version_1_and_loses_nothing_in_the_classes(string id)
    {
        var json = Fixture(id);
        PublishedSchema.Of(id).Faults(json).ShouldBeEmpty();
        var type = ContractSchema.All.Single(schema => schema.Id == id).Root;
        var document = (ContractDocument)JsonSerializer.Deserialize(json, type, ContractJson.Default)!;
        document.Format.ShouldBe("oilcondition/" + id);
        document.Version.ShouldBe("1.0");
        using var before = JsonDocument.Parse(json.Replace("Z\"", "+00:00\"")); // One moment, written in two ways.
        using var after = JsonDocument.Parse(document.ToString());
        JsonElement.DeepEquals(before.RootElement, after.RootElement).ShouldBeTrue();
    }

    [Fact]
    public void The_history_is_read_with_all_its_issues()
    {
        var history = OilHistory.Parse(Fixture("history"));
        history.Samples.Count.ShouldBe(2);
        history.Samples[0].Readings[Measurands.WaterContent].ShouldBe(new Reading(150, Qualifier.None, "ASTM D6304"));
        history.Samples[0].Readings[Measurands.Iron].ShouldBe(new Reading(5, Qualifier.LessThan));
        history.Samples[0].Texts["Remark"].ShouldBe("clear \"bright\" é");
        history.Samples[1].TakenAt.Ticks.ShouldBe(new DateTime(2026, 2, 10, 8, 0, 0).Ticks + 1_234_567);
        history.SensorReadings.Single().Readings[Measurands.RelativeSaturation].Value.ShouldBe(41.25);
        history.Events.Count.ShouldBe(9);
        history.Events.OfType<TopUp>().Single().Volume.Liters.ShouldBe(20.5);
        history.Machine.Oil.SaturationCurve!.BKelvin.ShouldBe(1230);
        history.Machine.Oil.SaturationCurve.AgeingFactor.DecimalFractions.ShouldBe(1.1);
        history
            .Issues.Select(issue => issue.Kind)
            .ShouldBe([
                HistoryIssueKind.ImplausibleReading,
                HistoryIssueKind.ConflictingSample,
                HistoryIssueKind.RepeatedSample,
                HistoryIssueKind.DatedLater,
            ]);
        history.Issues[0].Readings[Measurands.Lead].Value.ShouldBe(2e6);
        PublicState.Of(OilHistory.Parse(history.ToJson())).ShouldBe(PublicState.Of(history));
    }

    [Fact]
    public void The_limit_set_is_read_to_its_notes()
    {
        var set = LimitSet.Parse(Fixture("limit-set"));
        set.Limits.Count.ShouldBe(8);
        set.Limits[0].DeadBand.ShouldBe(20);
        set.Limits[0].Note.ShouldBe("invented");
        set.Limits[4].Per.ShouldBe(TimeSpan.FromHours(500));
        PublicState.Of(LimitSet.Parse(set.ToJson())).ShouldBe(PublicState.Of(set));
    }

    [Fact]
    public void The_journal_is_read_with_what_was_done_about_each_alert()
    {
        var journal = AlertJournal.Parse(Fixture("journal"));
        journal.Entries.Count.ShouldBe(5);
        journal.Pending.Single().Kind.ShouldBe(JournalChangeKind.Raised);
        var water = journal.Find("HP-M1/undated/water")!;
        water.State.ShouldBe(AlertState.AcknowledgedActive);
        water.WorkOrder.ShouldBe("WO-1042");
        water.Changes.Count.ShouldBe(7);
    }

    [Fact]
    public void The_station_and_the_column_map_are_read()
    {
        var station = OilCondition.Station.Parse(Fixture("station"));
        station.Equipment.Count.ShouldBe(11);
        station.Machines.Single().Limits!.Limits.Count.ShouldBe(8);
        OilCondition.LabFiles.ColumnMap.Parse(Fixture("column-map")).Columns.Count.ShouldBeGreaterThan(0);
    }
}
