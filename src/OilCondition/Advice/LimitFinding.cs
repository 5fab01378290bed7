using OilCondition.Limits;

namespace OilCondition;

/// <summary>A reading, or its rate of change, beyond its alert or alarm figure; or there, and waiting to be confirmed.</summary>
internal sealed class LimitFinding : Finding
{
    internal LimitFinding(LimitEvaluation evaluation, SeriesPoint point)
        : base(CodeOf(evaluation), SeverityOf(evaluation.State), evaluation.Limit.Measurand)
    {
        Evaluation = evaluation;
        Point = point;
    }

    /// <summary>The comparison.</summary>
    public LimitEvaluation Evaluation { get; }

    /// <summary>The reading with its date and sample.</summary>
    public SeriesPoint Point { get; }

    /// <summary>Whether the latest reading alone tells of it, or not as many as the limit asks for.</summary>
    public bool IsOfOneReading =>
        Code == FindingCode.LimitNotConfirmed || (Evaluation.Since is { } since && since == Point.At);

    internal override LimitSide Side => Evaluation.Side!.Value;

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence
    {
        get
        {
            List<EvidenceItem> evidence =
            [
                EvidenceItem.Reading("reading", Point.Reading, Measurand),
                EvidenceItem.Moment("read-at", Point.At),
                EvidenceItem.Word("from", Point.SampleNumber.Length == 0 ? "sensor" : $"sample {Point.SampleNumber}"),
            ];
            if (Evaluation.Rate is { } rate)
            {
                var unit = RateUnit;
                var text = unit.ToString();
                evidence.Add(
                    EvidenceItem.Number("rate-of-change", rate, text) with
                    {
                        IsDifference = true,
                        Fact = unit,
                    }
                );
                evidence.Add(
                    EvidenceItem.Figure("limit", Evaluation.Figure!.Value, text) with
                    {
                        IsDifference = true,
                        Fact = unit,
                    }
                );
            }
            else
            {
                evidence.Add(EvidenceItem.Figure("limit", Evaluation.Figure!.Value, Measurand.Unit));
            }

            if (Evaluation.Since is { } since)
            {
                evidence.Add(EvidenceItem.Date("beyond-since", since));
            }

            evidence.Add(EvidenceItem.Word("limit-source", Evaluation.Limit.Source.ToString()));
            evidence.AddRange(
                Missing.Select(missing =>
                    EvidenceItem.Word("limit-missing", Sentences.English.Of(missing)) with
                    {
                        Fact = missing,
                    }
                )
            );
            return evidence;
        }
    }

    /// <summary>What the fleet did not give on the side that was passed.</summary>
    internal IEnumerable<Limit.MissingFigure> Missing =>
        Evaluation.Limit.MissingFigures.Where(missing => missing.Side == Side);

    /// <summary>Unit of its rate of change.</summary>
    internal RateUnit RateUnit => new(Measurand.Unit, Evaluation.Limit.Per!.Value, Evaluation.Limit.OverOilHours);

    private static FindingCode CodeOf(LimitEvaluation evaluation)
    {
        if (evaluation.State < LimitState.Alert)
        {
            return FindingCode.LimitNotConfirmed;
        }

        return LimitRank.CodeOf(evaluation.Limit.Kind);
    }

    private static Severity SeverityOf(LimitState state) =>
        state switch
        {
            LimitState.Alarm => Severity.Alarm,
            LimitState.Alert => Severity.Alert,
            _ => Severity.Information,
        };

    internal override string Said(Sentences sentences) => sentences.Limit(this);
}
