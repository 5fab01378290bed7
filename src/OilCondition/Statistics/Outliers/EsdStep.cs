using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>One step of a generalised ESD test.</summary>
/// <param name="Index">Index, from 0, of the value most distant from the mean of those that are left.</param>
/// <param name="Statistic">R, its distance in standard deviations of those that are left.</param>
/// <param name="CriticalValue">λ, the critical distance.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct EsdStep(int Index, double Statistic, double CriticalValue);
