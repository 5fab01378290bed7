using OilCondition.Advice;
using OilCondition.LabFiles;
using OilCondition.Limits;
using OilCondition.Sampling;

namespace FirstCalls;

/// <summary>From a laboratory file to work requests.</summary>
public static class Integrator
{
    public static IReadOnlyList<(string Key, string Text)> Run(
        Machine machine,
        string labFile,
        string limitFile,
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
        foreach (var alert in assessment.Alerts)
        {
            // The key is the same tomorrow: a repeat finds the request that is already open.
            OpenWorkRequest(alert.Key, Sentences.Of(alert.Findings[0]));
        }
        // end

        return requests;
    }
}
