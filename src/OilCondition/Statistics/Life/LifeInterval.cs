using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>A two-sided interval of a positive quantity.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct LifeInterval
{
    internal LifeInterval(double lower, double upper, double confidence)
    {
        Lower = lower;
        Upper = upper;
        Confidence = confidence;
    }

    /// <summary>Lower end.</summary>
    public double Lower { get; }

    /// <summary>Upper end.</summary>
    public double Upper { get; }

    /// <summary>Two-sided confidence level.</summary>
    public double Confidence { get; }
}
