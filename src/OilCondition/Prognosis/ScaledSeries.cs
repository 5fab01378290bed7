namespace OilCondition.Prognosis;

/// <summary>The readings of a series that a forecast can use, on the scale on which they are taken to scatter evenly.</summary>
internal readonly record struct ScaledSeries(double[] Days, double[] Values)
{
    public static ScaledSeries Of(MeasurandSeries series, bool logarithmic)
    {
        var (days, values) = series.ToColumns();
        if (!logarithmic)
        {
            return new ScaledSeries(days, values);
        }

        var usable = Enumerable.Range(0, days.Length).Where(i => values[i] > 0).ToList();
        return new ScaledSeries([.. usable.Select(i => days[i])], [.. usable.Select(i => Math.Log(values[i]))]);
    }
}
