using System.Text.Json;
using OilCondition.Text;
using OilCondition.Water;

namespace OilCondition;

/// <summary>Writes the history of one machine so that it is read back to the last digit and tick.</summary>
internal static class HistoryJson
{
    public static JsonOutput Of(OilHistory history) =>
        new(
            JsonFormat.History,
            json =>
            {
                json.WriteObject("machine", () => Machine(json, history.Machine));
                json.WriteList("samples", history.Samples, sample => Sample(json, sample));
                json.WriteList("sensorReadings", history.SensorReadings, reading => Sensor(json, reading));
                json.WriteList("events", history.Events, one => Event(json, one));
                json.WriteList("issues", history.Issues, issue => Issue(json, issue));
            }
        );

    private static void Machine(Utf8JsonWriter json, Machine machine)
    {
        json.WriteString("id", machine.Id);
        json.WriteString("name", machine.Name);
        json.WriteObject("oil", () => Oil(json, machine.Oil));
        json.WriteExact("oilLitres", machine.ChargeVolume.Liters);
        json.WriteExact("runningCelsius", machine.RunningTemperature.DegreesCelsius);
        json.WriteExact("standstillCelsius", machine.StandstillTemperature.DegreesCelsius);
    }

    private static void Oil(Utf8JsonWriter json, Oil oil)
    {
        json.WriteString("name", oil.Name);
        Readings(json, "newReadings", oil.NewReadings);
        if (oil.SaturationCurve is { } curve)
        {
            json.WriteCurve("saturation", curve);
        }
    }

    private static void Sample(Utf8JsonWriter json, OilSample sample)
    {
        json.WriteText("sampleNumber", sample.IsNumbered ? sample.SampleNumber : "");
        json.WriteExact("takenAt", sample.TakenAt);
        Readings(json, "readings", sample.Readings);
        Texts(json, sample.Texts);
    }

    private static void Sensor(Utf8JsonWriter json, SensorReading reading)
    {
        json.WriteExact("at", reading.At);
        Readings(json, "readings", reading.Readings);
    }

    private static void Event(Utf8JsonWriter json, OilEvent one)
    {
        switch (one)
        {
            case TopUp topUp:
                json.WriteString("kind", OilEventReader.TopUp);
                json.WriteExact("at", topUp.At);
                json.WriteExact("litres", topUp.Volume.Liters);
                break;
            case TreatmentRun run:
                json.WriteWord("kind", run.Kind);
                json.WriteExact("at", run.At);
                if (run.EndedAt is { } end)
                {
                    json.WriteExact("endedAt", end);
                }

                json.WriteString("measurand", run.Measurand.Id);
                json.WriteExact("target", run.Target);
                json.WriteString("unit", run.Measurand.Unit);
                json.WriteText("equipment", run.Equipment);
                if (run.Planned is { } planned)
                {
                    json.WriteStartObject("planned");
                    json.WriteExact("flowLitresPerMinute", planned.Flow.LitersPerMinute);
                    json.WriteExact("removalPerPass", planned.RemovalPerPass.DecimalFractions);
                    json.WriteExact("floorMgPerKg", planned.FloorWithoutIngress.PartsPerMillion);
                    json.WriteExact("waterIngressGramsPerHour", planned.WaterIngress.GramsPerHour);
                    json.WriteEndObject();
                }

                break;
            default:
                json.WriteString("kind", OilEventReader.OilChange);
                json.WriteExact("at", one.At);
                break;
        }
    }

    internal static void Issue(Utf8JsonWriter json, HistoryIssue issue)
    {
        json.WriteWord("kind", issue.Kind);
        json.WriteExact("at", issue.At);
        json.WriteText("sampleNumber", issue.SampleNumber);
        Readings(json, "readings", issue.Readings);
        Texts(json, issue.Texts);
    }

    private static void Texts(Utf8JsonWriter json, IReadOnlyDictionary<string, string> texts)
    {
        if (texts.Count == 0)
        {
            return;
        }

        json.WriteStartObject("texts");
        foreach (var text in texts.OrderBy(text => text.Key, StringComparer.Ordinal))
        {
            json.WriteString(text.Key, text.Value);
        }

        json.WriteEndObject();
    }

    private static void Readings(Utf8JsonWriter json, string name, IReadOnlyDictionary<Measurand, Reading> readings) =>
        json.WriteList(
            name,
            readings.OrderBy(pair => pair.Key.Id, StringComparer.Ordinal),
            pair =>
            {
                json.WriteString("measurand", pair.Key.Id);
                json.WriteExact("value", pair.Value.Value);
                json.WriteString("unit", pair.Key.Unit);
                if (pair.Value.Qualifier != Qualifier.None)
                {
                    json.WriteWord("qualifier", pair.Value.Qualifier);
                }

                json.WriteText("method", pair.Value.Method);
            }
        );
}
