namespace OilCondition.Statistics;

/// <summary>Whether a Weibull distribution could be fitted.</summary>
internal enum WeibullStatus
{
    /// <summary>Shape, scale and their errors are determined.</summary>
    Determined,

    /// <summary>Fewer than two failures.</summary>
    TooFewFailures,

    /// <summary>All failures came at one age that nothing outlived: no finite shape fits best.</summary>
    NoSpread,
}
