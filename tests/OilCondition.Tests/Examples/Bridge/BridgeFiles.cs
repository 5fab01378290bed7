using MaintenanceBridge;
using OilCondition.Tests.Architecture;

namespace OilCondition.Tests.Examples.Bridge;

/// <summary>The invented station's files in many small parts, as a laboratory and a gateway send them day by day.</summary>
internal static class BridgeFiles
{
    public static IReadOnlyList<Received> All { get; } =
    [
        .. Parts("lab-b-2025-2026.csv", 1)
            .Select((text, i) => Received.Of(ReceivedKind.LaboratoryFile, $"lab-{i}.csv", "", text)),
        .. Parts("karl-fischer-on-site.csv", 1)
            .Select((text, i) => Received.Of(ReceivedKind.LaboratoryFile, $"site-{i}.csv", "", text)),
        .. Parts("sensor-HP-DTG1-2026-06.csv", 24)
            .Select((text, i) => Received.Of(ReceivedKind.SensorLog, $"sensors-{i}.csv", "HP-DTG1", text)),
    ];

    private static IEnumerable<string> Parts(string file, int rows)
    {
        var lines = RepositoryFiles
            .Read("examples", "HarrowPoint", "Data", file)
            .TrimStart('\uFEFF')
            .Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return lines.Skip(1).Chunk(rows).Select(part => lines[0] + "\n" + string.Join("\n", part) + "\n");
    }
}
