using OilCondition.Tests.Advice;
using UnitsNet;

namespace OilCondition.Tests.Sampling;

/// <summary>Invented histories with all that can be wrong in one, the same for the same seed.</summary>
internal static class HostileHistories
{
    /// <summary>An invented history with all that can be in one: bounds, methods, texts, conflicts, implausible readings, moments to the tick.</summary>
    public static OilHistory Of(int seed)
    {
        var one = new InventedHistories(seed);
        var random = new Random(seed);
        var samples = one.Samples.Select(sample =>
        {
            var readings = sample.Readings.ToDictionary(
                pair => pair.Key,
                pair =>
                    random.Next(0, 6) switch
                    {
                        0 => new Reading(pair.Value.Value / 3, (Qualifier)random.Next(0, 4), "ASTM D6304 / <b>"),
                        1 => new Reading(1e12),
                        _ => pair.Value,
                    }
            );
            var texts = new Dictionary<string, string>
            {
                ["Remark é \"x\""] = "",
                ["Lab"] = $"cell {random.Next(9)}\n",
            };
            return new OilSample(
                random.Next(0, 8) == 0 ? "" : sample.SampleNumber,
                sample.TakenAt.ToOffset(TimeSpan.FromMinutes(30 * random.Next(-20, 20))).AddTicks(random.Next(0, 3)),
                readings,
                random.Next(0, 3) == 0 ? texts : null
            );
        });
        var sensors = one.Sensors.Select(row =>
            random.Next(0, 9) == 0
                ? new SensorReading(
                    row.At.AddTicks(7),
                    new Dictionary<Measurand, Reading> { [Measurands.OilTemperature] = new(900 + random.Next(0, 2)) }
                )
                : row
        );
        List<OilEvent> events =
        [
            .. one.Events,
            new TopUp(one.End.AddDays(-20), Volume.FromLiters(1 + random.NextDouble())),
            new TreatmentRun(one.End.AddDays(-3), null, TreatmentKind.Coalescer, Measurands.WaterContent, 80.1, "U1"),
            new TreatmentRun(
                one.End.AddDays(-9),
                one.End.AddDays(-8),
                TreatmentKind.VacuumDehydration,
                Measurands.WaterContent,
                80,
                planned: new(
                    VolumeFlow.FromLitersPerHour(700),
                    Ratio.FromDecimalFractions(0.1 + random.NextDouble() / 2),
                    MassFraction.FromPartsPerMillion(17.3),
                    MassFlow.FromGramsPerHour(1.1)
                )
            ),
        ];
        return OilHistory.Create(
            Invented.Machine,
            samples.Concat(one.Samples.Where(_ => random.Next(0, 4) == 0)),
            sensors.Concat(one.Sensors.Take(2)),
            events
        );
    }
}
