using OilCondition.Charts;
using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Interactive.Views;

/// <summary>A trend alone, or where a measurand stands with its limits and lives.</summary>
internal static class TrendView
{
    /// <summary>Smaller chances mean nothing: no model of scatter is that true.</summary>
    private const double LeastPValue = 0.001;

    public static View Of(TrendAssessment trend) =>
        new View()
            .Heading("Trend")
            .Figures([
                ("verdict", PlainText.Spaced(trend.Verdict)),
                .. Slope(trend, "slope per unit of time", "growth per unit of time, of the natural logarithm"),
                ("readings judged", PlainText.Number(trend.Used.Count)),
                ("outliers", PlainText.Number(trend.Outliers.Count)),
                ("changes of level", PlainText.Number(trend.Changes.Count)),
                ("why so", string.Join(", ", trend.Reasons.Select(reason => PlainText.Spaced(reason)))),
            ]);

    public static View Of(MeasurandState state)
    {
        var measurand = state.Measurand;
        var trend = state.Trend.Assessment;
        var view = new View()
            .Heading(measurand.Name)
            .Figures([
                (
                    "latest reading",
                    state.Latest is { } latest
                        ? $"{measurand.Text(latest.Reading)} on {PlainText.Date(latest.At)}"
                        : "none"
                ),
                ("state", PlainText.Spaced(state.Worst.State)),
                ("trend", Sentences.English.Of(state)),
                .. Slope(trend, $"slope, {measurand.Unit} per day", "growth per day, of the natural logarithm"),
                ("readings judged", PlainText.Number(trend.Used.Count)),
                ("set aside", PlainText.Number(state.Trend.Judged.LeftOut.Count)),
                .. state.Lives.Select(life =>
                    ("remaining life: limit passed in 1 / 5 / 9 of 10 cases by", Sentences.English.Of(state, life))
                ),
            ]);
        return state.Lives.Aggregate(view, (shown, life) => shown.Picture(LifeChart.Of(life)));
    }

    private static (string Name, string Figure)[] Slope(TrendAssessment trend, string name, string logarithmic) =>
        trend.Verdict == TrendVerdict.TooFewReadings
            ? []
            :
            [
                (
                    trend.Scale == NaturalScale.Logarithmic ? logarithmic : name,
                    Known.Text(trend.Slope, trend.SlopeInterval)
                ),
                (
                    "chance of as clear a trend in pure scatter (p)",
                    trend.PValue < LeastPValue
                        ? FormattableString.Invariant($"below {LeastPValue}")
                        : PlainText.Number(trend.PValue)
                ),
            ];
}
