using System.Runtime.InteropServices;
using OilCondition.Text;

namespace OilCondition.ControlCharts;

/// <summary>One point of a two-sided cumulative sum chart.</summary>
/// <param name="Upper">Sum of what readings lie above target + allowance, never below 0.</param>
/// <param name="Lower">Sum of what readings lie below target − allowance, never below 0.</param>
/// <param name="Signal">Whether a sum passes the decision interval; the larger one if both do.</param>
/// <param name="UpperRun">Number of readings since the upper sum was last 0: the rise is likely to have begun that long ago.</param>
/// <param name="LowerRun">Number of readings since the lower sum was last 0.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct CusumPoint(double Upper, double Lower, ChartSignal Signal, int UpperRun, int LowerRun)
{
    /// <inheritdoc/>
    public override string ToString() =>
        $"sums {PlainText.Number(Upper)} up, {PlainText.Number(Lower)} down{ChartWord.Of(Signal)}";
}
