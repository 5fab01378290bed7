using System.Globalization;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Advice.Options;

/// <summary>A machine with a yard, as a station file; each test states what differs. Invented.</summary>
internal sealed class InventedYard
{
    public static readonly DateTimeOffset AsOf = new(2026, 3, 1, 6, 0, 0, TimeSpan.Zero);

    /// <summary>Nothing errs: the band has one value, and a formula by hand gives it.</summary>
    public static readonly InputErrors NoErrors = new(
        water: Ratio.Zero,
        saturation: Ratio.Zero,
        removalPerPass: Ratio.Zero,
        flow: Ratio.Zero,
        chamberPressure: Pressure.Zero,
        heatLoss: Ratio.Zero,
        waterIngress: Ratio.Zero,
        dropletDiameter: Ratio.Zero,
        particleCounts: Ratio.Zero
    );

    public const string Loop =
        """{ "id": "LOOP", "name": "kidney loop", "kind": "fine-filtration", "flowLitresPerMinute": 10, "highestViscosityCentistokes": 5000, "filter": { "beta4": 5, "beta6": 5, "beta14": 5 }, "elements": 1, "connectHours": 0 }""";

    public const string Vacuum =
        """{ "id": "VDU", "name": "vacuum unit", "kind": "vacuum-dehydration", "flowLitresPerMinute": 25, "highestViscosityCentistokes": 300, "heaterKilowatts": 12, "motorKilowatts": 4, "processCelsius": 60, "chamberMillibar": 40, "dryAirKilogramsPerHour": 0.5, "removalPerPass": 0.5, "connectHours": 3 }""";

    public const string Drums =
        """{ "id": "DRUMS", "name": "new oil", "kind": "drain-and-refill", "heel": 0.05, "newWaterMgPerKg": 20, "newParticlesPerMillilitre": { "at4": 100, "at6": 30, "at14": 2 }, "transferLitresPerMinute": 50, "connectHours": 2 }""";

    public string Equipment { get; init; } = "";

    public string Trains { get; init; } = "";

    public string Prices { get; init; } = "";

    public string Site { get; init; } = "";

    public string Events { get; init; } = "";

    public string Tank { get; init; } = "\"ambientCelsius\": 15, \"lossWattPerKelvin\": 0";

    public string Oil { get; init; } = "\"highestCelsius\": 80,";

    public string NewOil { get; init; } =
        "\"viscosity-40c\": 46, \"viscosity-100c\": 6.8, \"density-15c\": 870, \"acid-number\": 0.1";

    public string Saturation { get; init; } =
        """, "saturation": { "points": [ { "celsius": 20, "mgPerKg": 100 }, { "celsius": 60, "mgPerKg": 400 } ], "source": { "kind": "user-data", "text": "invented" } }""";

    public string Limits { get; init; } = Absolute("water-content", 200, 500);

    public List<(double DaysAgo, Measurand Measurand, double Value)> Readings { get; init; } = [];

    public static string Absolute(string measurand, double alert, double alarm, string side = "upper") =>
        string.Create(
            CultureInfo.InvariantCulture,
            $$"""{ "measurand": "{{measurand}}", "kind": "absolute", "{{side}}": { "alert": {{alert}}, "alarm": {{alarm}} }, "source": { "kind": "user-data", "text": "invented" } }"""
        );

    public Station Station() =>
        OilCondition.Station.Parse(
            $$"""
            { "name": "invented", "asOf": "2026-03-01T06:00:00Z",
              "oils": [ { "id": "o", "name": "invented oil", {{Oil}} "new": { {{NewOil}} } {{Saturation}} } ],
              "limitSets": [ { "name": "l", "limits": [ {{Limits}} ] } ],
              "machines": [ { "id": "M1", "name": "bearing", "oil": "o", "oilLitres": 1000, "runningCelsius": 40, "standstillCelsius": 10, "limits": "l"
                {{(Tank.Length > 0 ? $", \"tank\": {{ {Tank} }}" : "")}} {{(Site.Length > 0 ? ", " + Site : "")}} },
                { "id": "M2", "name": "another bearing", "oil": "o", "oilLitres": 500, "runningCelsius": 40, "standstillCelsius": 10, "limits": "l" } ],
              "events": [ {{Events}} ],
              "equipment": [ {{Equipment}} ],
              "trains": [ {{Trains}} ]
              {{(Prices.Length > 0 ? $", \"prices\": {{ \"currency\": \"EUR\", {Prices} }}" : "")}} }
            """
        );

    public ConditionAssessment Assess(Station station)
    {
        var machine = station.Machines[0];
        var samples = Readings
            .GroupBy(one => one.DaysAgo)
            .Select(
                (group, i) =>
                    new OilSample(
                        $"S{i}",
                        AsOf.AddDays(-group.Key),
                        group.ToDictionary(one => one.Measurand, one => new Reading(one.Value))
                    )
            );
        return ConditionAssessor.Assess(machine.History(samples, []), machine.Limits!, new AssessmentOptions(AsOf));
    }

    public IReadOnlyList<TreatmentDecision> Decide(DecisionOptions? options = null)
    {
        var station = Station();
        return TreatmentDecision.Of(Assess(station), station, options);
    }

    /// <summary>The only decision.</summary>
    public TreatmentDecision Decision(DecisionOptions? options = null) => Decide(options).ShouldHaveSingleItem();

    /// <summary>Readings every 30 days, the last one today.</summary>
    public static IEnumerable<(double, Measurand, double)> Monthly(Measurand measurand, params double[] values) =>
        values.Select((value, i) => (30.0 * (values.Length - 1 - i), measurand, value));

    /// <summary>Particles at the three sizes, today and steady before.</summary>
    public static IEnumerable<(double, Measurand, double)> Counts(double at4, double at6, double at14) =>
        Enumerable
            .Range(0, 6)
            .SelectMany(month =>
                new (double, Measurand, double)[]
                {
                    (30 * month, Measurands.Particles4, at4),
                    (30 * month, Measurands.Particles6, at6),
                    (30 * month, Measurands.Particles14, at14),
                }
            );
}
