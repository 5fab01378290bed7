using OilCondition;
using OilCondition.LabFiles;

namespace FirstCalls;

/// <summary>From a laboratory file to work requests.</summary>
public static class Integrator
{
    public static void Run(
        Machine machine,
        string labFile,
        string limitFile,
        string journalFile,
        DateTimeOffset asOf,
        MaintenanceSystem maintenance
    )
    {
        // snippet
        var file = LabFile.Read(labFile, ColumnMap.Default);
        foreach (var problem in file.Problems.Concat(file.Doubts))
        {
            Console.Error.WriteLine(problem); // each cell that was not taken over, and each unit that nobody states
        }

        var history = OilHistory.Create(machine, file.SamplesOf(machine.Id), sensorReadings: [], events: []);
        var limits = LimitSet.Parse(File.ReadAllText(limitFile));

        var assessment = ConditionAssessor.Assess(history, limits, new AssessmentOptions(asOf));
        var journal = AlertJournal.Load(journalFile).Reconcile(assessment);
        journal.Save(journalFile);
        foreach (var change in journal.Pending)
        {
            // Opens, raises the priority or closes, as the change says. It keeps change.Id, and does nothing for one that it has.
            var workOrder = maintenance.Deliver(change);
            journal = journal.Confirm(change.Id, workOrder);
            journal.Save(journalFile);
        }

        // end
    }
}
