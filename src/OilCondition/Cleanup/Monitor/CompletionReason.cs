namespace OilCondition.Cleanup;

/// <summary>Why no date can be given for a cleanup, or for a part of it. The last that applies to any part rules the whole.</summary>
public enum CompletionReason
{
    /// <summary>There is a date.</summary>
    None,

    /// <summary>The readings do not show yet that it is ever completed.</summary>
    NotYetShown,

    /// <summary>The readings depart from one exponential fall (<see cref="CleanupCurve.Course"/>): it cannot be carried forward to a date.</summary>
    NotOnOneCourse,

    /// <summary>The oil is colder than it must be for its readings to count.</summary>
    TooCold,

    /// <summary>Free water is still there: the dissolved water, whose fall is dated, has not begun to fall.</summary>
    FreeWater,

    /// <summary>There are too few readings of a part.</summary>
    TooFewReadings,

    /// <summary>Readings come further apart than <see cref="CleanupMonitorOptions.LongestGap"/>: they can never show that the target holds.</summary>
    ReadingsTooFarApart,

    /// <summary>A part stalls above its target.</summary>
    Stalled,
}
