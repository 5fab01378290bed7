namespace OilCondition.LabFiles;

/// <summary>One row of a file that could be taken over.</summary>
internal sealed record ReadingRow(
    string MachineId,
    string SampleNumber,
    DateTimeOffset At,
    IReadOnlyDictionary<Measurand, Reading> Readings
);
