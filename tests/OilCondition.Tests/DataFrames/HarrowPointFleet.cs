using HarrowPoint;
using OilCondition.Tests.Architecture;

namespace OilCondition.Tests.DataFrames;

/// <summary>The invented station, assessed once, with a machine beside it of which there is no record.</summary>
internal static class HarrowPointFleet
{
    public static readonly StationRecords Station = StationRecords.Read(
        RepositoryFiles.PathOf("examples", "HarrowPoint", "Data")
    );

    public static readonly IReadOnlyList<OilHistory> Histories =
    [
        .. Station.Machines.Select(
            (one, i) => i == 2 ? OilHistory.Create(one.History.Machine, [], [], []) : one.History
        ),
    ];

    public static readonly string NeverSampled = Histories[2].Machine.Id;

    public static readonly IReadOnlyList<ConditionAssessment> Assessments =
    [
        .. Histories.Zip(
            Station.Machines,
            (history, one) => ConditionAssessor.Assess(history, one.Limits, new AssessmentOptions(Station.AsOf))
        ),
    ];

    public static readonly IReadOnlyList<TreatmentDecision> Decisions = TreatmentDecision.Of(
        Assessments,
        Station.Station
    );

    public static string LabFilePath =>
        RepositoryFiles.PathOf("examples", "HarrowPoint", "Data", "lab-b-2025-2026.csv");
}
