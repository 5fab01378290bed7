using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition;

/// <summary>Reads the history of one machine and reports every fault with its place in the document.</summary>
internal sealed class HistoryReader(MeasurandCatalog catalog)
{
    private readonly ReadingsReader readings = new(catalog);
    private readonly OilEventReader events = new(catalog);

    public static OilHistory Read(string json, MeasurandCatalog catalog) =>
        JsonEntry.Read(json, JsonFormat.History, new HistoryReader(catalog).Of);

    private OilHistory? Of(JsonEntry root)
    {
        root.Known("machine", "samples", "sensorReadings", "events", "issues");
        var machine = root.Object("machine") is { } entry ? MachineOf(entry) : null;
        var samples = root.ListIfAny("samples", Sample);
        var sensors = root.ListIfAny("sensorReadings", Sensor);
        var done = root.ListIfAny("events", events.Read);
        var issues = root.ListIfAny("issues", Issue);
        if (!root.IsFaultless || machine is null)
        {
            return null;
        }

        if (!root.Has("issues"))
        {
            return OilHistory.Create(machine, samples, sensors, done);
        }

        CheckOrder(root, "samples", samples, sample => sample.TakenAt);
        CheckOrder(root, "sensorReadings", sensors, reading => reading.At);
        CheckOrder(root, "events", done, one => one.At);
        CheckPlausible(root, "samples", samples.Select(sample => sample.Readings));
        CheckPlausible(root, "sensorReadings", sensors.Select(reading => reading.Readings));
        return OilHistory.Restored(machine, samples, sensors, done, issues);
    }

    private Machine? MachineOf(JsonEntry entry)
    {
        entry.Known("id", "name", "oil", "oilLitres", "runningCelsius", "standstillCelsius");
        var id = entry.Text("id");
        var name = entry.Text("name");
        var oil = entry.Object("oil") is { } filled ? OilOf(filled) : null;
        var litres = entry.Number("oilLitres");
        var running = entry.Number("runningCelsius");
        var standstill = entry.Number("standstillCelsius");
        return id is null || name is null || oil is null || litres is null || running is null || standstill is null
            ? null
            : entry.Made(() =>
                new Machine(
                    id,
                    name,
                    oil,
                    Volume.FromLiters(litres.Value),
                    Temperature.FromDegreesCelsius(running.Value),
                    Temperature.FromDegreesCelsius(standstill.Value)
                )
            );
    }

    private Oil? OilOf(JsonEntry entry)
    {
        entry.Known("name", "newReadings", "saturation");
        var name = entry.Text("name");
        var unused = readings.Read(entry, "newReadings");
        var curve = name is null ? null : SaturationCurveReader.Read(entry, name);
        return name is null ? null : entry.Made(() => new Oil(name, unused, curve));
    }

    private OilSample? Sample(JsonEntry entry)
    {
        entry.Known("sampleNumber", "takenAt", "readings", "texts");
        var number = entry.TextOrEmpty("sampleNumber");
        var takenAt = entry.Moment("takenAt");
        var measured = readings.Read(entry, "readings");
        var texts = Texts(entry);
        return takenAt is { } at ? entry.Made(() => new OilSample(number, at, measured, texts)) : null;
    }

    private SensorReading? Sensor(JsonEntry entry)
    {
        entry.Known("at", "readings");
        var at = entry.Moment("at");
        var measured = readings.Read(entry, "readings");
        return at is { } moment ? entry.Made(() => new SensorReading(moment, measured)) : null;
    }

    private HistoryIssue? Issue(JsonEntry entry)
    {
        entry.Known("kind", "at", "sampleNumber", "readings", "texts");
        var kind = entry.Word<HistoryIssueKind>("kind");
        var at = entry.Moment("at");
        var number = entry.TextOrEmpty("sampleNumber");
        var concerned = readings.Read(entry, "readings");
        var texts = Texts(entry);
        return kind is null || at is null ? null : new HistoryIssue(kind.Value, at.Value, number, concerned, texts);
    }

    private static Dictionary<string, string> Texts(JsonEntry entry)
    {
        var texts = new Dictionary<string, string>(StringComparer.Ordinal);
        if (entry.ObjectIfAny("texts") is { } list)
        {
            foreach (var header in list.Names)
            {
                texts[header] = list.AnyText(header) ?? "";
            }
        }

        return texts;
    }

    /// <summary>With its issues, the records have been put in order already; what was changed since would break that in silence.</summary>
    private static void CheckOrder<T>(
        JsonEntry root,
        string name,
        IReadOnlyList<T> records,
        Func<T, DateTimeOffset> momentOf
    )
    {
        for (var i = 1; i < records.Count; i++)
        {
            if (momentOf(records[i]) < momentOf(records[i - 1]))
            {
                root.Fault(
                    $"{name}[{i}]",
                    "earlier than the one before; leave 'issues' out to have records put in order."
                );
                return;
            }
        }
    }

    private static void CheckPlausible(
        JsonEntry root,
        string name,
        IEnumerable<IReadOnlyDictionary<Measurand, Reading>> records
    )
    {
        foreach (var (record, i) in records.Select((record, i) => (record, i)))
        {
            foreach (var pair in record.Where(pair => !pair.Key.IsPlausible(pair.Value.Value)))
            {
                root.Fault(
                    $"{name}[{i}]",
                    $"{pair.Key.Id} {pair.Key.Text(pair.Value)} is not plausible; leave 'issues' out to have it set aside."
                );
            }
        }
    }
}
