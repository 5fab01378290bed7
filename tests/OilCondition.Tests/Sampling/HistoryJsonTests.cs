using CsCheck;
using OilCondition.Tests.Advice;
using OilCondition.Tests.Properties;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Sampling;

/// <summary>A history that is written and read back has lost nothing, and its assessment is the same to the byte.</summary>
public class HistoryJsonTests
{
    private static readonly Gen<int> Seeds = Gen.Int[0, int.MaxValue - 1];

    [Fact]
    public void Any_history_is_read_back_with_all_that_it_shows_and_assessed_alike() =>
        Seeds.Holds(
            seed =>
            {
                var history = HostileHistories.Of(seed);
                var json = history.ToJson();
                var again = OilHistory.Parse(json);

                PublicState.Of(again).ShouldBe(PublicState.Of(history));
                again.ToJson().ShouldBe(json);
                var judged = history.JudgedAt(new InventedHistories(seed).End.AddDays(-40));
                PublicState.Of(OilHistory.Parse(judged.ToJson())).ShouldBe(PublicState.Of(judged));
                again.Samples.Select(again.IsSuspect).ShouldBe(history.Samples.Select(history.IsSuspect));
                var options = new AssessmentOptions(new InventedHistories(seed).End.AddDays(seed % 30));
                ConditionAssessor
                    .Assess(again, InventedHistories.Limits, options)
                    .ToJson()
                    .ShouldBe(ConditionAssessor.Assess(history, InventedHistories.Limits, options).ToJson());
            },
            iter: 100
        );

    [Fact]
    public void Every_kind_of_issue_and_record_comes_up_among_them()
    {
        var drawn = Enumerable.Range(0, 60).Select(HostileHistories.Of).ToList();
        drawn.Add(drawn[0].JudgedAt(drawn[0].Samples[0].TakenAt.AddDays(1)));
        var issues = drawn.SelectMany(history => history.Issues).ToList();
        foreach (var kind in Enum.GetValues<HistoryIssueKind>())
        {
            issues.ShouldContain(issue => issue.Kind == kind && issue.Readings.Count > 0);
        }

        issues.ShouldContain(issue => issue.SampleNumber.Length == 0);
        issues.ShouldContain(issue => issue.Texts.Count > 0);
        var samples = drawn.SelectMany(history => history.Samples).ToList();
        samples.ShouldContain(sample => sample.Texts.Count > 0);
        samples.ShouldContain(sample => !sample.IsNumbered);
        foreach (var qualifier in Enum.GetValues<Qualifier>())
        {
            samples.ShouldContain(sample => sample.Readings.Values.Any(reading => reading.Qualifier == qualifier));
        }

        var events = drawn.SelectMany(history => history.Events).ToList();
        events.OfType<TreatmentRun>().ShouldContain(run => run.EndedAt == null && run.Equipment == "U1");
        events.OfType<TreatmentRun>().ShouldContain(run => run.EndedAt != null && run.Equipment == null);
        events.OfType<OilChange>().ShouldNotBeEmpty();
        events.OfType<TopUp>().ShouldNotBeEmpty();
    }

    [Fact]
    public void What_was_set_aside_stays_in_the_document()
    {
        var history = Invented.History([
            Invented.Sample(1, 0, (Measurands.WaterContent, new(2e6)), (Measurands.Iron, new(5))),
        ]);

        var again = OilHistory.Parse(history.ToJson());
        again.Samples.Single().Readings.Keys.ShouldBe([Measurands.Iron]);
        var issue = again.Issues.Single();
        issue.Kind.ShouldBe(HistoryIssueKind.ImplausibleReading);
        issue.Readings[Measurands.WaterContent].Value.ShouldBe(2e6);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void A_saturation_curve_is_read_back_with_how_it_came_about(int way)
    {
        var points = Invented.Curve;
        var curve = way switch
        {
            1 => points,
            2 => points.Aged(Ratio.FromDecimalFractions(1.3), Source.UserData("aged")),
            3 => SaturationCurve.FromHydrocarbon("oil", 0.16, MolarMass.FromGramsPerMole(400)),
            _ => PublishedSaturationCurves.All[0],
        };
        var oil = new Oil(
            "o",
            new Dictionary<Measurand, Reading> { [Measurands.Iron] = new(1, Qualifier.LessThan, "m") },
            curve
        );
        var machine = new Machine(
            "M",
            "m",
            oil,
            Volume.FromLiters(1.0 / 3),
            Temperature.FromDegreesCelsius(55.1),
            Temperature.FromDegreesCelsius(-3)
        );
        var history = OilHistory.Create(machine, [], [], []);

        PublicState.Of(OilHistory.Parse(history.ToJson())).ShouldBe(PublicState.Of(history));
    }

    [Fact]
    public void Records_without_issues_are_raw_and_put_in_order()
    {
        var history = OilHistory.Parse(
            Document(
                """
                { "sampleNumber": "B", "takenAt": "2026-02-01T00:00:00Z", "readings": [ { "measurand": "water-content", "value": 0.02, "unit": "%" } ] },
                { "sampleNumber": "A", "takenAt": "2026-01-01T00:00:00Z", "readings": [ { "measurand": "iron", "value": 9e9 } ] },
                { "sampleNumber": "B", "takenAt": "2026-02-01T00:00:00Z", "readings": [ { "measurand": "water-content", "value": 200, "unit": null } ] }
                """
            )
        );

        history.Samples.Select(sample => sample.SampleNumber).ShouldBe(["A", "B"]);
        history.Samples[1].Readings[Measurands.WaterContent].Value.ShouldBe(200, 1e-9);
        history
            .Issues.Select(issue => issue.Kind)
            .ShouldBe([HistoryIssueKind.ImplausibleReading, HistoryIssueKind.RepeatedSample]);
    }

    [Theory]
    [InlineData(
        """{ "takenAt": "2026-02-01T00:00:00Z", "readings": [ { "measurand": "irn", "value": 1 } ] }""",
        "$.samples[0].readings[0].measurand: 'irn' is not a known measurand"
    )]
    [InlineData(
        """{ "takenAt": "2026-02-01T00:00:00Z", "readings": [ { "measurand": "iron", "value": 1, "unit": "L" } ] }""",
        "$.samples[0].readings[0].unit: 'L' cannot be converted to mg/kg (iron)"
    )]
    [InlineData(
        """{ "takenAt": "2026-02-01T00:00:00Z", "readings": [ { "measurand": "particles-4um", "value": 18, "unit": "iso-4406" } ] }""",
        "$.samples[0].readings[0].unit: 'iso-4406' cannot be converted"
    )]
    [InlineData(
        """{ "takenAt": "2026-02-01T00:00:00Z", "readings": [ { "measurand": "iron", "value": 1, "qualifier": "below" } ] }""",
        "$.samples[0].readings[0].qualifier: 'below'; allowed: none, less-than"
    )]
    [InlineData(
        """{ "takenAt": "2026-02-01T00:00:00Z", "readings": [ { "measurand": "iron", "value": 1 }, { "measurand": "iron", "value": 2 } ] }""",
        "$.samples[0].readings: 'iron' is there more than once"
    )]
    [InlineData("""{ "takenAt": "1026-02-01T00:00:00Z" }""", "$.samples[0]: ")]
    [InlineData("""{ "sampleNumbr": "A", "takenAt": "2026-02-01T00:00:00Z" }""", "$.samples[0].sampleNumbr: unknown")]
    public void A_fault_is_named_with_its_place(string sample, string expected) =>
        Should.Throw<FormatException>(() => OilHistory.Parse(Document(sample))).Message.ShouldContain(expected);

    [Fact]
    public void Records_that_were_changed_beside_their_issues_are_not_taken_as_being_in_order()
    {
        const string Later = """{ "takenAt": "2026-02-01T00:00:00Z" }""";
        const string Earlier =
            """{ "takenAt": "2026-01-01T00:00:00Z", "readings": [ { "measurand": "iron", "value": 9e9 } ] }""";
        var message = Should
            .Throw<FormatException>(() => OilHistory.Parse(Document($"{Later}, {Earlier}", "\"issues\": [],")))
            .Message;
        message.ShouldContain("$.samples[1]: earlier than the one before");
        message.ShouldContain("$.samples[1]: iron 9E+09 mg/kg is not plausible".Replace("9E+09", "9000000000"));
    }

    private static string Document(string samples, string more = "") =>
        $$"""
            { {{more}} "machine": { "id": "M", "name": "m", "oil": { "name": "o" }, "oilLitres": 900, "runningCelsius": 55, "standstillCelsius": 15 },
              "samples": [ {{samples}} ] }
            """;
}
