using OilCondition.Charts;
using OilCondition.Text;
using OilCondition.Treatment;

namespace OilCondition.Interactive.Views;

/// <summary>Ways to treat, compared or decided between. What can hurt somebody, and who decides, always stands with them.</summary>
internal static class TreatmentView
{
    public static View Of(TreatmentComparison comparison) =>
        Cautioned(
            new View()
                .Heading("Treatments compared")
                .Line(comparison.Job.ToString())
                .Table(
                    [
                        "treatment",
                        "outcome",
                        "hours, half of the cases (8 of 10)",
                        "reached in",
                        "lowest water, mg/kg",
                        "heat and electricity, kWh",
                        "new oil, L",
                    ],
                    comparison.Rows.Select(Row)
                )
                .Picture(OptionsChart.OfHours(comparison)),
            comparison.Rows.SelectMany(row => row.Cautions)
        );

    public static View Of(TreatmentDecision decision)
    {
        var view = new View()
            .Heading(
                $"{Name(decision.Assessment)}: {string.Join(", ", decision.Topics.Select(topic => PlainText.Spaced(topic)))}"
            )
            .Line(decision.Recommendation)
            .Figures(
                ("target", decision.Target.ToString()),
                ("to be done by", $"{PlainText.Time(decision.RiskDate)}: {decision.RiskReason}"),
                ("if nothing is done", decision.Waiting.ToString().Replace("\n", "; "))
            );
        if (decision.Options.Count > 0)
        {
            view.Table(
                    [
                        "option",
                        "what",
                        "verdict",
                        "meets the target",
                        "in time",
                        "hours it runs, without connecting: half of the cases (8 of 10)",
                        "done by in 9 of 10 cases",
                        "cost, half of the cases",
                        "remarks",
                    ],
                    decision.Options.Select(option => Row(decision, option))
                )
                .Picture(OptionsChart.OfHours(decision));
        }

        return Cautioned(
            view.Lines(decision.Figures.Where(one => one.IsAssumed).Select(one => $"Assumed: {one}.")),
            decision.Cautions.Concat(decision.Options.SelectMany(one => one.Assessment?.Cautions ?? []))
        );
    }

    public static string Name(ConditionAssessment assessment) =>
        $"{assessment.History.Machine.Id} {assessment.History.Machine.Name}";

    private static View Cautioned(View view, IEnumerable<Caution> cautions) =>
        view.Lines(cautions.Distinct().Select(Sentences.English.Of)).Line(TreatmentDecision.Notice);

    private static string[] Row(TreatmentAssessment row)
    {
        // What is ruled out has no hours and no bill: a 0 would read as 'at once, for nothing'.
        string IfMet(double figure) => row.MeetsTarget ? PlainText.Number(figure) : "";
        return
        [
            row.Treatment.Name,
            row.WhyNot is { } why ? PlainText.Spaced(why) : "reaches the target",
            row.Band is { } band ? Sentences.English.Hours(band) : IfMet(row.RunTime?.TotalHours ?? 0),
            row.Band is { } reached ? $"{PlainText.Number(reached.Reached.Percent, 1)} % of the cases" : "",
            PlainText.Number(row.WaterFloor.PartsPerMillion),
            IfMet((row.Heat + row.Electricity).KilowattHours),
            IfMet(row.NewOil.Liters),
        ];
    }

    private static string[] Row(TreatmentDecision decision, TreatmentOption option)
    {
        var isPlanned = option.IsPossible && option.Assessment is not null;
        return
        [
            option == decision.Choice ? $"{option.Id} (recommended)" : option.Id,
            option.Name,
            PlainText.Spaced(option.Verdict),
            isPlanned ? $"{PlainText.Number(option.Probability.Percent, 1)} %" : "",
            isPlanned ? $"{PlainText.Number(option.ProbabilityInTime.Percent, 1)} %" : "",
            isPlanned && option.Assessment?.Band is { } band ? Sentences.English.Hours(band) : "",
            isPlanned && option.DoneP90 is { } done ? PlainText.Time(done) : "",
            isPlanned && option.Cost is { P50: { } cost } bill ? Bill(bill, cost) : "",
            string.Join("; ", option.Remarks),
        ];
    }

    /// <summary>Where a price is not known, the rest is the least that it costs.</summary>
    private static string Bill(OptionCost bill, double cost) =>
        $"{(bill.IsComplete ? "" : "at least ")}{PlainText.Number(cost)} {bill.Currency}";
}
