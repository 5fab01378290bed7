namespace MaintenanceBridge;

/// <summary>What may be sent.</summary>
public enum ReceivedKind
{
    LaboratoryFile,
    SensorLog,
    History,
}
