using OilCondition;

namespace MaintenanceBridge;

/// <summary>An alert as the maintenance system sees it.</summary>
public sealed record WorkRequest(
    string Key,
    string Machine,
    string Severity,
    string State,
    bool IsActive,
    DateTimeOffset? RaisedAt,
    DateTimeOffset? ClearedAt,
    string Statement,
    string WorkOrder,
    string AcknowledgedBy
)
{
    public static WorkRequest Of(JournalEntry entry) =>
        new(
            entry.Key,
            entry.MachineId,
            entry.Severity.ToString(),
            entry.State.ToString(),
            entry.IsActive,
            entry.RaisedAt,
            entry.ClearedAt,
            entry.Sentence,
            entry.WorkOrder,
            entry.Acknowledged?.By ?? ""
        );
}
