using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>A run of values about one level.</summary>
/// <param name="First">Index of its first value, from 0.</param>
/// <param name="Count">Number of values.</param>
/// <param name="Mean">Their mean.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Segment(int First, int Count, double Mean);
