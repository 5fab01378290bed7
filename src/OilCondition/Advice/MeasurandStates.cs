using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Statistics;

namespace OilCondition;

/// <summary>Works out where each limited measurand stands, whether it moves, and how long it has.</summary>
internal sealed class MeasurandStates
{
    private readonly ChargeRecords records;
    private readonly AssessmentOptions options;

    // Most measurands have the dates of the same samples: what depends on these alone is worked out once.
    private readonly RiseDesigns rises;
    private readonly FamilyDesigns families = new();

    private MeasurandStates(ChargeRecords records, AssessmentOptions options, RiseDesigns rises)
    {
        this.records = records;
        this.options = options;
        this.rises = rises;
    }

    /// <summary>One state for each measurand that has a limit, in the order of the limit set.</summary>
    public static IReadOnlyList<MeasurandState> Of(ChargeRecords records, LimitSet limits, AssessmentOptions options)
    {
        using var designs = new RiseDesigns();
        var states = new MeasurandStates(records, options, designs);
        return [.. limits.Limits.GroupBy(limit => limit.Measurand).Select(same => states.Of(same.Key, [.. same]))];
    }

    private MeasurandState Of(Measurand measurand, Limit[] limits)
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
            rises
        );
        var oil = records.History.Machine.Oil;
        return new MeasurandState(
            measurand,
            readings.Points.Count > 0 ? readings.Points[readings.Points.Count - 1] : null,
            Array.ConvertAll(limits, limit => limit.Evaluate(oil, readings)),
            topUps,
            trend,
            records.IsBeingTreated(measurand) ? [] : Lives(oil, limits, trend)
        );
    }

    private RemainingLife[] Lives(Oil oil, Limit[] limits, SeriesTrend trend)
    {
        var measurand = trend.Series.Measurand;
        var how = new LifeOptions(fleet: options.Fleet.FirstOrDefault(one => one.Measurand.Equals(measurand)));
        var figures = new FixedFigures(oil, measurand, limits);
        RemainingLife? Life(LimitSide side) =>
            figures.Last(side) is { } figure ? LifeForecast.Of(trend, figure, side, options.AsOf, how, families) : null;
        return (Life(LimitSide.Upper), Life(LimitSide.Lower)) switch
        {
            (null, null) => [],
            ({ } upper, null) => [upper],
            (null, { } lower) => [lower],
            ({ } upper, { } lower) => [upper, lower],
        };
    }
}
