namespace OilCondition.LabFiles;

/// <summary>What was read from a sensor log.</summary>
public sealed class SensorLogResult : FileResult
{
    private readonly Dictionary<string, List<SensorReading>> readings;

    internal SensorLogResult(string fileName, Collected<SensorReading> read, TableFile file)
        : base(fileName, read.MachineIds, read.Problems, read.Doubts, file) => readings = read.OfMachine;

    /// <summary>The readings of a log that names no machine, or only one.</summary>
    /// <returns>The readings in order of the file.</returns>
    /// <exception cref="InvalidOperationException">The log is of several machines: ask for one of them.</exception>
    public IReadOnlyList<SensorReading> Readings =>
        readings.Count > 1
            ? throw new InvalidOperationException(
                $"{FileName} has readings of {readings.Count} machines; ask for one of them: {string.Join(", ", MachineIds.Take(20))}."
            )
            : [.. readings.Values.SelectMany(all => all)];

    /// <summary>The readings of a machine.</summary>
    /// <param name="machineId">The machine's id as in the file; empty in a log that names none.</param>
    /// <returns>The readings in order of the file; none for a machine that is not in it.</returns>
    public IReadOnlyList<SensorReading> ReadingsOf(string machineId) =>
        readings.TryGetValue(machineId, out var found) ? found : [];
}
