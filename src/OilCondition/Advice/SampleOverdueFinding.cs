using OilCondition.Prognosis;

namespace OilCondition;

/// <summary>No sample was taken for longer than the longest interval of the sampling plan.</summary>
internal sealed class SampleOverdueFinding : Finding
{
    internal SampleOverdueFinding(DateTimeOffset lastSampleAt, SamplingPlan plan, Measurand measurand)
        : base(FindingCode.SampleOverdue, Severity.Alert, measurand)
    {
        LastSampleAt = lastSampleAt;
        Plan = plan;
    }

    /// <summary>When the last sample was taken.</summary>
    public DateTimeOffset LastSampleAt { get; }

    /// <summary>The sampling plan.</summary>
    public SamplingPlan Plan { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence =>
        [
            EvidenceItem.Date("last-sample", LastSampleAt),
            EvidenceItem.Number("longest-interval", Plan.Longest.TotalDays, "d"),
        ];

    internal override string Said(Sentences sentences) => sentences.Overdue(this);
}
