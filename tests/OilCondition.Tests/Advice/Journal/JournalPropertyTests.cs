using CsCheck;
using OilCondition.Tests.Properties;
using UnitsNet;

namespace OilCondition.Tests.Advice.Journal;

/// <summary>What holds of a journal after any sequence of assessments and acknowledgements.</summary>
public class JournalPropertyTests
{
    private static string[] Active(AlertJournal journal) =>
        [.. journal.Entries.Where(entry => entry.IsActive).Select(entry => entry.Key)];

    [Fact]
    public void Through_any_history_what_was_raised_less_what_was_cleared_is_active() =>
        Gen.Select(Gen.Int[0, int.MaxValue - 1], Gen.Int[0, 40])
            .Holds(
                (seed, delay) =>
                {
                    var records = new InventedHistories(seed);
                    var history = records.History();
                    var random = new Random(seed);
                    var journal = AlertJournal.Empty;
                    foreach (
                        var asOf in history
                            .Samples.Select(sample => sample.TakenAt.AddHours(1))
                            .Append(records.End.AddDays(300))
                    )
                    {
                        var assessment = ConditionAssessor.Assess(
                            history.Until(asOf),
                            InventedHistories.Limits,
                            new AssessmentOptions(asOf)
                        );
                        journal = journal.Reconcile(assessment, TimeSpan.FromDays(delay));
                        foreach (var change in journal.Pending.Where(_ => random.Next(0, 2) == 0))
                        {
                            journal = journal.Confirm(change.Id);
                        }

                        var told = journal.Entries.SelectMany(entry => entry.Changes).ToList();
                        told.Select(change => change.Id).ShouldBeUnique();
                        Active(journal)
                            .Length.ShouldBe(
                                told.Count(change =>
                                    change.Kind is JournalChangeKind.Raised or JournalChangeKind.RaisedAgain
                                )
                                    - told.Count(change =>
                                        change.Kind is JournalChangeKind.Cleared or JournalChangeKind.ClearedByOilChange
                                    )
                            );

                        // What the assessment says is active is; without a delay nothing else of this charge.
                        assessment
                            .Alerts.Select(alert => alert.Problem.Subject)
                            .ShouldBeSubsetOf(
                                journal
                                    .Entries.Where(entry => entry.IsActive)
                                    .Select(entry => entry.Key.Split('/', 3)[2])
                            );
                        if (delay == 0)
                        {
                            Active(journal).Length.ShouldBe(assessment.Alerts.Count);
                        }

                        var again = journal.Reconcile(assessment, TimeSpan.FromDays(delay));
                        again.ToJson().ShouldBe(journal.ToJson());
                        AlertJournal.Parse(journal.ToJson()).ToJson().ShouldBe(journal.ToJson());

                        foreach (var entry in journal.Entries.Where(_ => random.Next(0, 3) == 0))
                        {
                            var acknowledged = journal.Acknowledge(entry.Key, "R. Voss", asOf);
                            Active(acknowledged).ShouldBe(Active(journal));
                            acknowledged.Acknowledge(entry.Key, "R. Voss", asOf).ShouldBe(acknowledged);
                            journal = acknowledged;
                        }
                    }
                },
                iter: 40
            );
}
