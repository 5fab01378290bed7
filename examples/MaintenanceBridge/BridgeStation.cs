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
        return new BridgeStation(Station.Parse(File.ReadAllText(Path.Combine(folder, "station.json")), limits));
    }

    public StationMachine Machine(string id) =>
        Station.TryMachine(id, out var machine)
            ? machine
            : throw new BadRequestException($"machine is '{id}'; the station has no such machine.");
}
