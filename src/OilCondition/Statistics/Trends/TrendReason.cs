namespace OilCondition.Statistics;

/// <summary>Why a trend was judged the way it was.</summary>
public enum TrendReason
{
    /// <summary>Fewer readings than asked for, after what had to be left out.</summary>
    TooFewReadings,

    /// <summary>All readings were taken at one time.</summary>
    SameTime,

    /// <summary>All readings are equal, or none can be told from another.</summary>
    NothingVaries,

    /// <summary>Least squares, averaged over how far each reading resembles the one before and over whether a rise comes evenly, late or early.</summary>
    EnoughReadings,

    /// <summary>There are readings of the kind '&lt; 5' or '&gt; 1000': ranks, without search for outliers and changes.</summary>
    CensoredReadings,

    /// <summary>Readings of 0 on the logarithmic scale were taken as below the smallest reading above 0.</summary>
    ZerosTakenAsBelow,

    /// <summary>Each reading resembles the one before: interval and probability allow for it.</summary>
    CorrelatedResiduals,

    /// <summary>A cycle of the period asked for is in the readings, and was taken out.</summary>
    Cycle,

    /// <summary>Wild readings were left out.</summary>
    OutliersLeftOut,

    /// <summary>The level changed to the better at once; only readings after the last such change were judged.</summary>
    SinceChange,

    /// <summary>The level changed to the worse at once, or the latest readings lie far on that side: nothing was left out for it.</summary>
    SuddenlyWorse,

    /// <summary>There is a trend, but over the time seen it moves the level by less than the smallest change that matters.</summary>
    BelowSmallestChange,

    /// <summary>As many wild readings were found as are looked for, one in six: there may be more.</summary>
    MoreOutliersPossible,
}
