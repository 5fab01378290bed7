using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>Two values of a sample that hold a quantile of its population between them.</summary>
/// <param name="Outcome">Bounded, or that the sample is too small for the confidence asked for; the other members are then 0.</param>
/// <param name="LowerOrder">Rank of the lower value, 1 for the smallest.</param>
/// <param name="UpperOrder">Rank of the upper value.</param>
/// <param name="Lower">The lower value.</param>
/// <param name="Upper">The upper value.</param>
/// <param name="Confidence">Confidence that the pair has, at least the one asked for.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct OrderInterval(
    IntervalOutcome Outcome,
    int LowerOrder,
    int UpperOrder,
    double Lower,
    double Upper,
    double Confidence
);
