using System.Runtime.InteropServices;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>An interval for a quantity. An end that the readings do not give is null, and <see cref="Outcome"/> says why.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Interval
{
    private Interval(
        IntervalOutcome outcome,
        double? lower,
        double? upper,
        double confidence,
        IntervalSide side,
        bool coverageInDoubt
    )
    {
        Outcome = outcome;
        Lower = lower;
        Upper = upper;
        Confidence = confidence;
        Side = side;
        CoverageInDoubt = coverageInDoubt;
    }

    /// <summary>What became of the ends.</summary>
    public IntervalOutcome Outcome { get; }

    /// <summary>Lower end, in the unit of the quantity; null where there is none or none was asked for.</summary>
    public double? Lower { get; }

    /// <summary>Upper end, in the unit of the quantity; null where there is none or none was asked for.</summary>
    public double? Upper { get; }

    /// <summary>Confidence level.</summary>
    public double Confidence { get; }

    /// <summary>Which ends were asked for.</summary>
    public IntervalSide Side { get; }

    /// <summary>Whether the residuals follow one another so closely that the interval covers less often than it says.</summary>
    public bool CoverageInDoubt { get; }

    /// <summary>Whether a value is compatible with the interval.</summary>
    /// <param name="value">The value, in the unit of the quantity.</param>
    /// <returns>True if no end excludes it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The value is not finite.</exception>
    public bool Contains(double value)
    {
        Guard.Finite(value, "");
        return !(value < Lower) && !(value > Upper);
    }

    /// <inheritdoc/>
    public override string ToString()
    {
        var width = Lower is { } least && Upper is { } largest ? largest - least : (double?)null;
        var level = PlainText.Number(100 * Confidence);
        var ends = (Outcome, Lower, Upper) switch
        {
            (IntervalOutcome.Known, { } known, _) => $"{PlainText.Number(known)} (given)",
            (_, { } lower, { } upper) => $"{Number(lower)} to {Number(upper)} ({level} %)",
            (_, { } lower, null) => $"at least {PlainText.Number(lower)} ({level} %)",
            (_, null, { } upper) => $"at most {PlainText.Number(upper)} ({level} %)",
            _ => PlainText.Spaced(Outcome),
        };
        return CoverageInDoubt ? ends + ", covers less often than stated" : ends;

        // A tenth of the width is enough to tell the ends apart.
        string Number(double end) => PlainText.Number(end, width / 10);
    }

    /// <summary>The same with a warning that it covers less often than it says.</summary>
    internal Interval InDoubt() => new(Outcome, Lower, Upper, Confidence, Side, coverageInDoubt: true);

    internal static Interval Without(IntervalOutcome outcome, double confidence, IntervalSide side) =>
        new(outcome, null, null, confidence, side, coverageInDoubt: false);

    internal static Interval Between(
        double? lower,
        double? upper,
        double confidence,
        IntervalSide side = IntervalSide.Both,
        bool coverageInDoubt = false
    )
    {
        var wantsLower = side != IntervalSide.Upper;
        var wantsUpper = side != IntervalSide.Lower;
        lower = wantsLower && lower.HasValue && Guard.IsFinite(lower.Value) ? lower : null;
        upper = wantsUpper && upper.HasValue && Guard.IsFinite(upper.Value) ? upper : null;
        var outcome =
            lower.HasValue == wantsLower && upper.HasValue == wantsUpper ? IntervalOutcome.Bounded
            : lower.HasValue ? IntervalOutcome.NoUpperEnd
            : upper.HasValue ? IntervalOutcome.NoLowerEnd
            : IntervalOutcome.NotDetermined;
        return new Interval(outcome, lower, upper, confidence, side, coverageInDoubt);
    }

    internal static Interval Fixed(double value, double confidence, IntervalSide side) =>
        new(IntervalOutcome.Known, value, value, confidence, side, coverageInDoubt: false);
}
