using CsCheck;
using OilCondition.Tests.Properties;
using UnitsNet;

namespace OilCondition.Tests.Advice.Journal;

/// <summary>What holds of a journal after any sequence of assessments and acknowledgements.</summary>
public class JournalPropertyTests
{
    private static int Count(
        (AlertJournal Journal, IReadOnlyList<JournalChange> Changes) step,
        params JournalChangeKind[] kinds
    ) => step.Changes.Count(change => kinds.Contains(change.Kind));

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
                    var balance = 0;
                    foreach (
                        var asOf in history
                            .Samples.Select(sample => sample.TakenAt.AddHours(1))
                            .Append(records.End.AddDays(300))
                    )
                    {
                        var assessment = ConditionAssessor.Assess(
                            history,
                            InventedHistories.Limits,
                            new AssessmentOptions(asOf)
                        );
                        var step = journal.Reconcile(assessment, TimeSpan.FromDays(delay));
                        balance += Count(step, JournalChangeKind.Raised, JournalChangeKind.Returned);
                        balance -= Count(step, JournalChangeKind.Cleared, JournalChangeKind.ClearedByOilChange);
                        journal = step.Journal;
                        Active(journal).Length.ShouldBe(balance);

                        // What the assessment says is active is; without a delay nothing else of this charge.
                        assessment.Alerts.Select(alert => alert.Key).ShouldBeSubsetOf(Active(journal));
                        if (delay == 0)
                        {
                            Active(journal).Length.ShouldBe(assessment.Alerts.Count);
                        }

                        var again = journal.Reconcile(assessment, TimeSpan.FromDays(delay));
                        again.Changes.ShouldAllBe(change => change.Kind == JournalChangeKind.Held);
                        again.Journal.ToJson().ShouldBe(journal.ToJson());

                        var read = AlertJournal.Parse(journal.ToJson());
                        read.Entries.ShouldBe(journal.Entries);

                        foreach (var entry in journal.Entries.Where(_ => random.Next(0, 3) == 0))
                        {
                            var acknowledged = journal.Acknowledge(entry.Key);
                            Active(acknowledged).ShouldBe(Active(journal));
                            acknowledged.Acknowledge(entry.Key).ShouldBe(acknowledged);
                            journal = acknowledged;
                        }
                    }
                },
                iter: 40
            );
}
