using OilCondition.Limits;
using OilCondition.Tests.Architecture;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Advice.Journal;

public class AlertJournalTests
{
    private const string Key = "M1/undated/oil-ageing";

    private static readonly LimitSet Limits = new(
        "test",
        [
            new Limit(
                Measurands.AcidNumber,
                LimitKind.Absolute,
                new LimitBand(0.3, 0.5),
                null,
                Source.CommonPractice("invented")
            ),
        ]
    );

    /// <summary>The assessment on a day, given one reading per day.</summary>
    private static ConditionAssessment On(int day, double[] readings, params OilEvent[] events) =>
        ConditionAssessor.Assess(
            Invented
                .History(
                    readings.Select((value, i) => Invented.Sample(i, i, (Measurands.AcidNumber, new Reading(value)))),
                    events
                )
                .Until(Invented.Start.AddDays(day)),
            Limits,
            new AssessmentOptions(Invented.Start.AddDays(day), TimeSpan.FromDays(1))
        );

    private static JournalChangeKind[] Kinds(AlertJournal journal) =>
        [.. journal.Pending.Select(change => change.Kind)];

    /// <summary>The journal after delivery of all that waits.</summary>
    private static AlertJournal Told(AlertJournal journal) =>
        journal.Pending.Aggregate(journal, (after, change) => after.Confirm(change.Id));

    private static readonly DateTimeOffset Later = Invented.Start.AddDays(30);

    [Fact]
    public void A_problem_is_raised_once_and_waits_until_its_delivery_is_confirmed()
    {
        double[] readings = [0.1, 0.4, 0.4];
        var first = AlertJournal.Empty.Reconcile(On(1, readings));
        var again = first.Reconcile(On(1, readings));
        var tomorrow = again.Reconcile(On(2, readings));

        Kinds(first).ShouldBe([JournalChangeKind.Raised]);
        first.Pending[0].Evidence.ShouldNotBeEmpty();
        first.Pending[0].Id.ShouldBe(Key + "@2025-01-07T08:00:00Z/raised");
        again.ToJson().ShouldBe(first.ToJson());
        Kinds(tomorrow).ShouldBe([JournalChangeKind.Raised]);
        var entry = tomorrow.Entries.Single();
        entry.Key.ShouldBe(Key);
        entry.RaisedAt.ShouldBe(Invented.Start.AddDays(1));
        entry.LastSeenAt.ShouldBe(Invented.Start.AddDays(2));

        var told = tomorrow.Confirm(tomorrow.Pending[0].Id, "WO-7");
        told.Pending.ShouldBeEmpty();
        told.Find(Key)!.WorkOrder.ShouldBe("WO-7");
        told.Confirm(tomorrow.Pending[0].Id).ShouldBe(told);
        Should.Throw<ArgumentException>(() => told.Confirm("M1/x")).Message.ShouldContain("no such change");
        Should.Throw<ArgumentException>(() => told.Confirm(Key + "@2025-01-07T08:00:00Z/eased"));
    }

    [Fact]
    public void An_alarm_after_an_acknowledged_alert_asks_for_attention_again()
    {
        double[] readings = [0.4, 0.6, 0.4, 0.1, 0.4];
        var raised = Told(AlertJournal.Empty.Reconcile(On(0, readings))).Acknowledge(Key, "R. Voss", Later, "WO-7");
        var entry = raised.Entries.Single();
        entry.State.ShouldBe(AlertState.AcknowledgedActive);
        (entry.Acknowledged!.By, entry.Acknowledged.At, entry.WorkOrder).ShouldBe(("R. Voss", Later, "WO-7"));

        var escalated = raised.Reconcile(On(1, readings));
        Kinds(escalated).ShouldBe([JournalChangeKind.Escalated]);
        escalated.Entries.Single().State.ShouldBe(AlertState.UnacknowledgedActive);
        escalated.Entries.Single().Acknowledged.ShouldBeNull();

        var eased = Told(escalated).Acknowledge(Key, "R. Voss", Later).Reconcile(On(2, readings));
        Kinds(eased).ShouldBe([JournalChangeKind.Eased]);

        var cleared = Told(eased).Reconcile(On(3, readings));
        Kinds(cleared).ShouldBe([JournalChangeKind.Cleared]);
        cleared.Entries.Single().State.ShouldBe(AlertState.Normal);
        cleared.Pending[0].Evidence.ShouldBeEmpty();

        var back = Told(cleared).Reconcile(On(4, readings));
        Kinds(back).ShouldBe([JournalChangeKind.RaisedAgain]);
        back.Entries.Single().State.ShouldBe(AlertState.UnacknowledgedActive);
        back.Entries.Single().ClearedAt.ShouldBeNull();
        back.Entries.Single().RaisedAt.ShouldBe(Invented.Start.AddDays(4));
        Should.Throw<ArgumentOutOfRangeException>(() => cleared.Reconcile(On(2, readings)));
    }

    [Fact]
    public void What_went_before_anybody_saw_it_stays_to_be_seen()
    {
        double[] readings = [0.4, 0.1];
        var journal = Told(AlertJournal.Empty.Reconcile(On(0, readings)).Reconcile(On(1, readings)));

        journal.Entries.Single().State.ShouldBe(AlertState.ReturnedUnacknowledged);
        journal.Acknowledge(Key, "R. Voss", Later).Entries.Single().State.ShouldBe(AlertState.Normal);
        Kinds(journal.Reconcile(On(1, readings))).ShouldBeEmpty();
    }

    [Fact]
    public void What_was_raised_and_went_before_it_could_be_delivered_is_delivered_in_its_order()
    {
        double[] readings = [0.4, 0.6, 0.1];
        var journal = AlertJournal.Empty;
        for (var day = 0; day < 3; day++)
        {
            journal = AlertJournal.Parse(journal.Reconcile(On(day, readings)).ToJson());
        }

        Kinds(journal).ShouldBe([JournalChangeKind.Raised, JournalChangeKind.Escalated, JournalChangeKind.Cleared]);
        journal.Pending.Select(change => change.IsActive).ShouldBe([true, true, false]);
        journal.Pending.Select(change => change.Severity).ShouldBe([Severity.Alert, Severity.Alarm, Severity.Alarm]);
    }

    [Fact]
    public void Within_the_clear_delay_an_alert_that_is_gone_stays_open()
    {
        double[] readings = [0.4, 0.1, 0.1, 0.1];
        var journal = Told(AlertJournal.Empty.Reconcile(On(0, readings)));

        Kinds(journal.Reconcile(On(1, readings), TimeSpan.FromDays(2))).ShouldBeEmpty();
        Kinds(journal.Reconcile(On(2, readings), TimeSpan.FromDays(2))).ShouldBe([JournalChangeKind.Cleared]);
    }

    [Fact]
    public void The_clear_delay_counts_from_when_the_alert_was_last_seen()
    {
        double[] readings = [0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.1, 0.1];
        var journal = Told(AlertJournal.Empty.Reconcile(On(0, readings)).Reconcile(On(5, readings)));

        Kinds(journal.Reconcile(On(6, readings), TimeSpan.FromDays(2))).ShouldBeEmpty();
        Kinds(journal.Reconcile(On(7, readings), TimeSpan.FromDays(2))).ShouldBe([JournalChangeKind.Cleared]);
    }

    [Fact]
    public void An_oil_change_clears_the_old_charge_and_a_new_problem_is_a_new_alert()
    {
        double[] readings = [0.4, 0.4, 0.4];
        var change = new OilChange(Invented.Start.AddDays(0.5));
        var before = Told(AlertJournal.Empty.Reconcile(On(0, readings)));
        var after = before.Reconcile(On(1, readings, change), TimeSpan.FromDays(30));

        Kinds(after).ShouldBe([JournalChangeKind.Raised, JournalChangeKind.ClearedByOilChange], ignoreOrder: true);
        after.Entries.Select(entry => entry.Key).ShouldBe(["M1/2025-01-06/oil-ageing", Key]);
    }

    [Fact]
    public void A_journal_survives_its_file()
    {
        double[] readings = [0.4, 0.1, 0.6];
        var journal = Told(AlertJournal.Empty.Reconcile(On(0, readings)))
            .Acknowledge(Key, "R. Voss", Later, "WO-7")
            .Reconcile(On(1, readings))
            .Reconcile(On(2, readings));

        var read = AlertJournal.Parse(journal.ToJson());

        read.ToJson().ShouldBe(journal.ToJson());
        read.Pending.Select(Told).ShouldBe(journal.Pending.Select(Told));
        var entry = read.Find(Key)!;
        (entry.WorkOrder, entry.IsActive, entry.Changes.Count).ShouldBe(("WO-7", true, 4));
    }

    private static string Told(JournalChange change) =>
        $"{change.Id} {change.Severity} {change.State} {change.Sentence} {string.Join('|', change.Evidence)} {change.By} {change.IsConfirmed}";

    private static string Json(string changes, string state = "normal", string severity = "alert") =>
        $$"""
            { "alerts": [ { "key": "M1/undated/water", "severity": "{{severity}}", "state": "{{state}}", "lastSeenAt": "2026-01-02T00:00:00Z",
              "sentence": "s", "somethingNew": 3, "changes": [ {{changes}} ] } ] }
            """;

    private static string Change(string kind, string day, string severity = "alert") =>
        $$"""{ "kind": "{{kind}}", "at": "2026-01-{{day}}T00:00:00Z", "severity": "{{severity}}", "sentence": "s", "confirmed": true, "more": {} }""";

    [Fact]
    public void Moments_in_UTC_and_fields_of_a_later_version_are_read()
    {
        var entry = AlertJournal
            .Parse(Json(Change("raised", "01") + "," + Change("cleared", "02"), "returned-unacknowledged"))
            .Entries.Single();

        entry.RaisedAt.ShouldBe(new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.Zero));
        entry.ClearedAt.ShouldBe(new DateTimeOffset(2026, 1, 2, 0, 0, 0, TimeSpan.Zero));
    }

    public static TheoryData<string, string> Impossible() =>
        new()
        {
            { "nothing", "The journal is not JSON" },
            { "[]", "an object with the list 'alerts' is expected" },
            { """{ "alerts": [ 3 ] }""", "$.alerts[0]: an object is expected" },
            {
                """{ "alerts": [ { "key": "a", "severity": "loud" } ] }""",
                "$.alerts[0].key: 'a'; expected is machine/charge/subject"
            },
            {
                """{ "alerts": [ { "key": "a", "severity": "loud" } ] }""",
                "$.alerts[0].severity: 'loud'; allowed: information, alert, alarm"
            },
            { Json(""), "$.alerts[0].changes: at least one is expected" },
            { Json(Change("cleared", "01")), "$.alerts[0].changes[0]: cleared cannot follow nothing" },
            {
                Json(Change("raised", "01") + "," + Change("raised-again", "02")),
                "$.alerts[0].changes[1]: raised-again cannot follow raised with the state 'unacknowledged-active'"
            },
            {
                Json(Change("raised", "01") + "," + Change("escalated", "02")),
                "changes[1]: escalated cannot follow raised"
            },
            {
                Json(Change("raised", "02") + "," + Change("cleared", "01"), "returned-unacknowledged"),
                "changes[1].at: it is before the change above it"
            },
            { Json(Change("raised", "03"), "unacknowledged-active"), "lastSeenAt: it is before the alert was raised" },
            { Json(Change("raised", "01")), "the changes lead to 'unacknowledged-active' and 'alert'" },
            {
                Json(Change("raised", "01"), "unacknowledged-active", "alarm"),
                "the changes lead to 'unacknowledged-active' and 'alert'"
            },
            { Json(Change("raised", "01", "information"), "unacknowledged-active"), "severity: 'information'" },
            {
                Json(Change("raised", "01") + "," + Change("acknowledged", "01"), "acknowledged-active"),
                "by: who acknowledged is expected"
            },
            {
                Json(Change("raised", "01"), "unacknowledged-active")
                    .Replace("\"sentence\": \"s\", \"some", "\"machine\": \"M2\", \"sentence\": \"s\", \"some"),
                "$.alerts[0].machine: 'M2'; the key says 'M1'"
            },
            {
                Json(
                    Change("raised", "01").Replace("{ \"kind\"", "{ \"id\": \"x\", \"kind\""),
                    "unacknowledged-active"
                ),
                "$.alerts[0].changes[0].id: 'x'; key, moment and kind say 'M1/undated/water@2026-01-01T00:00:00Z/raised'"
            },
            {
                """{ "alerts": [ { "key": "a/b/c", "severity": "alert", "state": "normal", "lastSeenAt": "yesterday" } ] }""",
                "$.alerts[0].lastSeenAt: 'yesterday' is not a moment"
            },
        };

    [Theory]
    [MemberData(nameof(Impossible))]
    public void What_is_no_journal_or_cannot_have_been_is_refused_with_its_place(string json, string expected) =>
        Should.Throw<FormatException>(() => AlertJournal.Parse(json)).Message.ShouldContain(expected);

    [Fact]
    public void Time_does_not_run_backwards_and_an_unknown_key_is_refused()
    {
        double[] readings = [0.4, 0.4];
        var journal = AlertJournal.Empty.Reconcile(On(1, readings));

        Should
            .Throw<ArgumentOutOfRangeException>(() => journal.Reconcile(On(0, readings)))
            .Message.ShouldContain("Reconcile in order of time");
        Should
            .Throw<ArgumentException>(() => journal.Acknowledge("M1/x", "R. Voss", Later))
            .Message.ShouldContain("no such alert");
    }

    [Fact]
    public void A_clear_delay_beyond_ten_years_is_refused_with_its_range() =>
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                AlertJournal.Empty.Reconcile(On(0, [0.4]), TimeSpan.FromDays(1e6))
            )
            .Message.ShouldContain("0 to 3653 d");

    private static ConditionAssessment Of(string machineId, int day, double acidNumber) =>
        ConditionAssessor.Assess(
            OilHistory.Create(
                new Machine(
                    machineId,
                    "invented",
                    Invented.Oil,
                    Volume.FromLiters(10),
                    Temperature.FromDegreesCelsius(50),
                    Temperature.FromDegreesCelsius(20)
                ),
                [Invented.Sample(0, day, (Measurands.AcidNumber, new Reading(acidNumber)))],
                [],
                []
            ),
            Limits,
            new AssessmentOptions(Invented.Start.AddDays(day))
        );

    [Fact]
    public void Ids_with_slashes_and_ids_that_begin_alike_are_machines_of_their_own()
    {
        string[] ids = ["M", "M1", "M1/undated", "M1%2Fundated", "PLANT/TURB/01"];
        var journal = AlertJournal.Empty.Reconcile(ids.Select(id => Of(id, 0, 0.4)));

        journal.Entries.Select(entry => entry.MachineId).ShouldBe(ids, ignoreOrder: true);
        journal.Find("PLANT%2FTURB%2F01/undated/oil-ageing")!.MachineId.ShouldBe("PLANT/TURB/01");

        var healed = AlertJournal.Parse(journal.ToJson()).Reconcile(Of("M1", 1, 0.1));
        healed.Entries.Where(entry => !entry.IsActive).Select(entry => entry.MachineId).ShouldBe(["M1"]);
    }

    [Fact]
    public void A_change_has_the_same_id_whatever_the_offset_of_the_run()
    {
        var assessment = Of("A", 0, 0.4);
        var elsewhere = ConditionAssessor.Assess(
            assessment.History,
            Limits,
            new AssessmentOptions(assessment.Options.AsOf.ToOffset(TimeSpan.FromHours(9)))
        );

        var journal = AlertJournal.Empty.Reconcile(elsewhere);
        journal.Pending.Single().Id.ShouldBe("A/undated/oil-ageing@2025-01-06T08:00:00Z/raised");
        journal.Pending.Single().At.Offset.ShouldBe(TimeSpan.FromHours(9));
        AlertJournal.Empty.Reconcile(assessment).Pending.Single().Id.ShouldBe(journal.Pending.Single().Id);
    }

    [Fact]
    public void Two_machines_of_one_id_are_refused_and_nothing_is_reconciled() =>
        Should
            .Throw<ArgumentException>(() =>
                AlertJournal.Empty.Reconcile([Of("A", 0, 0.4), Of("B", 0, 0.4), Of("A", 0, 0.1)])
            )
            .Message.ShouldContain("machine 'A' twice");

    [Fact]
    public void A_retired_machine_closes_its_requests_and_old_entries_are_forgotten()
    {
        var open = Told(AlertJournal.Empty.Reconcile([Of("A", 0, 0.4), Of("B", 0, 0.4)]));
        var retired = open.Retire("A", Later);

        Kinds(retired).ShouldBe([JournalChangeKind.MachineRetired]);
        retired.Pending[0].IsActive.ShouldBeFalse();
        // Nobody was told yet: it is kept. Then it is forgotten, and the open one is not.
        retired.Prune(Later.AddYears(5)).Entries.Count.ShouldBe(2);
        Told(retired).Prune(Later).Entries.Count.ShouldBe(2);
        Told(retired).Prune(Later.AddDays(1)).Entries.Select(entry => entry.MachineId).ShouldBe(["B"]);
        open.Retire("C", Later).ShouldBe(open);
    }

    [Fact]
    public void What_was_raised_by_a_wrong_clock_is_opened_before_it_is_closed()
    {
        // Raised by a run of 2050 that nobody was told of; the machine is retired today.
        var retired = AlertJournal.Empty.Reconcile(Of("A", 9000, 0.4)).Retire("A", Later);

        Kinds(retired).ShouldBe([JournalChangeKind.Raised, JournalChangeKind.MachineRetired]);
        retired.Pending[^1].IsActive.ShouldBeFalse();
    }

    [Fact]
    public void A_run_that_was_dated_wrongly_is_taken_back_with_all_it_did()
    {
        double[] readings = [0.4, 0.6, 0.1];
        var good = Told(AlertJournal.Empty.Reconcile(On(0, readings))).Acknowledge(Key, "R. Voss", Later);
        var wrong = Told(good.Reconcile(On(9000, readings)).Reconcile(Of("NEW", 9000, 0.4)));
        var today = Invented.Start.AddDays(0.5);
        Should.Throw<ArgumentOutOfRangeException>(() => wrong.Reconcile(On(1, readings)));

        var back = wrong.TakeBack(Invented.Start, today);

        // What was cleared stands again, acknowledged as it was; what was raised is closed; whoever holds the requests is told.
        back.Find(Key)!.State.ShouldBe(AlertState.AcknowledgedActive);
        back.Find(Key)!.LastSeenAt.ShouldBe(Invented.Start);
        back.Find("NEW/undated/oil-ageing")!.IsActive.ShouldBeFalse();
        back.Find("NEW/undated/oil-ageing")!.RaisedAt.ShouldBeNull();
        back.Pending.Select(change => (change.Kind, change.IsActive))
            .ShouldContain((JournalChangeKind.TakenBack, true));
        back.Pending.ShouldAllBe(change => change.Kind == JournalChangeKind.TakenBack);
        back.Find(Key)!.Severity.ShouldBe(Severity.Alert);
        AlertJournal.Parse(back.ToJson()).ToJson().ShouldBe(back.ToJson());

        // The same day's run goes on as if nothing had been.
        var next = Told(back).Reconcile(On(1, readings));
        next.Pending.Select(change => change.Kind).ShouldBe([JournalChangeKind.Escalated]);
        Told(back).Reconcile(Of("NEW", 1, 0.4)).Pending.Single().Kind.ShouldBe(JournalChangeKind.RaisedAgain);
        good.TakeBack(Later, Later).ToJson().ShouldBe(good.ToJson());
    }

    [Fact]
    public void Each_kind_of_change_is_in_the_documented_list()
    {
        var page = RepositoryFiles.Read("docs", "journal.md");
        foreach (var kind in Enum.GetValues<JournalChangeKind>())
        {
            page.ShouldContain($"| `{kind}` |");
        }

        page.Split('\n')
            .Count(line => line.StartsWith("| `", StringComparison.Ordinal))
            .ShouldBe(Enum.GetValues<JournalChangeKind>().Length);
    }
}
