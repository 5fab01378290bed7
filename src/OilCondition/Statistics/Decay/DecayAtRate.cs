using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The best decay curve among those of one rate, all in scaled units.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct DecayAtRate(
    double scaledRate,
    double start,
    double floor,
    double residualSumOfSquares,
    bool atBound
)
{
    public double ScaledRate { get; } = scaledRate;
    public double Start { get; } = start;
    public double Floor { get; } = floor;
    public double ResidualSumOfSquares { get; } = residualSumOfSquares;
    public bool AtBound { get; } = atBound;
}
