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
        var samples = LabFile.Read(labFile, ColumnMap.Default).SamplesOf(machine.Id);
        var history = OilHistory.Create(machine, samples, sensorReadings: [], events: []);
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
