using OilCondition;

namespace MaintenanceBridge;

/// <summary>What the maintenance system has not confirmed yet: bring the work request of the key to this state and severity, and keep the id.</summary>
public sealed record PendingChange(
    string Id,
    string Key,
    string Kind,
    DateTimeOffset At,
    string Severity,
    bool IsActive,
    string Statement,
    IReadOnlyList<string> Evidence
)
{
    public static PendingChange Of(JournalChange change) =>
        new(
            change.Id,
            change.Key,
            change.Kind.ToString(),
            change.At,
            change.Severity.ToString(),
            change.IsActive,
            change.Sentence,
            change.Evidence
        );
}
