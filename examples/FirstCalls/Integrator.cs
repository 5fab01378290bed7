using OilCondition;
using OilCondition.LabFiles;

namespace FirstCalls;

/// <summary>From a laboratory file to work requests.</summary>
public static class Integrator
{
    public static IReadOnlyList<(string Key, string Text)> Run(
        Machine machine,
        string labFile,
        string limitFile,
        string journalFile,
        DateTimeOffset asOf
    )
    {
        var requests = new List<(string, string)>();
        void OpenWorkRequest(string key, string text) => requests.Add((key, text));

        // snippet
        var samples = LabFile.Read(labFile, ColumnMap.Default).SamplesOf(machine.Id);
        var history = OilHistory.Create(machine, samples, sensorReadings: [], events: []);
        var limits = LimitSet.Parse(File.ReadAllText(limitFile));

        var assessment = ConditionAssessor.Assess(history, limits, new AssessmentOptions(asOf));
        var step = AlertJournal.Parse(File.ReadAllText(journalFile)).Reconcile(assessment);
        foreach (var change in step.Changes.Where(change => change.Kind == JournalChangeKind.Raised))
        {
            // Tomorrow the same problem has the same key: it is held, and no second request is opened.
            OpenWorkRequest(change.Entry.Key, change.Entry.Sentence);
        }

        File.WriteAllText(journalFile, step.Journal.ToJson());
        // end

        return requests;
    }
}
