using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>When a decaying curve reaches a value: estimate and profile-likelihood interval, whose ends may be open.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct TimeToValueInterval
{
    internal TimeToValueInterval(
        TimeToValueOutcome outcome,
        bool hasEstimate,
        double estimate,
        double? lower,
        double? upper,
        double confidence,
        IntervalSide side,
        bool coverageInDoubt
    )
    {
        Outcome = outcome;
        HasEstimate = hasEstimate;
        Estimate = estimate;
        HasLower = lower.HasValue;
        Lower = lower ?? 0;
        HasUpper = upper.HasValue;
        Upper = upper ?? 0;
        Confidence = confidence;
        Side = side;
        CoverageInDoubt = coverageInDoubt;
    }

    /// <summary>Whether the value is reached.</summary>
    public TimeToValueOutcome Outcome { get; }

    /// <summary>Whether the best curve comes down to the value after its start.</summary>
    public bool HasEstimate { get; }

    /// <summary>Time at which the best curve reaches the value; 0 where it does not.</summary>
    public double Estimate { get; }

    /// <summary>Whether a curve compatible with the readings reaches the value, and the lower end was asked for.</summary>
    public bool HasLower { get; }

    /// <summary>Earliest time compatible with the readings, the start time at the earliest; 0 where there is none.</summary>
    public double Lower { get; }

    /// <summary>Whether the readings exclude that the value is never reached, and the upper end was asked for.</summary>
    public bool HasUpper { get; }

    /// <summary>Latest time compatible with the readings; 0 where there is none.</summary>
    public double Upper { get; }

    /// <summary>Confidence level.</summary>
    public double Confidence { get; }

    /// <summary>Which ends were asked for.</summary>
    public IntervalSide Side { get; }

    /// <summary>Whether the residuals follow one another so closely that the interval covers less often than it says.</summary>
    public bool CoverageInDoubt { get; }

    /// <summary>What a caller may read of it: only the moments that exist.</summary>
    public Arrival<double> ToArrival()
    {
        if (Outcome == TimeToValueOutcome.TooFewReadings)
        {
            return new Arrival<double>.NotDetermined(Confidence);
        }

        return this switch
        {
            { Outcome: TimeToValueOutcome.NeverReached } => new Arrival<double>.Never(Confidence, CoverageInDoubt),
            { HasEstimate: true, HasUpper: true } => new Arrival<double>.Expected(
                Lower,
                Estimate,
                Upper,
                Confidence,
                CoverageInDoubt
            ),
            { HasLower: true, HasUpper: false } => new Arrival<double>.NotBefore(Lower, Confidence, CoverageInDoubt),
            _ => new Arrival<double>.NotDetermined(Confidence),
        };
    }

    internal static TimeToValueInterval TooFew(double confidence, IntervalSide side) =>
        new(TimeToValueOutcome.TooFewReadings, false, 0, null, null, confidence, side, coverageInDoubt: false);
}
