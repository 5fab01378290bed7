namespace OilCondition.Statistics;

/// <summary>What became of the ends of an interval.</summary>
public enum IntervalOutcome
{
    /// <summary>The readings bound the quantity on no side: it is not determined.</summary>
    NotDetermined,

    /// <summary>Every end that was asked for exists.</summary>
    Bounded,

    /// <summary>The readings do not bound the quantity from above.</summary>
    NoUpperEnd,

    /// <summary>The readings do not bound the quantity from below.</summary>
    NoLowerEnd,

    /// <summary>There are too few readings to judge their scatter.</summary>
    TooFewReadings,

    /// <summary>The quantity was given, not fitted.</summary>
    Known,
}
