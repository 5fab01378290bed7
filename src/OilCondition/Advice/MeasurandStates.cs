using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Statistics;

namespace OilCondition;

/// <summary>Works out where each limited measurand stands, whether it moves, and how long it has.</summary>
internal sealed class MeasurandStates : IDisposable
{
    private readonly ChargeRecords records;
    private readonly AssessmentOptions options;

    // Most measurands have the dates of the same samples: what depends on these alone is worked out once.
    private readonly RiseDesigns rises = new();
    private readonly FamilyDesigns families = new();

    private MeasurandStates(ChargeRecords records, AssessmentOptions options)
    {
        this.records = records;
        this.options = options;
    }

    /// <summary>One state for each measurand that has a limit, in the order of the limit set.</summary>
    public static IReadOnlyList<MeasurandState> Of(ChargeRecords records, LimitSet limits, AssessmentOptions options)
    {
        using var states = new MeasurandStates(records, options);
        return limits.ByMeasurand.Select(states.Of).ToArray();
    }

    /// <summary>Gives back the room that forecasts were worked out in.</summary>
    public void Dispose() => families.Dispose();

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
