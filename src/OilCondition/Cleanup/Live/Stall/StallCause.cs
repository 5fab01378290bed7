using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>A cause with how much of the matter it explains, the figures that speak for it, and what to check.</summary>
public sealed class StallCause
{
    internal StallCause(
        StallCauseKind kind,
        double share,
        IReadOnlyList<StallEvidence> evidence,
        IReadOnlyList<StallCheck> checks
    )
    {
        Kind = kind;
        Share = Ratio.FromDecimalFractions(Math.Max(0, Math.Min(1, share)));
        Evidence = evidence;
        Checks = checks;
    }

    /// <summary>The cause.</summary>
    public StallCauseKind Kind { get; }

    /// <summary>Share of the observed level that it explains; of the missing rate where the run is only slow.</summary>
    public Ratio Share { get; }

    /// <summary>The figures that speak for it.</summary>
    public IReadOnlyList<StallEvidence> Evidence { get; }

    /// <summary>What to check, the likeliest first.</summary>
    public IReadOnlyList<StallCheck> Checks { get; }
}
