namespace OilCondition.Cleanliness;

/// <summary>The classes of AS4059 that a scale number of ISO 4406 may mean at one size.</summary>
public readonly record struct ClassRange
{
    internal ClassRange(CleanlinessClass lowest, CleanlinessClass highest)
    {
        Lowest = lowest;
        Highest = highest;
    }

    /// <summary>The cleanest class.</summary>
    public CleanlinessClass Lowest { get; }

    /// <summary>The dirtiest class; may be above the table.</summary>
    public CleanlinessClass Highest { get; }

    /// <summary>Both ends.</summary>
    /// <returns>For example <c>6-7</c>.</returns>
    public override string ToString() => $"{Lowest}-{Highest}";
}
