using OilCondition.Text;
using OilCondition.Treatment;

namespace OilCondition.DataFrames;

/// <summary>A row for each way to treat.</summary>
internal static class OptionRows
{
    public static readonly FrameShape<Row> Shape = FleetKeys
        .Of<Row>(row => row.Decision.Assessment)
        .Text("subjects", row => string.Join(", ", row.Decision.Problems.Select(problem => problem.Subject)))
        .Moment("riskDateUtc", row => row.Decision.RiskDate)
        .Text("option", row => row.Option.Id)
        .Text(FrameNames.Name, row => row.Option.Name)
        .Word("equipment", row => string.Join(", ", row.Option.Equipment))
        .Flag("isChoice", row => ReferenceEquals(row.Option, row.Decision.Choice))
        .Text("verdict", row => PlainText.Kebab(row.Option.Verdict))
        .Text("whyNot", row => row.Option.WhyNot is { } why ? PlainText.Kebab(why) : null)
        .Word("ruledOut", row => row.Option.RuledOut)
        .Number("probability", row => row.Option.Probability.DecimalFractions)
        .Number("probabilityInTime", row => row.Option.ProbabilityInTime.DecimalFractions)
        .Number("hoursP10", row => Band(row)?.TimeP10?.TotalHours)
        .Number("hoursP50", row => Band(row)?.TimeP50?.TotalHours)
        .Number("hoursP90", row => Band(row)?.TimeP90?.TotalHours)
        .Number("boundHours", row => row.Option.Bound?.TotalHours)
        .Number("floorP50MgPerKg", row => row.Option.Floor?.PartsPerMillion)
        .Number("costP10", row => row.Option.Cost?.P10)
        .Number("costP50", row => row.Option.Cost?.P50)
        .Number("costP90", row => row.Option.Cost?.P90)
        .Text("currency", row => row.Option.Cost?.Currency)
        .Flag("costComplete", row => row.Option.Cost?.IsComplete)
        .Moment("beginsUtc", row => row.Option.Begins)
        .Moment("doneP10Utc", row => row.Option.DoneP10)
        .Moment("doneP50Utc", row => row.Option.DoneP50)
        .Moment("doneP90Utc", row => row.Option.DoneP90)
        .Moment("alertBackUtc", row => row.Option.Rebound is { } back && back.TryEstimate(out var at) ? at : null)
        .Text("sentence", row => row.Option.ToString())
        .Word("cautions", row => string.Join(" ", Cautions(row).Select(Sentences.English.Of)))
        .Text("notice", _ => TreatmentDecision.Notice);

    public static IEnumerable<Row> Of(TreatmentDecision decision) =>
        decision.Options.Select(option => new Row(decision, option));

    private static TreatmentBand? Band(Row row) => row.Option.Assessment?.Band;

    private static IReadOnlyList<Caution> Cautions(Row row) => row.Option.Assessment?.Cautions ?? [];

    public readonly record struct Row(TreatmentDecision Decision, TreatmentOption Option);
}
