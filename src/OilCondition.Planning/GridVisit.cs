namespace OilCondition.Planning;

/// <summary>One visit in whole steps. Task and the task before it are indices; −1 is the unit's own place or the visit under way.</summary>
internal readonly record struct GridVisit(
    int Task,
    int Before,
    long Leave,
    long Arrive,
    long Start,
    long ProcessEnd,
    long DisconnectStart,
    long DisconnectEnd
);
