using OilCondition.Limits;
using OilCondition.Sampling;

namespace OilCondition.Advice;

/// <summary>A reading beyond its alert or alarm figure.</summary>
public sealed class LimitFinding : Finding
{
    internal LimitFinding(LimitEvaluation evaluation, SeriesPoint point)
        : base(
            FindingCode.LimitPassed,
            evaluation.State == LimitState.Alarm ? Severity.Alarm : Severity.Alert,
            evaluation.Limit.Measurand
        )
    {
        Evaluation = evaluation;
        Point = point;
    }

    /// <summary>The comparison.</summary>
    public LimitEvaluation Evaluation { get; }

    /// <summary>The reading with its date and sample.</summary>
    public SeriesPoint Point { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence =>
        [
            EvidenceItem.Word("reading", $"{Point.Reading} {Measurand.Unit}".Trim()),
            EvidenceItem.Moment("read at", Point.At),
            EvidenceItem.Word("from", Point.SampleNumber.Length == 0 ? "sensor" : $"sample {Point.SampleNumber}"),
            EvidenceItem.Number("limit", Evaluation.Figure!.Value, Measurand.Unit),
            EvidenceItem.Word("limit source", Evaluation.Limit.Source.ToString()),
        ];
}
