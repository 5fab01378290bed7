namespace OilCondition.Statistics;

/// <summary>Whether a straight line could be fitted.</summary>
public enum StraightLineStatus
{
    /// <summary>Slope, level and their errors are determined.</summary>
    Determined,

    /// <summary>Fewer than three points: the scatter about the line is unknown.</summary>
    TooFewPoints,

    /// <summary>All points lie at one position, so that no slope exists.</summary>
    SamePosition,
}
