using OilCondition.Statistics;

namespace OilCondition;

/// <summary>What a finished treatment removed is coming back: the readings since then move the worse way, and the latest lies beyond its target.</summary>
internal sealed class ReturnFinding : Finding
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

    internal override LimitSide Side =>
        State.Trend.Assessment.Verdict == TrendVerdict.Rising ? LimitSide.Upper : LimitSide.Lower;

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence
    {
        get
        {
            return
            [
                EvidenceItem.Date("treatment-ended", Run.EndedAt!.Value),
                EvidenceItem.Figure("target", Run.Target, Measurand.Unit),
                EvidenceItem.Reading("reading", State.Latest!.Reading, Measurand),
                EvidenceItem.Moment("read-at", State.Latest.At),
                TrendPace.Evidence(State.Trend),
                EvidenceItem.Number("chance-of-such-a-trend-by-scatter", State.Trend.Assessment.PValue, ""),
                EvidenceItem.Number("readings-used", State.Trend.Assessment.Used.Count, ""),
            ];
        }
    }

    internal override string Said(Sentences sentences) => sentences.Return(this);
}
