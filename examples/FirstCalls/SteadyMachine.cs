using System.Globalization;
using OilCondition;
using OilCondition.ControlCharts;

namespace FirstCalls;

/// <summary>Watches a machine that is known to be sound: did the level of a measurand shift since then?</summary>
public static class SteadyMachine
{
    public static string Run(OilHistory history, Measurand measurand, DateTimeOffset soundUntil, DateTimeOffset asOf)
    {
        // snippet
        var charge = history.ChargeAt(asOf);
        var (_, sound) = history.SampleSeries(measurand, charge.Since, soundUntil).ToColumns();
        var (_, since) = history.SampleSeries(measurand, soundUntil, asOf).ToColumns();

        var individuals = IndividualsChart.Of(sound); // level and scatter of the sound period
        var average = new EwmaChart(individuals.Mean, individuals.Sigma).Plot(since);
        var sums = CusumChart.ForOneSigma(individuals.Mean, individuals.Sigma).Plot(since);
        var shifted = average.FirstOrDefault(point => point.Signal != ChartSignal.None);
        var began = sums.LastOrDefault(point => point.Signal != ChartSignal.None).UpperRun; // readings since the rise began
        // end

        return string.Create(
            CultureInfo.InvariantCulture,
            $"{individuals}; {since.Length} readings since, {(shifted == default ? "no shift" : $"shifted: {shifted}")}, {began}"
        );
    }
}
