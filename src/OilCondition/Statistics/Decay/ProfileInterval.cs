using System.Runtime.InteropServices;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>An interval for a quantity, whose ends may be missing for a named reason.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct ProfileInterval
{
    private ProfileInterval(
        IntervalOutcome outcome,
        bool hasLower,
        double lower,
        bool hasUpper,
        double upper,
        double confidence,
        IntervalSide side,
        bool coverageInDoubt
    )
    {
        Outcome = outcome;
        HasLower = hasLower;
        Lower = hasLower ? lower : 0;
        HasUpper = hasUpper;
        Upper = hasUpper ? upper : 0;
        Confidence = confidence;
        Side = side;
        CoverageInDoubt = coverageInDoubt;
    }

    /// <summary>What became of the ends.</summary>
    public IntervalOutcome Outcome { get; }

    /// <summary>Whether there is a lower end.</summary>
    public bool HasLower { get; }

    /// <summary>Lower end; 0 where there is none.</summary>
    public double Lower { get; }

    /// <summary>Whether there is an upper end.</summary>
    public bool HasUpper { get; }

    /// <summary>Upper end; 0 where there is none.</summary>
    public double Upper { get; }

    /// <summary>Confidence level.</summary>
    public double Confidence { get; }

    /// <summary>Which ends were asked for.</summary>
    public IntervalSide Side { get; }

    /// <summary>
    /// Whether the residuals follow one another so closely that the interval covers less often than it says
    /// (see <see cref="ExponentialDecayAnalysis.ResidualAutocorrelation"/>).
    /// </summary>
    public bool CoverageInDoubt { get; }

    /// <summary>Whether a value is compatible with the interval.</summary>
    /// <param name="value">The value, in the unit of the quantity.</param>
    /// <returns>True if no end excludes it.</returns>
    public bool Contains(double value)
    {
        Guard.Finite(value, "");
        return (!HasLower || value >= Lower) && (!HasUpper || value <= Upper);
    }

    /// <summary>The same with a warning that its coverage is in doubt.</summary>
    internal ProfileInterval InDoubt() =>
        new(Outcome, HasLower, Lower, HasUpper, Upper, Confidence, Side, coverageInDoubt: true);

    internal static ProfileInterval Without(IntervalOutcome outcome, double confidence, IntervalSide side) =>
        new(outcome, false, 0, false, 0, confidence, side, coverageInDoubt: false);

    internal static ProfileInterval Between(
        double? lower,
        double? upper,
        double confidence,
        IntervalSide side,
        bool coverageInDoubt
    )
    {
        var wantsLower = side != IntervalSide.Upper;
        var wantsUpper = side != IntervalSide.Lower;
        var hasLower = wantsLower && lower.HasValue && Guard.IsFinite(lower.Value);
        var hasUpper = wantsUpper && upper.HasValue && Guard.IsFinite(upper.Value);
        var outcome =
            hasLower == wantsLower && hasUpper == wantsUpper ? IntervalOutcome.Bounded
            : !hasLower && !hasUpper ? IntervalOutcome.NotDetermined
            : hasLower ? IntervalOutcome.NoUpperEnd
            : IntervalOutcome.NoLowerEnd;
        return new ProfileInterval(
            outcome,
            hasLower,
            lower ?? 0,
            hasUpper,
            upper ?? 0,
            confidence,
            side,
            coverageInDoubt
        );
    }

    internal static ProfileInterval Fixed(double value, double confidence, IntervalSide side) =>
        new(IntervalOutcome.Known, true, value, true, value, confidence, side, coverageInDoubt: false);
}
