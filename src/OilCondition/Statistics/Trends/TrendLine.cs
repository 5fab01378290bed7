using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>A fitted line with its test, whichever method gave it.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct TrendLine(
    TrendMethod Method,
    double Slope,
    Interval SlopeInterval,
    double PValue,
    double Correlation,
    double Scatter
)
{
    public static TrendLine None(IntervalOutcome outcome, double confidence) =>
        new(TrendMethod.None, 0, Interval.Without(outcome, confidence, IntervalSide.Both), 1, 0, 0);
}
