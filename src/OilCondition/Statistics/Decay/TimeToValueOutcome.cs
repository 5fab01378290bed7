namespace OilCondition.Statistics;

/// <summary>Whether a falling curve reaches a value.</summary>
internal enum TimeToValueOutcome
{
    /// <summary>Every curve compatible with the readings reaches the value.</summary>
    Reached,

    /// <summary>Some compatible curve levels off above the value: that it is ever reached is not demonstrated, and there is no latest time.</summary>
    NotDemonstrated,

    /// <summary>No curve compatible with the readings reaches the value.</summary>
    NeverReached,

    /// <summary>The best curve is at or below the value from its start.</summary>
    AlreadyReached,

    /// <summary>There are too few readings.</summary>
    TooFewReadings,
}
