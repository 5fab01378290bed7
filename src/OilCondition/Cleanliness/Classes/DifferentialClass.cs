namespace OilCondition.Cleanliness;

/// <summary>The classes of differential counts: one for each size range, and the worst.</summary>
public sealed class DifferentialClass
{
    internal DifferentialClass(DifferentialCounts counts)
    {
        CleanlinessClass[] classes =
        [
            .. counts.Per100Millilitres.Select((count, range) => ClassTables.Differential.ClassOf(range, count)),
        ];
        ByRange = classes;
        Overall = classes.Aggregate((a, b) => a.Rank >= b.Rank ? a : b);
        DecidingRange = (DifferentialRange)Array.IndexOf(classes, Overall);
    }

    /// <summary>The class of each range, in the order of <see cref="DifferentialRange"/>.</summary>
    public IReadOnlyList<CleanlinessClass> ByRange { get; }

    /// <summary>The worst class of the five.</summary>
    public CleanlinessClass Overall { get; }

    /// <summary>The range with the worst class; of several the one of the smallest particles.</summary>
    public DifferentialRange DecidingRange { get; }
}
