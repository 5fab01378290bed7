using OilCondition;
using OilCondition.Prognosis;
using OilCondition.Statistics;

namespace FirstCalls;

/// <summary>From a history to columns, a fit and its uncertainty.</summary>
public static class Analyst
{
    public static string Run(OilHistory history, DateTimeOffset asOf)
    {
        // snippet
        var charge = history.ChargeAt(asOf);
        var series = history.SampleSeries(Measurands.WaterContent, charge.Since, asOf);
        var (days, values) = series.ToColumns();

        var line = StraightLine.Fit(days, values);
        var text =
            $"{line.Slope:0.00} ± {line.SlopeStandardError:0.00} mg/kg per day, p = {line.SlopePValue:0.000}; "
            + $"{series.LeftOut.Count} readings left out";
        // end

        return text;
    }

    /// <summary>The same trend without a straight line's assumptions: the median of all slopes, and whether the order of the readings says so.</summary>
    public static string RunRobust(OilHistory history, DateTimeOffset asOf)
    {
        var series = history.SampleSeries(Measurands.WaterContent, history.ChargeAt(asOf).Since, asOf);
        var (days, values) = series.ToColumns();
        return $"{TheilSen.Fit(days, values)}; {MannKendall.Test(days, values)}";
    }

    /// <summary>Columns of a data table, and a sensor log by the day: each makes a series that trends and lives take.</summary>
    public static string RunColumns(OilHistory history, DateTimeOffset asOf)
    {
        DateTimeOffset[] dates = [.. Enumerable.Range(0, 8).Select(i => asOf.AddDays(-30 * i))];
        double[] acid = [0.15, 0.14, 0.14, 0.12, 0.12, 0.10, 0.10, 0.09]; // mgKOH/g, latest first
        var series = MeasurandSeries.FromColumns(Measurands.AcidNumber, dates, acid);
        var life = LifeForecast.Of(series, limit: 0.4, LimitSide.Upper, asOf);

        var daily = history.SensorSeries(Measurands.WaterContent, asOf.AddDays(-60), asOf, TimeSpan.FromDays(1));
        return $"{life}; {SeriesTrend.Of(daily)}";
    }
}
