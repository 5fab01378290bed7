using OilCondition.Statistics;

namespace OilCondition.Prognosis;

/// <summary>The readings of a series that a forecast can use, on the scale on which they are taken to scatter evenly, less a cycle that was found in them.</summary>
internal readonly record struct ScaledSeries(double[] Days, double[] Values)
{
    public static ScaledSeries Of(MeasurandSeries series, bool logarithmic, SeasonalCycle? cycle)
    {
        var (days, values) = series.ToColumns();
        if (logarithmic)
        {
            var usable = Enumerable.Range(0, days.Length).Where(i => values[i] > 0).ToList();
            days = [.. usable.Select(i => days[i])];
            values = [.. usable.Select(i => Math.Log(values[i]))];
        }

        return new ScaledSeries(
            days,
            cycle is null ? values : [.. values.Select((value, i) => value - cycle.At(days[i]))]
        );
    }
}
