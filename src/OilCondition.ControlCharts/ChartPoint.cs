using System.Runtime.InteropServices;
using OilCondition.Text;

namespace OilCondition.ControlCharts;

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

    /// <inheritdoc/>
    public override string ToString()
    {
        var width = (UpperLimit - LowerLimit) / 20;
        var limits = $"limits {PlainText.Number(LowerLimit, width)} to {PlainText.Number(UpperLimit, width)}";
        return $"{PlainText.Number(Value, width)}, {limits}{ChartWord.Of(Signal)}";
    }
}
