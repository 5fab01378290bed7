using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Statistics;

namespace OilCondition;

/// <summary>Works out where each limited measurand stands, whether it moves, and how long it has.</summary>
internal static class MeasurandStates
{
    /// <summary>One state for each measurand that has a limit, in the order of the limit set.</summary>
    public static IReadOnlyList<MeasurandState> Of(ChargeRecords records, LimitSet limits, AssessmentOptions options) =>
        Of(records, limits, options, new DateDesigns());

    private static IReadOnlyList<MeasurandState> Of(
        ChargeRecords records,
        LimitSet limits,
        AssessmentOptions options,
        DateDesigns designs
    ) =>
        [
            .. limits
                .Limits.GroupBy(limit => limit.Measurand)
                .Select(same => Of(records, same.Key, [.. same], options, designs)),
        ];

    private static MeasurandState Of(
        ChargeRecords records,
        Measurand measurand,
        IReadOnlyList<Limit> limits,
        AssessmentOptions options,
        DateDesigns designs
    )
    {
        var readings = records.Readings(measurand);
        var topUps = records.Trend(measurand);
        var series = topUps.Series;
        if (options.OverOilHours && series.TryOnOilHours(out var onOilHours))
        {
            series = onOilHours;
        }

        var trend = SeriesTrend.Of(
            series,
            SeriesTrend.OptionsFor(series, confidence: 1 - options.TrendSignificance),
            designs
        );
        var oil = records.History.Machine.Oil;
        return new MeasurandState(
            measurand,
            readings.Points.Count > 0 ? readings.Points[readings.Points.Count - 1] : null,
            [.. limits.Select(limit => limit.Evaluate(oil, readings))],
            topUps,
            trend,
            records.IsBeingTreated(measurand) ? [] : [.. Lives(oil, limits, trend, options, designs)]
        );
    }

    private static IEnumerable<RemainingLife> Lives(
        Oil oil,
        IReadOnlyList<Limit> limits,
        SeriesTrend trend,
        AssessmentOptions options,
        DateDesigns designs
    )
    {
        var measurand = trend.Series.Measurand;
        var how = new LifeOptions(fleet: options.Fleet.FirstOrDefault(one => one.Measurand.Equals(measurand)));
        var figures = new FixedFigures(oil, measurand, limits);
        foreach (var side in FixedFigures.Sides)
        {
            if (figures.Last(side) is { } figure)
            {
                yield return LifeForecast.Of(trend, figure, side, options.AsOf, how, designs);
            }
        }
    }
}
