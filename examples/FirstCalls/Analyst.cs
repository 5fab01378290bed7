using OilCondition;
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
}
