namespace OilCondition.Statistics;

/// <summary>Whether a line could be fitted.</summary>
internal enum LineStatus
{
    /// <summary>The slope is determined.</summary>
    Determined,

    /// <summary>Fewer readings than the method takes: three for least squares, whose scatter is else unknown, two for the median slope.</summary>
    TooFewReadings,

    /// <summary>All readings lie at one position, so that no slope exists.</summary>
    SamePosition,

    /// <summary>So many readings are censored that they bound the slope on one side at most.</summary>
    NotDetermined,
}
