namespace OilCondition.Statistics;

/// <summary>Whether a sample supports a tolerance limit.</summary>
public enum ToleranceOutcome
{
    /// <summary>It does.</summary>
    Determined,

    /// <summary>There are too few readings: not even the most extreme one bounds that share with that confidence.</summary>
    TooFewReadings,
}
