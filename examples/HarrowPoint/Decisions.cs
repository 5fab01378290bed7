using OilCondition;

namespace HarrowPoint;

/// <summary>From findings to decisions: what the invented yard can do about them, and which way to take.</summary>
public static class Decisions
{
    public static IReadOnlyList<TreatmentDecision> Of(
        StationRecords station,
        IEnumerable<ConditionAssessment> assessments
    ) => TreatmentDecision.Of([.. assessments], station.Station);

    public static void Write(TextWriter to, IReadOnlyList<TreatmentDecision> decisions)
    {
        to.WriteLine();
        to.WriteLine("== Decisions, with what stands in the yard or can be hired");
        foreach (var decision in decisions)
        {
            to.WriteLine();
            to.WriteLine(decision);
        }
    }
}
