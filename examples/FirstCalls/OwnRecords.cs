using OilCondition;
using UnitsNet;

namespace FirstCalls;

/// <summary>Records of your own as a history, kept as JSON and read back with nothing lost.</summary>
public static class OwnRecords
{
    public static OilHistory Run(Machine machine, DateTimeOffset since)
    {
        // snippet
        var sample = new OilSample(
            "L-1042",
            since.AddDays(30),
            new Dictionary<Measurand, Reading>
            {
                [Measurands.WaterContent] = new(180, method: "ASTM D6304"),
                [Measurands.Iron] = new(5, Qualifier.LessThan),
            }
        );
        OilEvent[] events = [new OilChange(since), new TopUp(since.AddDays(12), Volume.FromLiters(20))];
        var history = OilHistory.Create(machine, [sample], sensorReadings: [], events);

        var json = history.ToJson(); // to keep, or to send
        var again = OilHistory.Parse(json);
        // end

        return again;
    }
}
