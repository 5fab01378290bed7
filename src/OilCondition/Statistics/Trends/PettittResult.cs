using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The likeliest place of a change of level, after Pettitt.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct PettittResult
{
    internal PettittResult(int count, int firstAfter, double statistic, double pValue)
    {
        Count = count;
        FirstAfter = firstAfter;
        Statistic = statistic;
        PValue = pValue;
    }

    /// <summary>Number of values, n.</summary>
    public int Count { get; }

    /// <summary>Index, from 0, of the first value after the likeliest change, which is also the number of values before it.</summary>
    public int FirstAfter { get; }

    /// <summary>Pettitt's K, the largest |U|.</summary>
    public double Statistic { get; }

    /// <summary>Approximate two-sided probability of so large a K by chance alone; good below one half, at most 1.</summary>
    public double PValue { get; }
}
