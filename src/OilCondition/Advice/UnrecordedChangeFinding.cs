namespace OilCondition;

/// <summary>Several measurands change their level between the same two samples, and no event is recorded there.</summary>
internal sealed class UnrecordedChangeFinding : Finding
{
    internal UnrecordedChangeFinding(
        SeriesPoint before,
        SeriesPoint after,
        IReadOnlyList<MeasurandState> states,
        bool hasBetter
    )
        : base(FindingCode.UnrecordedChange, Severity.Information, states[0].Measurand)
    {
        Before = before;
        After = after;
        States = states;
        HasBetter = hasBetter;
    }

    /// <summary>Whether one of them got better: it was an oil change then, and hardly a failure.</summary>
    public bool HasBetter { get; }

    /// <summary>The last reading before the change.</summary>
    public SeriesPoint Before { get; }

    /// <summary>The first reading after it.</summary>
    public SeriesPoint After { get; }

    /// <summary>The measurands that changed together, in the order of the limit set.</summary>
    public IReadOnlyList<MeasurandState> States { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence =>
        [
            EvidenceItem.Date("before", Before.At),
            EvidenceItem.Date("after", After.At),
            .. States.Select(state =>
                EvidenceItem.Word("changed", state.Measurand.Name) with
                {
                    Fact = state.Measurand,
                }
            ),
        ];

    internal override string Said(Sentences sentences) => sentences.Change(this);
}
