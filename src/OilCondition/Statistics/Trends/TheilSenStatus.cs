namespace OilCondition.Statistics;

/// <summary>Whether a Theil-Sen line could be found.</summary>
public enum TheilSenStatus
{
    /// <summary>The slope is determined.</summary>
    Determined,

    /// <summary>Fewer than two readings.</summary>
    TooFewReadings,

    /// <summary>All readings were taken at one time, so that no slope exists.</summary>
    SameTime,

    /// <summary>So many readings are censored that they bound the slope on one side at most.</summary>
    NotDetermined,
}
