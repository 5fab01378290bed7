using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>When a decaying curve reaches a value: estimate and profile-likelihood interval, whose ends may be open.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct TimeToValueInterval
{
    internal TimeToValueInterval(
        bool hasEstimate,
        double estimate,
        bool hasLower,
        double lower,
        bool hasUpper,
        double upper
    )
    {
        HasEstimate = hasEstimate;
        Estimate = estimate;
        HasLower = hasLower;
        Lower = lower;
        HasUpper = hasUpper;
        Upper = upper;
    }

    /// <summary>Whether the best curve reaches the value at all.</summary>
    public bool HasEstimate { get; }

    /// <summary>Time at which the best curve reaches the value; 0 where it does not.</summary>
    public double Estimate { get; }

    /// <summary>Whether any curve compatible with the readings reaches the value.</summary>
    public bool HasLower { get; }

    /// <summary>Earliest time compatible with the readings; 0 where there is none.</summary>
    public double Lower { get; }

    /// <summary>Whether the readings exclude that the value is never reached.</summary>
    public bool HasUpper { get; }

    /// <summary>Latest time compatible with the readings; 0 where there is none.</summary>
    public double Upper { get; }
}
