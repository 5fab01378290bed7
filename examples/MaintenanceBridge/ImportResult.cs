namespace MaintenanceBridge;

/// <summary>What an import took over, and all that it did not.</summary>
/// <param name="Receipt">The same for the same bytes: sending them again changes nothing.</param>
/// <param name="IsNew">Whether they came for the first time.</param>
/// <param name="Samples">Laboratory samples in it.</param>
/// <param name="SensorReadings">Sensor readings in it.</param>
/// <param name="Machines">Machines that it is of.</param>
/// <param name="Problems">Every cell that was not taken over, and every assumed unit.</param>
public sealed record ImportResult(
    string Receipt,
    bool IsNew,
    int Samples,
    int SensorReadings,
    IReadOnlyList<string> Machines,
    IReadOnlyList<string> Problems
);
