namespace OilCondition;

/// <summary>Water beyond what the oil can hold dissolved.</summary>
internal sealed class FreeWaterFinding : Finding
{
    internal FreeWaterFinding(WaterInOil.Split balance)
        : base(
            balance.Running.HasFreeWater ? FindingCode.FreeWaterRunning : FindingCode.FreeWaterAtStandstill,
            balance.Running.HasFreeWater ? Severity.Alarm : Severity.Alert,
            Measurands.WaterContent
        ) => Balance = balance;

    /// <summary>The split of the water at both temperatures.</summary>
    public WaterInOil.Split Balance { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence
    {
        get
        {
            var state = Balance.Running.HasFreeWater ? Balance.Running : Balance.Standstill;
            var open = Balance.UncertaintyOfFree(state);
            var saturation = state.Saturation.Content.PartsPerMillion;
            var separation = Balance.Separation.Temperature.DegreesCelsius;
            return
            [
                EvidenceItem.Reading("reading", Balance.Point.Reading, Measurand),
                EvidenceItem.Moment("read-at", Balance.Point.At),
                EvidenceItem.Number("oil-temperature", state.Saturation.Temperature.DegreesCelsius, "°C"),
                EvidenceItem.Number("saturation", saturation, "mg/kg", Measurand.UncertaintyOf(saturation)),
                EvidenceItem.Number("free-water", state.Free.PartsPerMillion, "mg/kg", open),
                EvidenceItem.Number(
                    "free-water-at-least",
                    Math.Max(0, state.Free.PartsPerMillion - open),
                    "mg/kg",
                    open
                ),
                EvidenceItem.Number("free-water-at-most", state.Free.PartsPerMillion + open, "mg/kg", open),
                EvidenceItem.Number("separates-below", separation, "°C", WaterInOil.Split.SeparationUncertainty),
                EvidenceItem.Word("saturation-curve", $"{Balance.Curve.Name}; {Balance.Curve.Source}"),
                EvidenceItem.Word("curve-extrapolated", state.Saturation.IsExtrapolated ? "yes" : "no"),
            ];
        }
    }

    internal override string Said(Sentences sentences) => sentences.FreeWater(this);
}
