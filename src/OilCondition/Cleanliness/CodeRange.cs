namespace OilCondition.Cleanliness;

/// <summary>The span of scale numbers or classes that a count or another scale leaves open.</summary>
/// <typeparam name="T"><see cref="ScaleNumber"/> or <see cref="CleanlinessClass"/>.</typeparam>
public readonly record struct CodeRange<T>
    where T : struct
{
    internal CodeRange(T lowest, T highest)
    {
        Lowest = lowest;
        Highest = highest;
    }

    /// <summary>The cleanest.</summary>
    public T Lowest { get; }

    /// <summary>The dirtiest; may be above the table.</summary>
    public T Highest { get; }

    /// <summary>Both ends.</summary>
    /// <returns>For example <c>14-15</c>.</returns>
    public override string ToString() => $"{Lowest}-{Highest}";
}
