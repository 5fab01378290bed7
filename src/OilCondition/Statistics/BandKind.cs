namespace OilCondition.Statistics;

/// <summary>What a band about a fitted line or curve is for.</summary>
public enum BandKind
{
    /// <summary>The true line itself (confidence band).</summary>
    Mean,

    /// <summary>One new reading, its scatter included (prediction band).</summary>
    NewReading,
}
