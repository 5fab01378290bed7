using OilCondition;
using OilCondition.LabFiles;

namespace HarrowPoint;

/// <summary>The invented station with its records: the station file, the files of two laboratories, sensor logs and limit sets, joined.</summary>
public sealed class StationRecords
{
    private static readonly string[] LimitFiles = ["bearing", "gearbox", "hydraulic", "servo-hydraulic"];

    private StationRecords(
        Station station,
        IReadOnlyList<(OilHistory History, LimitSet Limits)> machines,
        IReadOnlyList<FileProblem> problems,
        IReadOnlyList<string> texts
    )
    {
        Station = station;
        AsOf = station.AsOf!.Value;
        Machines = machines;
        Problems = problems;
        TextColumns = texts;
    }

    public Station Station { get; }

    public DateTimeOffset AsOf { get; }

    public IReadOnlyList<(OilHistory History, LimitSet Limits)> Machines { get; }

    public IReadOnlyList<FileProblem> Problems { get; }

    public IReadOnlyList<string> TextColumns { get; }

    /// <summary>Reads the folder: station.json, the files of two laboratories, Karl Fischer values taken on site, sensor logs, limits.</summary>
    public static StationRecords Read(string folder) => Read(file => File.ReadAllText(Path.Combine(folder, file)));

    /// <summary>Reads the same files from wherever their texts are.</summary>
    public static StationRecords Read(Func<string, string> text)
    {
        var limits = LimitFiles.ToDictionary(name => name, name => LimitSet.Parse(text($"limits/{name}.json")));
        var station = Station.Parse(text("station.json"), limits);
        LabFileResult[] labs =
        [
            Lab(text, "lab-a-2023-2024.csv", ColumnMap.Parse(text("lab-a-columns.json"))),
            Lab(text, "lab-b-2025-2026.csv", ColumnMap.Default),
            Lab(text, "karl-fischer-on-site.csv", ColumnMap.Default),
        ];
        var problems = labs.SelectMany(lab => lab.Problems).ToList();
        var machines = new List<(OilHistory, LimitSet)>();
        foreach (var machine in station.Machines)
        {
            var logs = machine.SensorLogs.Select(file => Log(text, file)).ToList();
            problems.AddRange(logs.SelectMany(log => log.Problems));
            var history = machine.History(
                labs.SelectMany(lab => lab.SamplesOf(machine.Machine.Id)),
                logs.SelectMany(log => log.Readings)
            );
            machines.Add((history, machine.Limits!));
        }

        var texts = labs.SelectMany(lab => lab.Columns)
            .Where(column => column.Use == ColumnUse.Text)
            .Select(column => column.Header)
            .ToList();
        return new StationRecords(station, machines, problems, texts);
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
}
