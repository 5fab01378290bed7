using OilCondition.Charts;
using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Interactive.Views;

/// <summary>A trend, with the readings of its series or without any, or where a measurand stands with its limits and lives.</summary>
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
                .. Rests(trend),
            ])
            .Line(
                "No picture: these are figures of plain numbers, and the readings are not in them. SeriesTrend.Of(series) has its readings and shows them."
            );

    public static View Of(SeriesTrend trend) =>
        new View()
            .Heading($"{trend.Series.Measurand.Name}: trend")
            .Figures([
                ("verdict", PlainText.Spaced(trend.Assessment.Verdict)),
                .. Slope(trend),
                .. Rests(trend.Assessment),
            ])
            .Picture(TrendChart.Of(trend));

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
                .. Slope(state.Trend),
                ("readings judged", PlainText.Number(trend.Used.Count)),
                ("set aside", PlainText.Number(state.Trend.Judged.LeftOut.Count)),
                .. state.Lives.Select(life =>
                    ("remaining life: limit passed in 1 / 5 / 9 of 10 cases by", Sentences.English.Of(state, life))
                ),
            ])
            .Picture(TrendChart.Of(state.Trend));
        return state.Lives.Aggregate(view, (shown, life) => shown.Picture(LifeChart.Of(life)));
    }

    private static (string Name, string Figure)[] Rests(TrendAssessment trend) =>
        [
            ("readings judged", PlainText.Number(trend.Used.Count)),
            ("outliers", PlainText.Number(trend.Outliers.Count)),
            ("changes of level", PlainText.Number(trend.Changes.Count)),
            ("why so", string.Join(", ", trend.Reasons.Select(reason => PlainText.Spaced(reason)))),
        ];

    private static (string Name, string Figure)[] Slope(SeriesTrend trend) =>
        Slope(
            trend.Assessment,
            trend.Series.Measurand.Unit is { Length: > 0 } unit ? $"slope, {unit} per day" : "slope per day",
            "growth per day, of the natural logarithm"
        );

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
