namespace OilCondition.Prognosis;

/// <summary>Why the next sample is due when it is.</summary>
public enum NextSampleReason
{
    /// <summary>The accepted risk of a crossing unseen is reached then.</summary>
    RiskReached,

    /// <summary>The risk is reached sooner than the shortest interval allows.</summary>
    ShortestInterval,

    /// <summary>The risk is not reached within the longest interval.</summary>
    LongestInterval,

    /// <summary>A limit is crossed by the last reading: sample again after the shortest interval to confirm it.</summary>
    LimitCrossed,

    /// <summary>The latest readings lie far on the worse side: sample again after the shortest interval to confirm it.</summary>
    SuddenChange,

    /// <summary>There are too few readings for a forecast: the shortest interval stands until there are enough.</summary>
    NoForecast,

    /// <summary>There is no sample yet: the shortest interval after the oil went in, or at once where that is not known.</summary>
    NeverSampled,

    /// <summary>No fixed limit is set that a forecast could run to: the longest interval stands.</summary>
    NothingToForecast,

    /// <summary>The latest sample is in doubt: sample again after the shortest interval.</summary>
    SampleInDoubt,
}
