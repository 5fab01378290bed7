using OilCondition.Limits;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Advice.Journal;

public class AlertJournalTests
{
    private const string Key = "M1/charge-1/oil-ageing";

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
            Invented.History(
                readings.Select((value, i) => Invented.Sample(i, i, (Measurands.AcidNumber, new Reading(value)))),
                events
            ),
            Limits,
            new AssessmentOptions(Invented.Start.AddDays(day), TimeSpan.FromDays(1))
        );

    private static JournalChangeKind[] Kinds((AlertJournal Journal, IReadOnlyList<JournalChange> Changes) step) =>
        [.. step.Changes.Select(change => change.Kind)];

    [Fact]
    public void A_problem_is_raised_once_and_then_held()
    {
        double[] readings = [0.1, 0.4, 0.4];
        var first = AlertJournal.Empty.Reconcile(On(1, readings));
        var again = first.Journal.Reconcile(On(1, readings));
        var tomorrow = again.Journal.Reconcile(On(2, readings));

        Kinds(first).ShouldBe([JournalChangeKind.Raised]);
        first.Changes[0].Alert!.Findings.ShouldNotBeEmpty();
        Kinds(again).ShouldBe([JournalChangeKind.Held]);
        again.Journal.ToJson().ShouldBe(first.Journal.ToJson());
        Kinds(tomorrow).ShouldBe([JournalChangeKind.Held]);
        var entry = tomorrow.Journal.Entries.Single();
        entry.Key.ShouldBe(Key);
        entry.RaisedAt.ShouldBe(Invented.Start.AddDays(1));
        entry.LastSeenAt.ShouldBe(Invented.Start.AddDays(2));
    }

    [Fact]
    public void An_alarm_after_an_acknowledged_alert_asks_for_attention_again()
    {
        double[] readings = [0.4, 0.6, 0.4, 0.1, 0.4];
        var raised = AlertJournal.Empty.Reconcile(On(0, readings)).Journal.Acknowledge(Key);
        raised.Entries.Single().State.ShouldBe(AlertState.AcknowledgedActive);

        var escalated = raised.Reconcile(On(1, readings));
        Kinds(escalated).ShouldBe([JournalChangeKind.Escalated]);
        escalated.Journal.Entries.Single().State.ShouldBe(AlertState.UnacknowledgedActive);

        var eased = escalated.Journal.Acknowledge(Key).Reconcile(On(2, readings));
        Kinds(eased).ShouldBe([JournalChangeKind.Eased]);

        var cleared = eased.Journal.Reconcile(On(3, readings));
        Kinds(cleared).ShouldBe([JournalChangeKind.Cleared]);
        cleared.Journal.Entries.Single().State.ShouldBe(AlertState.Normal);
        cleared.Changes[0].Alert.ShouldBeNull();

        var back = cleared.Journal.Reconcile(On(4, readings));
        Kinds(back).ShouldBe([JournalChangeKind.Returned]);
        back.Journal.Entries.Single().State.ShouldBe(AlertState.UnacknowledgedActive);
        back.Journal.Entries.Single().ClearedAt.ShouldBeNull();
        back.Journal.Entries.Single().RaisedAt.ShouldBe(Invented.Start.AddDays(4));
        Should.Throw<ArgumentOutOfRangeException>(() => cleared.Journal.Reconcile(On(2, readings)));
    }

    [Fact]
    public void What_went_before_anybody_saw_it_stays_to_be_seen()
    {
        double[] readings = [0.4, 0.1];
        var journal = AlertJournal.Empty.Reconcile(On(0, readings)).Journal.Reconcile(On(1, readings)).Journal;

        journal.Entries.Single().State.ShouldBe(AlertState.ReturnedUnacknowledged);
        journal.Acknowledge(Key).Entries.Single().State.ShouldBe(AlertState.Normal);
        Kinds(journal.Reconcile(On(1, readings))).ShouldBeEmpty();
    }

    [Fact]
    public void Within_the_clear_delay_an_alert_that_is_gone_stays_open()
    {
        double[] readings = [0.4, 0.1, 0.1, 0.1];
        var journal = AlertJournal.Empty.Reconcile(On(0, readings)).Journal;

        Kinds(journal.Reconcile(On(1, readings), TimeSpan.FromDays(2))).ShouldBeEmpty();
        Kinds(journal.Reconcile(On(2, readings), TimeSpan.FromDays(2))).ShouldBe([JournalChangeKind.Cleared]);
    }

    [Fact]
    public void The_clear_delay_counts_from_when_the_alert_was_last_seen()
    {
        double[] readings = [0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.1, 0.1];
        var journal = AlertJournal.Empty.Reconcile(On(0, readings)).Journal.Reconcile(On(5, readings)).Journal;

        Kinds(journal.Reconcile(On(6, readings), TimeSpan.FromDays(2))).ShouldBeEmpty();
        Kinds(journal.Reconcile(On(7, readings), TimeSpan.FromDays(2))).ShouldBe([JournalChangeKind.Cleared]);
    }

    [Fact]
    public void An_oil_change_clears_the_old_charge_and_a_new_problem_is_a_new_alert()
    {
        double[] readings = [0.4, 0.4, 0.4];
        var change = new OilChange(Invented.Start.AddDays(0.5));
        var before = AlertJournal.Empty.Reconcile(On(0, readings)).Journal;
        var after = before.Reconcile(On(1, readings, change), TimeSpan.FromDays(30));

        Kinds(after).ShouldBe([JournalChangeKind.Raised, JournalChangeKind.ClearedByOilChange]);
        after.Journal.Entries.Select(entry => entry.Key).ShouldBe([Key, Key.Replace("charge-1", "charge-2")]);
    }

    [Fact]
    public void A_journal_survives_its_file()
    {
        double[] readings = [0.4, 0.1];
        var journal = AlertJournal.Empty.Reconcile(On(0, readings)).Journal.Reconcile(On(1, readings)).Journal;

        var read = AlertJournal.Parse(journal.ToJson());

        read.Entries.ShouldBe(journal.Entries);
        read.ToJson().ShouldBe(journal.ToJson());
    }

    [Theory]
    [InlineData("nothing", "The journal is not JSON")]
    [InlineData("[]", "an object with the list 'alerts' is expected")]
    [InlineData(
        """{ "alerts": [ { "key": "a", "severity": "loud" } ] }""",
        "$.alerts[0].severity: 'loud'; allowed: information, alert, alarm"
    )]
    [InlineData(
        """{ "alerts": [ { "key": "a", "severity": "alert", "state": "normal", "raisedAt": "2026-01-01T00:00:00+00:00", "lastSeenAt": "2026-01-01T00:00:00+00:00", "sentence": "s" } ] }""",
        "$.alerts[0]: the state is 'normal', which needs a 'clearedAt'"
    )]
    [InlineData("""{ "alerts": [ 3 ] }""", "$.alerts[0]: an object is expected")]
    [InlineData(
        """{ "alerts": [ { "key": "a", "severity": "alert", "state": "normal", "raisedAt": "yesterday" } ] }""",
        "$.alerts[0].raisedAt: 'yesterday' is not a moment"
    )]
    public void A_file_of_another_kind_is_refused_with_its_place(string json, string expected) =>
        Should.Throw<FormatException>(() => AlertJournal.Parse(json)).Message.ShouldContain(expected);

    [Fact]
    public void Time_does_not_run_backwards_and_an_unknown_key_is_refused()
    {
        double[] readings = [0.4, 0.4];
        var journal = AlertJournal.Empty.Reconcile(On(1, readings)).Journal;

        Should
            .Throw<ArgumentOutOfRangeException>(() => journal.Reconcile(On(0, readings)))
            .Message.ShouldContain("Reconcile in order of time");
        Should.Throw<ArgumentException>(() => journal.Acknowledge("M1/x")).Message.ShouldContain("no such alert");
    }

    [Fact]
    public void A_clear_delay_beyond_ten_years_is_refused_with_its_range() =>
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                AlertJournal.Empty.Reconcile(On(0, [0.4]), TimeSpan.FromDays(1e6))
            )
            .Message.ShouldContain("0 to 3653 d");

    [Fact]
    public void A_machine_whose_id_begins_like_another_is_left_alone()
    {
        var journal = AlertJournal.Empty.Reconcile(On(0, [0.4])).Journal;
        var machine = new Machine(
            "M",
            "invented",
            Invented.Oil,
            Volume.FromLiters(10),
            Temperature.FromDegreesCelsius(50),
            Temperature.FromDegreesCelsius(20)
        );
        var healthy = OilHistory.Create(
            machine,
            [Invented.Sample(0, 1, (Measurands.AcidNumber, new Reading(0.1)))],
            [],
            []
        );
        var step = journal.Reconcile(
            ConditionAssessor.Assess(healthy, Limits, new AssessmentOptions(Invented.Start.AddDays(1)))
        );

        step.Changes.ShouldBeEmpty();
        step.Journal.Entries.Single().IsActive.ShouldBeTrue();
    }
}
