using OilCondition.Limits;
using UnitsNet;

namespace OilCondition.Benchmarks;

/// <summary>Invented machines with five limited measurands and twelve samples each, for timing only.</summary>
public static class AssessmentData
{
    private static readonly DateTimeOffset Start = new(2025, 1, 6, 8, 0, 0, TimeSpan.Zero);

    // Level, scatter, rise a sample, alert, alarm.
    private static readonly (
        Measurand Measurand,
        double Level,
        double Scatter,
        double Rise,
        double Alert,
        double Alarm
    )[] Rows =
    [
        (Measurands.WaterContent, 60, 6, 2, 200, 500),
        (Measurands.AcidNumber, 0.1, 0.012, 0.004, 0.3, 0.4),
        (Measurands.Viscosity40, 46, 0.25, 0.02, 50, 55),
        (Measurands.Iron, 3, 0.6, 0.05, 20, 40),
        (Measurands.MembranePatchColour, 12, 1.5, 0.4, 30, 40),
    ];

    private static readonly Machine Machine = new(
        "M1",
        "invented machine",
        new Oil("invented oil", new Dictionary<Measurand, Reading>()),
        Volume.FromLiters(1000),
        Temperature.FromDegreesCelsius(60),
        Temperature.FromDegreesCelsius(20)
    );

    public static LimitSet Limits { get; } =
        new(
            "invented",
            Rows.Select(row => new Limit(
                row.Measurand,
                LimitKind.Absolute,
                new LimitBand(row.Alert, row.Alarm),
                null,
                Source.UserData("invented")
            ))
        );

    public static AssessmentOptions Options { get; } = new(Start.AddDays(345));

    public static OilHistory[] Machines(int count)
    {
        var random = new Random(3);
        return [.. Enumerable.Range(0, count).Select(_ => History(random))];
    }

    private static OilHistory History(Random random)
    {
        var samples = Enumerable
            .Range(0, 12)
            .Select(i => new OilSample(
                $"S{i}",
                Start.AddDays(30 * i + 6 * random.NextDouble()),
                Rows.ToDictionary(
                    row => row.Measurand,
                    row => new Reading(Math.Round(row.Level + row.Rise * i + row.Scatter * DecayData.Normal(random), 2))
                )
            ));
        return OilHistory.Create(Machine, samples, [], []);
    }
}
