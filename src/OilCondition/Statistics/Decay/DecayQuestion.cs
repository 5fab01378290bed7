using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>What is asked of every compatible curve: its value at a time, or its time at a value. All scaled.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct DecayQuestion(bool IsCrossing, double ScaledTime, double Target);
