namespace OilCondition.Cleanliness;

/// <summary>The scale numbers of ISO 4406 that a class may mean at one size.</summary>
public readonly record struct ScaleNumberRange
{
    internal ScaleNumberRange(int lowest, int highest)
    {
        Lowest = lowest;
        Highest = highest;
    }

    /// <summary>The lowest scale number.</summary>
    public int Lowest { get; }

    /// <summary>The highest; 29 stands for above the table.</summary>
    public int Highest { get; }

    /// <summary>Both ends.</summary>
    /// <returns>For example <c>14-15</c>.</returns>
    public override string ToString() => $"{ScaleNumber.Of(Lowest)}-{ScaleNumber.Of(Highest)}";
}
