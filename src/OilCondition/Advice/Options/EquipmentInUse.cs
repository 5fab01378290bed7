namespace OilCondition;

/// <summary>Which equipment works somewhere now, and until when it is expected to: until then it can begin nowhere else.</summary>
internal sealed class EquipmentInUse(IReadOnlyList<ConditionAssessment> assessments)
{
    /// <summary>When the last of some pieces is free; null where none of them works now, or nothing tells its end.</summary>
    public DateTimeOffset? FreeAt(IReadOnlyList<string> equipment) =>
        assessments
            .Select(one => one.Cleanup)
            .OfType<CleanupProgress>()
            .Where(one => one.Run.Equipment is { } id && equipment.Contains(id))
            .Select(one => one.Status.Arrival.TryEstimate(out var end) ? (DateTimeOffset?)end : null)
            .Max();
}
