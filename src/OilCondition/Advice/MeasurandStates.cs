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
    private readonly FamilyDesigns families;

    private MeasurandStates(ChargeRecords records, AssessmentOptions options, RiseDesigns rises, FamilyDesigns families)
    {
        this.records = records;
        this.options = options;
        this.rises = rises;
        this.families = families;
    }

    /// <summary>One state for each measurand that has a limit, in the order of the limit set.</summary>
    public static IReadOnlyList<MeasurandState> Of(ChargeRecords records, LimitSet limits, AssessmentOptions options)
    {
        using var ofTrends = new RiseDesigns();
        using var ofForecasts = new FamilyDesigns();
        var states = new MeasurandStates(records, options, ofTrends, ofForecasts);
        return limits.ByMeasurand.Select(states.Of).ToArray();
    }

    private MeasurandState Of(Limit[] limits)
    {
        var measurand = limits[0].Measurand;
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
        var evaluations = new LimitEvaluation[limits.Length];
        for (var i = 0; i < limits.Length; i++)
        {
            evaluations[i] = limits[i].Evaluate(oil, readings);
        }

        return new MeasurandState(
            measurand,
            readings.Sources is [.., var latest] ? latest : null,
            evaluations,
            topUps,
            trend,
            records.IsBeingTreated(measurand) ? [] : Lives(oil, limits, trend)
        );
    }

    private RemainingLife[] Lives(Oil oil, Limit[] limits, SeriesTrend trend)
    {
        var measurand = trend.Series.Measurand;
        var how = HowToForecast(measurand);
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

    private LifeOptions HowToForecast(Measurand measurand)
    {
        foreach (var fleet in options.Fleet)
        {
            if (fleet.Measurand.Equals(measurand))
            {
                return new LifeOptions(fleet: fleet);
            }
        }

        return LifeOptions.Default;
    }
}
