using OilCondition.Prognosis;

namespace OilCondition;

/// <summary>Nothing was ever read of this oil: neither a sample nor a sensor. A machine whose oil is new has the longest interval's time.</summary>
internal sealed class NeverSampledFinding(OilCharge charge, SamplingPlan plan, DateTimeOffset asOf, Measurand measurand)
    : Finding(
        FindingCode.NeverSampled,
        charge.IsDated && asOf <= charge.Since.AddDays(plan.Longest.TotalDays) ? Severity.Information : Severity.Alert,
        measurand
    )
{
    /// <summary>When the oil went in; null where that is not known.</summary>
    public DateTimeOffset? ChargedAt { get; } = charge.IsDated ? charge.Since : null;

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence =>
        [
            .. ChargedAt is { } at ? [EvidenceItem.Date("oil changed", at)] : Array.Empty<EvidenceItem>(),
            EvidenceItem.Number("longest interval", plan.Longest.TotalDays, "d"),
        ];

    internal override string Said(Sentences sentences) => sentences.NeverSampled(this);
}
