using BenchmarkDotNet.Attributes;
using UnitsNet;

namespace OilCondition.Benchmarks;

/// <summary>A night's run of a fleet against its journal, beside the least that it could be: a dictionary of the keys that are open.</summary>
[MemoryDiagnoser]
public class JournalBenchmarks
{
    private static readonly DateTimeOffset Monday = new(2026, 6, 1, 6, 0, 0, TimeSpan.Zero);

    private ConditionAssessment[] monday = [];
    private ConditionAssessment[] tuesday = [];
    private AlertJournal journal = AlertJournal.Empty;
    private HashSet<string> open = [];

    [Params(2000, 20000)]
    public int Machines { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        monday = Fleet(Monday);
        tuesday = Fleet(Monday.AddDays(1));
        journal = AlertJournal.Empty.Reconcile(monday);
        open = [.. monday.SelectMany(one => one.Alerts).Select(alert => alert.Key)];
    }

    [Benchmark(Baseline = true)]
    public int KeysAlone() => tuesday.Sum(one => one.Alerts.Count(alert => !open.Contains(alert.Key)));

    [Benchmark]
    public AlertJournal FirstNight() => AlertJournal.Empty.Reconcile(monday);

    [Benchmark]
    public AlertJournal SecondNight() => journal.Reconcile(tuesday);

    [Benchmark]
    public AlertJournal MachineByMachine() =>
        tuesday.Aggregate(journal, (before, assessment) => before.Reconcile(assessment));

    [Benchmark]
    public string Json() => journal.ToJson();

    [Benchmark]
    public AlertJournal Read() => AlertJournal.Parse(journal.ToJson());

    /// <summary>Machines of which each has water above its alarm figure.</summary>
    private ConditionAssessment[] Fleet(DateTimeOffset asOf)
    {
        var limits = new LimitSet(
            "invented",
            [
                new Limits.Limit(
                    Measurands.WaterContent,
                    Limits.LimitKind.Absolute,
                    new Limits.LimitBand(100, 200),
                    null,
                    Source.CommonPractice("invented")
                ),
            ]
        );
        var oil = new Oil("invented oil", new Dictionary<Measurand, Reading>());
        return
        [
            .. Enumerable
                .Range(0, Machines)
                .Select(i =>
                    ConditionAssessor.Assess(
                        OilHistory.Create(
                            new Machine(
                                $"M{i}",
                                "invented machine",
                                oil,
                                Volume.FromLiters(100),
                                Temperature.FromDegreesCelsius(50),
                                Temperature.FromDegreesCelsius(20)
                            ),
                            [
                                new OilSample(
                                    "S1",
                                    Monday,
                                    new Dictionary<Measurand, Reading> { [Measurands.WaterContent] = new(300) }
                                ),
                            ],
                            [],
                            []
                        ),
                        limits,
                        new AssessmentOptions(asOf)
                    )
                ),
        ];
    }
}
