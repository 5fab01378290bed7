namespace OilCondition.Statistics;

/// <summary>What an exponential fit could tell.</summary>
public enum ExponentialDecayStatus
{
    /// <summary>Start, floor and rate are determined.</summary>
    Determined,

    /// <summary>The best floor is the lowest one allowed; start and rate are determined for that floor.</summary>
    AtFloorBound,

    /// <summary>The data are a straight line within their scatter: they bound the rate from above but do not determine it.</summary>
    StraightLine,

    /// <summary>The drop is over before the second reading: the data bound the rate from below but do not determine it.</summary>
    FasterThanSampling,

    /// <summary>The values rise towards their asymptote.</summary>
    Rising,

    /// <summary>No more readings than parts to be fitted (four readings for three parts), or at fewer different times than parts.</summary>
    TooFewReadings,

    /// <summary>Fewer than four readings, or three different times, lie above the limit below which nothing is told apart.</summary>
    TooFewAboveLimit,
}
