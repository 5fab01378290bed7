namespace OilCondition;

/// <summary>What a finished treatment removed is coming back: the readings since then rise, and the latest lies above its target.</summary>
public sealed class ReturnFinding : Finding
{
    internal ReturnFinding(TreatmentRun run, MeasurandState state)
        : base(FindingCode.CleanupRebounding, Severity.Alert, state.Measurand)
    {
        Run = run;
        State = state;
    }

    /// <summary>The treatment.</summary>
    public TreatmentRun Run { get; }

    /// <summary>The readings since then and their trend.</summary>
    public MeasurandState State { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence
    {
        get
        {
            var slope = State.Trend.Assessment.Slope * 30;
            return
            [
                EvidenceItem.Date("treatment ended", Run.EndedAt!.Value),
                EvidenceItem.Number("target", Run.Target, Measurand.Unit),
                EvidenceItem.Word("reading", $"{State.Latest!.Reading} {Measurand.Unit}".Trim()),
                EvidenceItem.Date("read at", State.Latest.At),
                Measurand.Scale == NaturalScale.Logarithmic
                    ? EvidenceItem.Number("factor per 30 days", Math.Exp(slope), "")
                    : EvidenceItem.Number("change per 30 days", slope, Measurand.Unit),
                EvidenceItem.Number("chance of such a trend by scatter", State.Trend.Assessment.PValue, ""),
                EvidenceItem.Number("readings used", State.Trend.Assessment.Used.Count, ""),
            ];
        }
    }
}
