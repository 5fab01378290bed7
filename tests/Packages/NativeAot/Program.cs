using System.Text.Json;
using OilCondition;
using OilCondition.Contracts;
using UnitsNet;

// The main job in a native program; the figures are invented.
var machine = new Machine(
    "M1",
    "invented machine",
    new Oil("invented oil", new Dictionary<Measurand, Reading>()),
    Volume.FromLiters(500),
    Temperature.FromDegreesCelsius(60),
    Temperature.FromDegreesCelsius(20)
);
var samples = Enumerable
    .Range(0, 12)
    .Select(month => new OilSample(
        $"S{month}",
        new DateTimeOffset(2025, 4, 1, 8, 0, 0, TimeSpan.Zero).AddDays(30 * month),
        new Dictionary<Measurand, Reading> { [Measurands.WaterContent] = new(80 + 15 * month + month % 3) }
    ));
var limits = LimitSet.Parse(
    """
    { "name": "first", "limits": [ { "measurand": "water-content", "kind": "absolute", "upper": { "alert": 200 },
      "source": { "kind": "user-data", "text": "invented" } } ] }
    """
);
var assessment = ConditionAssessor.Assess(
    OilHistory.Create(machine, samples, [], []),
    limits,
    new AssessmentOptions(new DateTimeOffset(2026, 3, 20, 0, 0, 0, TimeSpan.Zero))
);
var journal = AlertJournal.Parse(AlertJournal.Empty.Reconcile(assessment).ToJson());
foreach (var change in journal.Pending)
{
    Console.WriteLine($"{change}: {change.Sentence}");
}

return journal.Pending.Count == 1 && assessment.ToJson().Contains("\"water-content\"", StringComparison.Ordinal)
    ? 0
    : 1;
