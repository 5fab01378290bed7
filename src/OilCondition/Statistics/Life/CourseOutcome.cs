namespace OilCondition.Statistics;

/// <summary>Whether a first-order course gets to a value.</summary>
public enum CourseOutcome
{
    /// <summary>It gets there after the start.</summary>
    Reached,

    /// <summary>It is there or beyond from the start.</summary>
    AlreadyReached,

    /// <summary>It levels off before, or at, the value.</summary>
    NeverReached,
}
