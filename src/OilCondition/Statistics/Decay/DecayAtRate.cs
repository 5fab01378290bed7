using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The best decay curve among those of one rate, all in scaled units.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct DecayAtRate(
    double scaledRate,
    double start,
    double floor,
    double residualSumOfSquares,
    bool atBound,
    double shift = 0
)
{
    public double ScaledRate { get; } = scaledRate;
    public double Start { get; } = start;
    public double Floor { get; } = floor;
    public double ResidualSumOfSquares { get; } = residualSumOfSquares;
    public bool AtBound { get; } = atBound;

    /// <summary>ln of this rate over the one whose drops the last pass left in the columns: the last step of the search.</summary>
    public double Shift { get; } = shift;
}
