namespace OilCondition.Prognosis;

/// <summary>How a measurand is taken to move to its limit.</summary>
public enum LifeModel
{
    /// <summary>
    /// The average over a family of movements, each weighed by how well it explains the readings: a mean that stands, drifts evenly, feeds on itself or levels off;
    /// scattered about it, or walking at random; a drift that itself walks. The default, since nobody knows beforehand.
    /// </summary>
    Family,

    /// <summary>A random walk with drift, every reading without error: the most cautious.</summary>
    RandomWalk,

    /// <summary>A straight line with independent scatter; when does the line itself cross? (confidence band of the line, Fieller)</summary>
    LineItself,

    /// <summary>A straight line with independent scatter; when does a new reading cross? (prediction band, inverted)</summary>
    LineNewReading,

    /// <summary>A straight line through the logarithms with independent scatter; when does it itself cross? Growth in proportion to what is there.</summary>
    ExponentialGrowth,

    /// <summary>Loss in proportion to what is left, renewed by make-up; when does the curve itself fall below a lower limit? RPVOT, antioxidant.</summary>
    FirstOrderLoss,
}
