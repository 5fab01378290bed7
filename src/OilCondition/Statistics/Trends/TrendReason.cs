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

    /// <summary>The residuals of the line look normal: least squares.</summary>
    NormalResiduals,

    /// <summary>Fewer than eight readings: their scatter cannot be judged, so ranks are used.</summary>
    FewReadings,

    /// <summary>The residuals of the line do not look normal: ranks.</summary>
    ResidualsNotNormal,

    /// <summary>The trend accelerates or levels off: ranks, since one slope does not describe it. The slope given is the median one.</summary>
    BentTrend,

    /// <summary>There are readings of the kind '&lt; 5' or '&gt; 1000': ranks, without search for outliers and changes.</summary>
    CensoredReadings,

    /// <summary>Readings of 0 on the logarithmic scale were taken as below the smallest reading above 0.</summary>
    ZerosTakenAsBelow,

    /// <summary>Residuals follow one another: interval and probability are those of fewer, independent readings.</summary>
    CorrelatedResiduals,

    /// <summary>Wild readings were left out.</summary>
    OutliersLeftOut,

    /// <summary>The level changed at once; only readings after the last change were judged.</summary>
    SinceChange,

    /// <summary>There is a trend, but over the time seen it moves the level by less than the smallest change that matters.</summary>
    BelowSmallestChange,
}
