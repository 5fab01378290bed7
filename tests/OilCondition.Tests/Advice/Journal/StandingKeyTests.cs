using OilCondition.Limits;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Advice.Journal;

/// <summary>An open alert keeps its key, whatever is learnt of its charge later: no second work request for the same problem on the same oil.</summary>
public class StandingKeyTests
{
    private const string Undated = "M1/undated/oil-ageing";
    private const string Dated = "M1/2025-02-05/oil-ageing"; // day 30

    private static readonly LimitSet Limits = new(
        "test",
        [
            new Limit(
                Measurands.AcidNumber,
                LimitKind.Absolute,
                new LimitBand(0.3, 5),
                null,
                Source.CommonPractice("invented")
            ),
        ]
    );

    private static OilChange Changed(double day) => new(Invented.Start.AddDays(day));

    /// <summary>What is known on a day: a reading of acid number each ten days, too high from day 50 on, from a first day on.</summary>
    private static ConditionAssessment On(int day, double firstDay, params OilEvent[] events) =>
        ConditionAssessor.Assess(
            Invented.History(
                Enumerable
                    .Range(0, 40)
                    .Where(i => 10 * i <= day && 10 * i >= firstDay)
                    .Select(i => Invented.Sample(i, 10 * i, (Measurands.AcidNumber, new Reading(i >= 5 ? 0.4 : 0.1)))),
                events
            ),
            Limits,
            new AssessmentOptions(Invented.Start.AddDays(day), TimeSpan.FromDays(1))
        );

    private static AlertJournal Told(AlertJournal journal) =>
        journal.Pending.Aggregate(journal, (after, change) => after.Confirm(change.Id));

    private static void ShouldHold(AlertJournal before, ConditionAssessment now, string key)
    {
        var after = Told(before).Reconcile(now);
        after.Pending.ShouldBeEmpty();
        after.Entries.Where(entry => entry.IsActive).Select(entry => entry.Key).ShouldBe([key]);
        after.Find(key)!.LastSeenAt.ShouldBe(now.Options.AsOf);
    }

    [Fact]
    public void A_change_that_is_entered_late()
    {
        var journal = AlertJournal.Empty.Reconcile(On(60, 0));
        var now = On(70, 0, Changed(30));

        // The assessment alone names the charge; the journal knows that the alert was raised on this oil.
        now.Alerts.Single().Key.ShouldBe(Dated);
        ShouldHold(journal, now, Undated);
        ShouldHold(AlertJournal.Parse(Told(journal).Reconcile(now).ToJson()), On(80, 0, Changed(30)), Undated);
    }

    [Fact]
    public void A_window_in_which_the_change_is_gone() =>
        ShouldHold(AlertJournal.Empty.Reconcile(On(60, 0, Changed(30))), On(200, 100), Dated);

    [Fact]
    public void A_date_of_the_change_that_is_put_right() =>
        ShouldHold(AlertJournal.Empty.Reconcile(On(60, 0, Changed(30))), On(61, 0, Changed(33)), Dated);

    [Fact]
    public void A_change_that_was_entered_twice() =>
        ShouldHold(
            AlertJournal.Empty.Reconcile(On(60, 0, Changed(30))),
            On(61, 0, Changed(30), Changed(30.001)),
            Dated
        );

    [Fact]
    public void A_change_that_was_entered_by_mistake_and_is_taken_out_again_raises_the_same_alert_again()
    {
        var mistaken = Told(AlertJournal.Empty.Reconcile(On(60, 0))).Reconcile(On(61, 0, Changed(60.5)));
        mistaken.Pending.Single().Kind.ShouldBe(JournalChangeKind.ClearedByOilChange);

        var again = Told(mistaken).Reconcile(On(62, 0)).Pending.Single();
        (again.Kind, again.Key).ShouldBe((JournalChangeKind.RaisedAgain, Undated));
    }

    [Fact]
    public void A_change_after_the_alert_is_another_charge_with_a_key_of_its_own()
    {
        var journal = Told(AlertJournal.Empty.Reconcile(On(60, 0, Changed(30))))
            .Reconcile(On(80, 0, Changed(30), Changed(65)));

        journal
            .Pending.Select(change => (change.Kind, change.Key))
            .ShouldBe(
                [(JournalChangeKind.ClearedByOilChange, Dated), (JournalChangeKind.Raised, "M1/2025-03-12/oil-ageing")],
                ignoreOrder: true
            );
    }

    [Fact]
    public void A_second_doubtful_sample_is_a_request_of_its_own()
    {
        ConditionAssessment Doubtful(int samples) =>
            ConditionAssessor.Assess(
                Invented.History(
                    Enumerable
                        .Range(0, samples)
                        .SelectMany(i =>
                            new[] { 0.1, 0.2 }.Select(value =>
                                Invented.Sample(i, 10 * i, (Measurands.AcidNumber, new Reading(value)))
                            )
                        )
                ),
                Limits,
                new AssessmentOptions(Invented.Start.AddDays(10 * samples))
            );
        var first = AlertJournal.Empty.Reconcile(Doubtful(1));
        var second = Told(first).Reconcile(Doubtful(2));

        first.Pending.Single().Key.ShouldBe("M1/undated/records/S0");
        second
            .Pending.Select(change => (change.Kind, change.Key))
            .ShouldBe(
                [
                    (JournalChangeKind.Raised, "M1/undated/records/S1"),
                    (JournalChangeKind.Cleared, "M1/undated/records/S0"),
                ],
                ignoreOrder: true
            );
    }
}
