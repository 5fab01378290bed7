namespace OilCondition.Statistics;

/// <summary>What a series does.</summary>
public enum TrendVerdict
{
    /// <summary>Too few readings, or all at one time: nothing can be said.</summary>
    TooFewReadings,

    /// <summary>No significant trend: a slope as large comes by chance.</summary>
    NoTrend,

    /// <summary>It rises, more than chance explains.</summary>
    Rising,

    /// <summary>It falls, more than chance explains.</summary>
    Falling,
}
