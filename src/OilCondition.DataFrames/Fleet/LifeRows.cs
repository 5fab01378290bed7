using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>A row for each machine, measurand and limited side.</summary>
internal static class LifeRows
{
    public static readonly FrameShape<Row> Shape = FleetKeys
        .Of<Row>(row => row.Assessment)
        .Text(FrameNames.Measurand, row => row.State.Measurand.Id)
        .Text(FrameNames.Unit, row => row.State.Measurand.Unit)
        .Text("state", row => PlainText.Kebab(row.State.Worst.State))
        .Number("latest", row => row.State.Latest?.Reading.Value)
        .Text("latestQualifier", row => QualifierSign.Of(row.State.Latest?.Reading.Qualifier ?? Qualifier.None))
        .Moment("latestUtc", row => row.State.Latest?.At)
        .Text("trend", row => PlainText.Kebab(row.Trend.Verdict))
        .Whole("readingsUsed", row => row.Trend.Used.Count)
        .Number("slopePerDay", row => row.IsJudged ? row.Trend.Slope : null)
        .Number("slopePerDayLower", row => row.IsJudged ? row.Trend.SlopeInterval.Lower : null)
        .Number("slopePerDayUpper", row => row.IsJudged ? row.Trend.SlopeInterval.Upper : null)
        .Number("slopeConfidence", row => row.IsJudged ? row.Trend.Confidence : null)
        .Text("slopeUnit", row => row.IsJudged ? SlopeUnit(row) : null)
        .Text("axis", row => row.State.Trend.Series.IsOverOilHours ? "oil-hours" : "calendar")
        .Text("side", row => row.Life is { } life ? PlainText.Kebab(life.Side) : null)
        .Number("limit", row => row.Life?.Limit)
        .Text("model", row => row.Life is { } life ? PlainText.Kebab(life.Model) : null)
        .Text("outcome", row => Outcome(row.Life))
        .Text(FrameNames.Reason, Reason)
        .Moment("p10Utc", row => At(row.Life, 0.1))
        .Moment("p50Utc", row => At(row.Life, 0.5))
        .Moment("p90Utc", row => At(row.Life, 0.9))
        .NextSample(row => row.Assessment.NextSample);

    public static IEnumerable<Row> Of(ConditionAssessment assessment) =>
        assessment.States.SelectMany(state =>
            state.Lives.DefaultIfEmpty().Select(life => new Row(assessment, state, life))
        );

    private static string SlopeUnit(Row row) =>
        row.Trend.Scale == NaturalScale.Logarithmic ? "ln per day" : $"{row.State.Measurand.Unit} per day".TrimStart();

    private static string Outcome(RemainingLife? life) =>
        life switch
        {
            null => "no-life",
            RemainingLife.Crosses => "crosses",
            RemainingLife.NoLatestDate => "no-latest-date",
            RemainingLife.NotApproaching => "not-approaching",
            RemainingLife.HeldByMakeUp => "held-by-make-up",
            RemainingLife.AlreadyCrossed => "already-crossed",
            _ => "too-few-readings",
        };

    private static string Reason(Row row) =>
        row.Life is { } life ? Sentences.English.Of(row.State, life)
        : row.Assessment.Cleanup is null ? "no limit that is a fixed figure"
        : "no limit that is a fixed figure, or being treated";

    private static DateTimeOffset? At(RemainingLife? life, double chance) =>
        life is RemainingLife.Forecast forecast && forecast.Crossing.TryAt(chance, out var at) ? at : null;

    public readonly record struct Row(ConditionAssessment Assessment, MeasurandState State, RemainingLife? Life)
    {
        public TrendAssessment Trend => State.Trend.Assessment;

        /// <summary>Whether there is a slope: without enough readings the core has 0, which would read as no change.</summary>
        public bool IsJudged => Trend.Verdict != TrendVerdict.TooFewReadings;
    }
}
