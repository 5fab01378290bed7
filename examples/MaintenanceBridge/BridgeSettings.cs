using System.Globalization;

namespace MaintenanceBridge;

/// <summary>What the one who starts the bridge decides; no request changes any of it.</summary>
/// <param name="Store">Path of the SQLite file.</param>
/// <param name="Port">Port on the loopback interface; 0 for any that is free.</param>
/// <param name="StationFolder">Folder with <c>station.json</c> and <c>limits/*.json</c>.</param>
/// <param name="LargestUploadBytes">Largest body of a request.</param>
public sealed record BridgeSettings(string Store, int Port, string StationFolder, long LargestUploadBytes = 16 << 20)
{
    private const int DefaultPort = 5080;

    /// <summary>The demo: the station of Harrow Point, the store under <c>artifacts</c>.</summary>
    public static BridgeSettings From(string[] args)
    {
        string? After(string name) =>
            Array.IndexOf(args, name) is var i && i >= 0 && i + 1 < args.Length ? args[i + 1] : null;
        var store = After("--store") ?? Path.Combine("artifacts", "maintenance-bridge", "bridge.db");
        var port = After("--port") is { } text ? int.Parse(text, CultureInfo.InvariantCulture) : DefaultPort;
        return new BridgeSettings(
            Path.GetFullPath(store),
            port,
            After("--station") ?? Path.Combine(AppContext.BaseDirectory, "Station")
        );
    }
}
