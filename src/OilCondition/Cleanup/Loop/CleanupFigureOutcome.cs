namespace OilCondition.Cleanup;

/// <summary>What became of a figure that is derived from a cleanup curve.</summary>
internal enum CleanupFigureOutcome
{
    /// <summary>Every end that was asked for exists.</summary>
    Bounded,

    /// <summary>The readings do not bound the figure from above.</summary>
    NoUpperEnd,

    /// <summary>The readings do not bound the figure from below.</summary>
    NoLowerEnd,

    /// <summary>The readings bound the figure on no side: it is not determined.</summary>
    NotDetermined,

    /// <summary>There are too few readings for a curve.</summary>
    TooFewReadings,

    /// <summary>Too few readings lie above their limit for a curve.</summary>
    TooFewAboveLimit,

    /// <summary>The figure follows from what was stated beforehand, not from the readings.</summary>
    Known,

    /// <summary>The readings exclude a floor as high as the one that was stated as that without ingress: state a lower one.</summary>
    FloorContradicted,
}
