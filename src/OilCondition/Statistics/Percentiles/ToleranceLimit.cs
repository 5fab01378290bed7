using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>A limit that bounds a stated share of a population with a stated confidence, or how many readings it would take.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ToleranceLimit
{
    internal ToleranceLimit(
        ToleranceOutcome outcome,
        int count,
        int smallestCount,
        double value,
        double content,
        double confidence,
        int orderFromEnd
    )
    {
        Outcome = outcome;
        Count = count;
        SmallestCount = smallestCount;
        Value = value;
        Content = content;
        Confidence = confidence;
        OrderFromEnd = orderFromEnd;
    }

    /// <summary>Whether the readings support the limit.</summary>
    public ToleranceOutcome Outcome { get; }

    /// <summary>Number of readings, n.</summary>
    public int Count { get; }

    /// <summary>Fewest readings that support such a limit by this method.</summary>
    public int SmallestCount { get; }

    /// <summary>The limit, in the unit of the values; 0 where there are too few readings.</summary>
    public double Value { get; }

    /// <summary>Share of the population that it bounds.</summary>
    public double Content { get; }

    /// <summary>
    /// Confidence that it does: with a normal limit the one asked for; with a distribution-free one that of the order statistic, at least the one
    /// asked for. With too few readings what the most extreme reading gives.
    /// </summary>
    public double Confidence { get; }

    /// <summary>Rank of the reading that is the limit, 1 for the most extreme; 0 for a normal limit and with too few readings.</summary>
    public int OrderFromEnd { get; }
}
