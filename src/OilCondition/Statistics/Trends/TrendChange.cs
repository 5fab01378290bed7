using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>A sudden change of level within a series: a treatment, a top-up, an oil change, another method.</summary>
/// <param name="LastBefore">Index, in the caller's order, of the last reading before it.</param>
/// <param name="FirstAfter">Index, in the caller's order, of the first reading after it.</param>
/// <param name="Step">Level after less level before, in the unit of the values; on the logarithmic scale the ln of their ratio.</param>
/// <param name="PValue">Upper bound of the probability of so clear a step by chance alone.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct TrendChange(int LastBefore, int FirstAfter, double Step, double PValue);
