using FirstCalls;
using OilCondition.Limits;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Examples;

/// <summary>The documented loop, killed between all of its steps: what the maintenance system holds in the end is as without a crash.</summary>
public sealed class CrashTests : IDisposable
{
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
            new Limit(
                Measurands.Iron,
                LimitKind.Absolute,
                new LimitBand(30, 50),
                null,
                Source.CommonPractice("invented")
            ),
        ]
    );

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("journal-crash-");

    private string JournalFile => Path.Combine(folder.FullName, "journal.json");

    public void Dispose() => folder.Delete(recursive: true);

    private sealed class Crash : Exception;

    /// <summary>Counts the steps and stops at one of them.</summary>
    private sealed class Steps(int crashAt)
    {
        public int Count { get; private set; }

        public void Next()
        {
            if (Count++ == crashAt)
            {
                throw new Crash();
            }
        }
    }

    private static ConditionAssessment On(int day)
    {
        // Raised; escalated; both cleared; raised again; an oil change.
        (double Acid, double Iron)[] read = [(0.4, 10), (0.6, 40), (0.1, 10), (0.4, 60), (0.6, 10)];
        OilEvent[] events = day >= 4 ? [new OilChange(Invented.Start.AddDays(3.5))] : [];
        return ConditionAssessor.Assess(
            Invented.History(
                read.Take(day + 1)
                    .Select(
                        (one, i) =>
                            Invented.Sample(
                                i,
                                i,
                                (Measurands.AcidNumber, new Reading(one.Acid)),
                                (Measurands.Iron, new Reading(one.Iron))
                            )
                    ),
                events
            ),
            Limits,
            new AssessmentOptions(Invented.Start.AddDays(day), TimeSpan.FromDays(1))
        );
    }

    /// <summary>One run, with a place to crash between any two steps; in the middle of a save only the file beside is touched.</summary>
    private void Run(int day, MaintenanceSystem maintenance, Steps steps)
    {
        void Save(AlertJournal one)
        {
            steps.Next();
            File.WriteAllText(JournalFile + ".new", one.ToJson()[..^20]);
            steps.Next();
            one.Save(JournalFile);
            steps.Next();
        }

        var journal = AlertJournal.Load(JournalFile);
        steps.Next();
        journal = journal.Reconcile(On(day));
        Save(journal);
        foreach (var change in journal.Pending)
        {
            steps.Next();
            var workOrder = maintenance.Deliver(change);
            steps.Next();
            journal = journal.Confirm(change.Id, workOrder);
            Save(journal);
        }
    }

    private (List<WorkRequest> Requests, int Steps) Days(int crashAt)
    {
        File.Delete(JournalFile);
        var maintenance = new MaintenanceSystem();
        var steps = new Steps(crashAt);
        for (var day = 0; day < 5; day++)
        {
            try
            {
                Run(day, maintenance, steps);
            }
            catch (Crash)
            {
                Run(day, maintenance, steps);
            }
        }

        AlertJournal.Load(JournalFile).Pending.ShouldBeEmpty();
        return ([.. maintenance.Requests.Values], steps.Count);
    }

    [Fact]
    public void Killed_between_any_two_steps_nothing_is_opened_twice_and_nothing_is_forgotten()
    {
        var (expected, steps) = Days(crashAt: int.MaxValue);
        expected
            .Select(request => $"{request.Key} {request.Priority} {request.IsOpen}")
            .ShouldBe([
                "M1/undated/oil-ageing Alarm False",
                "M1/undated/wear Alert False",
                "M1/undated/wear Alarm False",
                "M1/undated/oil-ageing Alert False",
                "M1/2025-01-09/oil-ageing Alarm True",
            ]);
        steps.ShouldBeGreaterThan(50);
        for (var crashAt = 0; crashAt < steps; crashAt++)
        {
            Days(crashAt).Requests.ShouldBe(expected, $"crash at step {crashAt}");
        }
    }

    [Fact]
    public void A_crash_whose_next_run_is_the_next_days_forgets_nothing_either()
    {
        var (_, steps) = Days(crashAt: int.MaxValue);
        for (var crashAt = 0; crashAt < steps; crashAt++)
        {
            File.Delete(JournalFile);
            var maintenance = new MaintenanceSystem();
            var counted = new Steps(crashAt);
            for (var day = 0; day < 5; day++)
            {
                try
                {
                    Run(day, maintenance, counted);
                }
                catch (Crash)
                {
                    // This day's run is lost; the next one delivers what it left.
                }
            }

            var journal = AlertJournal.Load(JournalFile);
            foreach (var change in journal.Pending)
            {
                maintenance.Deliver(change);
            }

            // One open request for each open alert, and none for any other.
            maintenance
                .Requests.Values.Where(request => request.IsOpen)
                .Select(request => request.Key)
                .ShouldBe(
                    journal.Entries.Where(entry => entry.IsActive).Select(entry => entry.Key),
                    ignoreOrder: true,
                    $"crash at step {crashAt}"
                );
        }
    }

    [Fact]
    public void Half_a_file_beside_is_no_harm_and_a_journal_that_is_not_there_is_empty()
    {
        AlertJournal.Load(JournalFile).Entries.ShouldBeEmpty();
        File.WriteAllText(JournalFile + ".new", "{ \"aler");
        var journal = AlertJournal.Empty.Reconcile(On(0));
        journal.Save(JournalFile);
        journal.Save(JournalFile);

        AlertJournal.Load(JournalFile).ToJson().ShouldBe(journal.ToJson());
        Directory.GetFiles(folder.FullName).ShouldBe([JournalFile]);
    }
}
