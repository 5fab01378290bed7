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

    /// <summary>
    /// A series of nothing but bounds on the safe side of a limit, as if each reading stood at the one nearest to it: none lies nearer. Another detection
    /// limit is then no movement. Null where any reading tells more, or less.
    /// </summary>
    public static ScaledSeries? OfBounds(MeasurandSeries series, double limit, LimitSide side, bool logarithmic)
    {
        var (inwards, sign) = side == LimitSide.Upper ? (Qualifier.LessThan, 1) : (Qualifier.GreaterThan, -1);
        var (days, nearest) = (new double[series.Points.Count], double.NegativeInfinity);
        for (var i = 0; i < days.Length; i++)
        {
            var reading = series.ReadingOf(i);
            if (reading.Qualifier != inwards)
            {
                return null;
            }

            (days[i], nearest) = (series.DayOf(i), Math.Max(nearest, sign * reading.Value));
        }

        if (!(nearest < sign * limit) || (logarithmic && !(sign * nearest > 0)))
        {
            return null;
        }

        var values = new double[days.Length];
        values.AsSpan().Fill(logarithmic ? Math.Log(sign * nearest) : sign * nearest);
        return new ScaledSeries(days, values);
    }
}
