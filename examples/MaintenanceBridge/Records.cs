using OilCondition;

namespace MaintenanceBridge;

/// <summary>Records by machine, and what could not be taken over or is in doubt.</summary>
public sealed record Records(
    IReadOnlyDictionary<string, IReadOnlyList<OilSample>> Samples,
    IReadOnlyDictionary<string, IReadOnlyList<SensorReading>> SensorReadings,
    IReadOnlyList<string> Problems
)
{
    public IEnumerable<string> MachineIds => Samples.Keys.Union(SensorReadings.Keys).Order(StringComparer.Ordinal);
}
