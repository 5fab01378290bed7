namespace OilCondition.Cleanup;

/// <summary>What can be said about the completion of a cleanup, or of a part of it. The last that applies to any part rules the whole.</summary>
public enum CompletionOutcome
{
    /// <summary>All that is asked has held for long enough.</summary>
    Met,

    /// <summary>It is expected between two ends.</summary>
    Expected,

    /// <summary>Not before a moment; the readings do not show that it is ever completed.</summary>
    NotDemonstrated,

    /// <summary>The oil is colder than it must be for its readings to count.</summary>
    TooCold,

    /// <summary>Free water is still leaving: the dissolved water, whose fall is dated, has not begun to fall.</summary>
    FreeWaterLeaving,

    /// <summary>There are too few readings of a part.</summary>
    TooFewReadings,

    /// <summary>Readings come further apart than <see cref="CleanupMonitorOptions.LongestGap"/>: they can never show that the target holds.</summary>
    ReadingsTooFarApart,

    /// <summary>A part stalls above its target.</summary>
    NeverArrives,
}
