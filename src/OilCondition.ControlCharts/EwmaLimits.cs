namespace OilCondition.ControlCharts;

/// <summary>Which limits an EWMA chart draws.</summary>
public enum EwmaLimits
{
    /// <summary>Those of the average as it settles in: narrow at first, times sqrt(1 − (1 − λ)^(2i)).</summary>
    Exact,

    /// <summary>Those of the settled average, for every reading: blind to a shift in the first readings.</summary>
    Steady,
}
