using OilCondition;

namespace MaintenanceBridge;

/// <summary>The plant whose oils the bridge watches, read once when it starts.</summary>
public sealed class BridgeStation
{
    private BridgeStation(Station station) => Station = station;

    public Station Station { get; }

    public static BridgeStation Read(string folder)
    {
        var limits = Directory
            .GetFiles(Path.Combine(folder, "limits"), "*.json")
            .ToDictionary(
                file => Path.GetFileNameWithoutExtension(file),
                file => LimitSet.Parse(File.ReadAllText(file))
            );
        var station = Station.Parse(File.ReadAllText(Path.Combine(folder, "station.json")), limits);
        var without = station.Machines.Where(one => one.Limits is null).Select(one => one.Machine.Id).ToList();
        return without.Count == 0
            ? new BridgeStation(station)
            : throw new FormatException(
                $"station.json names no limits for {string.Join(", ", without)}; without limits nothing can be judged."
            );
    }

    public StationMachine Machine(string id) =>
        Station.TryMachine(id, out var machine)
            ? machine
            : throw new BadRequestException($"machine is '{id}'; the station has no such machine.");
}
