using HarrowPoint;
using OilCondition.Cleanup;
using OilCondition.Limits;
using OilCondition.Tests.Advice;
using OilCondition.Tests.Advice.Options;
using OilCondition.Tests.Architecture;
using OilCondition.Tests.Cleanup;
using OilCondition.Tests.Limits;
using OilCondition.Tests.Sampling;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Contract;

/// <summary>Documents that the library writes: of the invented station, and of drawn and odd machines with all that can come up.</summary>
internal static class WrittenDocuments
{
    public static StationRecords TheStation { get; } =
        StationRecords.Read(RepositoryFiles.PathOf("examples", "HarrowPoint", "Data"));

    private static Oil NoCurve { get; } = new("no curve", new Dictionary<Measurand, Reading>());

    private static readonly Lazy<Dictionary<string, IReadOnlyList<string>>> ByFormat = new(() =>
        new(StringComparer.Ordinal)
        {
            ["assessment"] = [.. AllAssessments().Select(one => one.ToJson())],
            ["decision"] = [.. AllDecisions().Select(one => one.ToJson())],
            ["cleanup-record"] = [.. Records().Select(one => one.ToJson())],
            ["history"] =
            [
                .. TheStation.Machines.Select(one => one.History.ToJson()),
                .. Enumerable.Range(0, 30).Select(seed => HostileHistories.Of(seed).ToJson()),
                OilHistory
                    .Create(
                        new Machine(
                            "M",
                            "m",
                            NoCurve,
                            Invented.Machine.ChargeVolume,
                            Invented.Machine.RunningTemperature,
                            Invented.Machine.StandstillTemperature
                        ),
                        [],
                        [],
                        []
                    )
                    .ToJson(),
            ],
            ["journal"] = [.. Enumerable.Range(0, 12).Select(seed => Journal(seed).ToJson())],
            ["limit-set"] =
            [
                .. Enum.GetValues<StarterEquipment>().Select(one => LimitSet.Starter(one).ToJson()),
                .. TheStation.Machines.Select(one => one.Limits.ToJson()),
                InventedHistories.Limits.ToJson(),
                AnyLimits.Set.ToJson(),
            ],
        }
    );

    public static IReadOnlyList<string> Of(string id) => ByFormat.Value[id];

    public static IReadOnlyList<ConditionAssessment> Assessments() =>
        [
            .. TheStation.Machines.Select(one =>
                ConditionAssessor.Assess(one.History, one.Limits, new AssessmentOptions(TheStation.AsOf))
            ),
        ];

    private static IEnumerable<ConditionAssessment> AllAssessments() =>
        Assessments()
            .Concat(OddAssessments.All())
            .Concat(Yards().Select(yard => yard.Assess(yard.Station())))
            .Concat(
                Enumerable
                    .Range(0, 40)
                    .Select(seed =>
                        ConditionAssessor.Assess(
                            HostileHistories.Of(seed),
                            AnyLimits.Set,
                            new AssessmentOptions(
                                new InventedHistories(seed).End.AddDays(1 + seed % 400),
                                TimeSpan.FromDays(90 + seed),
                                overOilHours: seed % 3 == 0
                            )
                        )
                    )
            );

    private static IEnumerable<TreatmentDecision> AllDecisions() =>
        Decisions.Of(TheStation, Assessments()).Concat(Yards().Append(WithoutCurve).SelectMany(yard => yard.Decide()));

    /// <summary>Nothing can be planned for water while nobody knows what the oil holds.</summary>
    private static InventedYard WithoutCurve { get; } =
        new()
        {
            Saturation = "",
            Equipment = InventedYard.Vacuum,
            Readings = [.. InventedYard.Monthly(Measurands.WaterContent, 300, 310, 300)],
        };

    private static IEnumerable<InventedYard> Yards() => Enumerable.Range(0, 4).Select(DecisionPropertyTests.Drawn);

    /// <summary>A machine's alerts through its history, some of them confirmed and acknowledged; at last it is retired.</summary>
    private static AlertJournal Journal(int seed)
    {
        var records = new InventedHistories(seed);
        var history = records.History();
        var journal = AlertJournal.Empty;
        foreach (
            var asOf in history.Samples.Select(sample => sample.TakenAt.AddHours(1)).Append(records.End.AddDays(300))
        )
        {
            journal = journal.Reconcile(
                ConditionAssessor.Assess(history.Until(asOf), InventedHistories.Limits, new AssessmentOptions(asOf))
            );
            foreach (var change in journal.Pending.Where((_, i) => i % 2 == 0))
            {
                journal = journal.Confirm(change.Id, "WO-" + seed);
            }

            foreach (var entry in journal.Entries.Where((entry, i) => entry.IsActive && (i + seed) % 3 == 0))
            {
                journal = journal.Acknowledge(entry.Key, "R. Voss", asOf);
            }
        }

        return seed % 4 == 0 ? journal.Retire(history.Machine.Id, records.End.AddDays(301)) : journal;
    }

    public static IEnumerable<CleanupRecord> Records() => OddRecords.All();
}
