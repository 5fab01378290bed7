using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>What Grubbs' test found about the most distant value.</summary>
/// <param name="Index">Index of that value, from 0.</param>
/// <param name="Statistic">G, its distance from the mean in standard deviations.</param>
/// <param name="CriticalValue">The distance that chance passes no more often than the significance level.</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct GrubbsResult(int Index, double Statistic, double CriticalValue)
{
    /// <summary>Whether the value is an outlier at the level asked for.</summary>
    public bool IsOutlier => Statistic > CriticalValue;
}
