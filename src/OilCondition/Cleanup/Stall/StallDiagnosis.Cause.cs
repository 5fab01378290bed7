using UnitsNet;

namespace OilCondition.Cleanup;

public sealed partial class StallDiagnosis
{
    /// <summary>A cause with how much of the matter it explains, the figures that speak for it, and what to check.</summary>
    public sealed class Cause
    {
        internal Cause(
            StallCauseKind kind,
            double share,
            IReadOnlyList<EvidenceItem> evidence,
            IReadOnlyList<StallCheck> checks
        )
        {
            Kind = kind;
            Share = Ratio.FromDecimalFractions(Math.Max(0, Math.Min(1, share)));
            Evidence = evidence;
            CheckCodes = checks;
            Checks = [.. checks.Select(StallWords.Of)];
        }

        /// <summary>The cause.</summary>
        public StallCauseKind Kind { get; }

        /// <summary>
        /// Share that it explains of how far the level lies above the planned one; of the missing rate where the run is only slow. Causes that fit alike have the
        /// same share, each for itself.
        /// </summary>
        public Ratio Share { get; }

        /// <summary>The figures that speak for it.</summary>
        public IReadOnlyList<EvidenceItem> Evidence { get; }

        /// <summary>What to check, the likeliest first.</summary>
        public IReadOnlyList<string> Checks { get; }

        internal IReadOnlyList<StallCheck> CheckCodes { get; }

        /// <summary>Cause, share and figures.</summary>
        /// <returns>For example <c>water comes in: 57 % (observed level 88.4 mg/kg, physical floor as it runs 37.6 mg/kg)</c>.</returns>
        public override string ToString() =>
            FormattableString.Invariant($"{StallWords.Of(Kind)}: {Share.Percent:0} % ({StallWords.Of(Evidence)})");
    }
}
