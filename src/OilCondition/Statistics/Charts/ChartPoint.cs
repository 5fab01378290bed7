using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>One point of a control chart with its limits.</summary>
/// <param name="Value">What is plotted, in the unit of the readings.</param>
/// <param name="LowerLimit">Lower limit at this point.</param>
/// <param name="UpperLimit">Upper limit at this point.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ChartPoint(double Value, double LowerLimit, double UpperLimit)
{
    /// <summary>Whether the point lies outside its limits.</summary>
    public ChartSignal Signal =>
        Value > UpperLimit ? ChartSignal.Above
        : Value < LowerLimit ? ChartSignal.Below
        : ChartSignal.None;
}
