namespace OilCondition.Statistics;

/// <summary>Which method spoke for a trend.</summary>
internal enum TrendMethod
{
    /// <summary>None: there was nothing to judge.</summary>
    None,

    /// <summary>Straight line by least squares, Student's t for its slope.</summary>
    StraightLine,

    /// <summary>Theil-Sen line, Mann-Kendall test.</summary>
    TheilSen,
}
