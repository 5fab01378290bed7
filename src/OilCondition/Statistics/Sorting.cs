namespace OilCondition.Statistics;

/// <summary>Sorting of a span in place, which netstandard2.0 lacks.</summary>
internal static class Sorting
{
    public static void Ascending(Span<double> values)
    {
#if NET
        values.Sort();
#else
        var copy = values.ToArray();
        Array.Sort(copy);
        copy.CopyTo(values);
#endif
    }
}
