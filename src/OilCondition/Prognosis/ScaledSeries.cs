using OilCondition.Statistics;

namespace OilCondition.Prognosis;

/// <summary>The readings of a series that a forecast can use, on the scale on which they are taken to scatter evenly, less a cycle that was found in them.</summary>
internal readonly record struct ScaledSeries(double[] Days, double[] Values)
{
    public static ScaledSeries Of(MeasurandSeries series, bool logarithmic, SeasonalCycle? cycle)
    {
        var (days, values) = series.ToColumns();
        var count = 0;
        for (var i = 0; i < days.Length; i++)
        {
            if (!logarithmic || values[i] > 0)
            {
                var value = logarithmic ? Math.Log(values[i]) : values[i];
                (days[count], values[count]) = (days[i], value - (cycle?.At(days[i]) ?? 0));
                count++;
            }
        }

        Array.Resize(ref days, count);
        Array.Resize(ref values, count);
        return new ScaledSeries(days, values);
    }
}
