using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Statistics;

namespace OilCondition;

/// <summary>Works out where one limited measurand stands, whether it moves, and how long it has.</summary>
internal static class MeasurandStates
{
    public static MeasurandState Of(ChargeRecords records, Limit limit, AssessmentOptions options)
    {
        var readings = records.Readings(limit.Measurand);
        var topUps = records.Trend(limit.Measurand);
        var series = topUps.Series;
        if (options.Axis == TimeAxis.OilHours && series.TryOnOilHours(out var onOilHours))
        {
            series = onOilHours!;
        }

        var logarithmic = limit.Measurand.Scale == NaturalScale.Logarithmic;
        var trend = SeriesTrend.Of(
            series,
            new TrendOptions(
                logarithmic ? NaturalScale.Logarithmic : NaturalScale.Linear,
                confidence: 1 - options.TrendSignificance
            )
        );
        return new MeasurandState(
            limit.Evaluate(records.History.Machine.Oil, readings),
            readings.Points.Count > 0 ? readings.Points[readings.Points.Count - 1] : null,
            topUps,
            trend,
            Life(records, limit, trend.Judged, options)
        );
    }

    private static List<RemainingLife> Life(
        ChargeRecords records,
        Limit limit,
        MeasurandSeries judged,
        AssessmentOptions options
    )
    {
        var life = new List<RemainingLife>();
        if (records.IsBeingTreated(limit.Measurand) || !limit.TryResolve(records.History.Machine.Oil, out var absolute))
        {
            return life;
        }

        var fleet = options.Fleet.FirstOrDefault(one => one.Measurand.Equals(limit.Measurand));
        var how = new LifeOptions(fleet: fleet);
        foreach (var (band, side) in new[] { (absolute!.Upper, LimitSide.Upper), (absolute.Lower, LimitSide.Lower) })
        {
            // A limit of 0 on a logarithmic measurand is never reached and has no logarithm.
            var figure = band?.Alarm ?? band?.Alert;
            var reachable = figure > 0 || limit.Measurand.Scale == NaturalScale.Linear;
            if (figure is { } value && reachable)
            {
                life.Add(LifeForecast.Of(judged, value, side, records.AsOf, how));
            }
        }

        return life;
    }
}
