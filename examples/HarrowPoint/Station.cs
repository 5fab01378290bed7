using System.Text.Json;
using OilCondition;
using OilCondition.LabFiles;
using OilCondition.Water;
using UnitsNet;

namespace HarrowPoint;

/// <summary>The invented station as its files describe it: machines with their histories and limits.</summary>
public sealed class Station
{
    private Station(
        DateTimeOffset asOf,
        IReadOnlyList<(OilHistory History, LimitSet Limits)> machines,
        IReadOnlyList<FileProblem> problems,
        IReadOnlyList<string> unmapped
    )
    {
        AsOf = asOf;
        Machines = machines;
        Problems = problems;
        UnmappedColumns = unmapped;
    }

    public DateTimeOffset AsOf { get; }

    public IReadOnlyList<(OilHistory History, LimitSet Limits)> Machines { get; }

    public IReadOnlyList<FileProblem> Problems { get; }

    public IReadOnlyList<string> UnmappedColumns { get; }

    /// <summary>Reads the folder: station.json, the files of two laboratories, Karl Fischer values taken on site, sensor logs, limits.</summary>
    public static Station Read(string folder) => Read(file => File.ReadAllText(Path.Combine(folder, file)));

    /// <summary>Reads the same files from wherever their texts are.</summary>
    public static Station Read(Func<string, string> text)
    {
        using var document = JsonDocument.Parse(text("station.json"));
        var root = document.RootElement;
        LabFileResult[] labs =
        [
            Lab(text, "lab-a-2023-2024.csv", ColumnMap.Parse(text("lab-a-columns.json"))),
            Lab(text, "lab-b-2025-2026.csv", ColumnMap.Default),
            Lab(text, "karl-fischer-on-site.csv", ColumnMap.Default),
        ];
        var problems = labs.SelectMany(lab => lab.Problems).ToList();
        var unmapped = labs.SelectMany(lab => lab.UnmappedColumns).Select(column => column.Header).ToList();
        var oils = root.GetProperty("oils").EnumerateArray().ToDictionary(oil => Text(oil, "id"), ReadOil);
        var machines = new List<(OilHistory, LimitSet)>();
        foreach (var entry in root.GetProperty("machines").EnumerateArray())
        {
            var machine = new Machine(
                Text(entry, "id"),
                Text(entry, "name"),
                oils[Text(entry, "oil")],
                Volume.FromLiters(Number(entry, "chargeLitres")),
                Temperature.FromDegreesCelsius(Number(entry, "runningCelsius")),
                Temperature.FromDegreesCelsius(Number(entry, "standstillCelsius"))
            );
            var logs = entry
                .GetProperty("sensorLogs")
                .EnumerateArray()
                .Select(file => Log(text, file.GetString()!))
                .ToList();
            problems.AddRange(logs.SelectMany(log => log.Problems));
            var events = root.GetProperty("events").EnumerateArray().Where(one => Text(one, "machine") == machine.Id);
            var history = OilHistory.Create(
                machine,
                labs.SelectMany(lab => lab.SamplesOf(machine.Id)),
                logs.SelectMany(log => log.Readings),
                events.Select(ReadEvent)
            );
            machines.Add((history, LimitSet.Parse(text($"limits/{Text(entry, "limits")}.json"))));
        }

        return new Station(root.GetProperty("asOf").GetDateTimeOffset(), machines, problems, unmapped);
    }

    private static LabFileResult Lab(Func<string, string> text, string file, ColumnMap map)
    {
        using var reader = new StringReader(text(file));
        return LabFile.Read(reader, file, map);
    }

    private static SensorLogResult Log(Func<string, string> text, string file)
    {
        using var reader = new StringReader(text(file));
        return SensorLog.Read(reader, file, ColumnMap.Default);
    }

    private static Oil ReadOil(JsonElement oil)
    {
        var readings = oil.GetProperty("new")
            .EnumerateObject()
            .ToDictionary(one => Measurand(one.Name), one => new Reading(one.Value.GetDouble()));
        if (!oil.TryGetProperty("saturation", out var points))
        {
            return new Oil(Text(oil, "name"), readings);
        }

        return new Oil(
            Text(oil, "name"),
            readings,
            SaturationCurve.FromTwoPoints(
                Text(oil, "name"),
                Temperature.FromDegreesCelsius(Number(points[0], "celsius")),
                MassFraction.FromPartsPerMillion(Number(points[0], "mgPerKg")),
                Temperature.FromDegreesCelsius(Number(points[1], "celsius")),
                MassFraction.FromPartsPerMillion(Number(points[1], "mgPerKg")),
                Source.UserData("two points of the invented site laboratory")
            )
        );
    }

    private static OilEvent ReadEvent(JsonElement entry)
    {
        var at = entry.GetProperty("at").GetDateTimeOffset();
        return Text(entry, "kind") switch
        {
            "oil-change" => new OilChange(at),
            "top-up" => new TopUp(at, Volume.FromLiters(Number(entry, "litres"))),
            "vacuum-dehydration" => new TreatmentRun(
                at,
                entry.TryGetProperty("endedAt", out var end) ? end.GetDateTimeOffset() : null,
                TreatmentKind.VacuumDehydration,
                Measurand(Text(entry, "measurand")),
                Number(entry, "target")
            ),
            var kind => throw new FormatException($"station.json: '{kind}' is not a kind of event."),
        };
    }

    private static Measurand Measurand(string id) =>
        MeasurandCatalog.BuiltIn.TryFind(id, out var measurand)
            ? measurand!
            : throw new FormatException($"station.json: '{id}' is not a measurand.");

    private static string Text(JsonElement element, string name) => element.GetProperty(name).GetString()!;

    private static double Number(JsonElement element, string name) => element.GetProperty(name).GetDouble();
}
