namespace OilCondition.Statistics;

/// <summary>Where the probability of a Mann-Kendall test comes from.</summary>
internal enum MannKendallMethod
{
    /// <summary>The exact distribution up to 20 readings where nothing is tied, censored or correlated; the normal one elsewhere.</summary>
    Automatic,

    /// <summary>The exact distribution of the score.</summary>
    Exact,

    /// <summary>The normal distribution with the variance corrected for ties, and the correction for continuity.</summary>
    Normal,

    /// <summary>All values, or all times, are equal: nothing can be told and every probability is 1.</summary>
    NoVariation,

    /// <summary>Fewer than two readings: nothing can be told and every probability is 1.</summary>
    TooFewReadings,
}
