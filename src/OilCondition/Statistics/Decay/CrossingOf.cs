namespace OilCondition.Statistics;

/// <summary>What has to cross a limit for the crossing to count.</summary>
public enum CrossingOf
{
    /// <summary>The true line itself: its confidence band is inverted.</summary>
    MeanLine,

    /// <summary>One new reading, scatter included: the prediction band is inverted.</summary>
    NewReading,
}
