namespace OilCondition.Limits;

/// <summary>Rates of change of a series, per a span of the calendar or of oil hours.</summary>
internal static class LimitRate
{
    /// <summary>Readings nearer together than this are not differenced: their scatter would pass for a steep rate.</summary>
    private const double ShortestDays = 1;

    /// <summary>Differences of successive readings, scaled to the span; false when there are none.</summary>
    public static bool TryRates(
        Limit limit,
        MeasurandSeries series,
        out List<(DateTimeOffset? At, Reading Reading)> rates
    )
    {
        rates = [];
        var onAxis = series;
        if (limit.OverOilHours && !series.TryOnOilHours(out onAxis))
        {
            return false;
        }

        var hoursPerDay = limit.OverOilHours ? onAxis!.OilHoursPerDay!.Value : 24;
        SeriesPoint? before = null;
        foreach (var point in onAxis!.Points.Where(one => !one.Reading.IsCensored))
        {
            if (before is null)
            {
                before = point;
                continue;
            }

            var days = onAxis.DaysAt(point.At) - onAxis.DaysAt(before.At);
            if ((point.At - before.At).TotalDays < ShortestDays || !(days > 0))
            {
                continue;
            }

            var rate =
                (point.Reading.Value - before.Reading.Value) / (days * hoursPerDay) * limit.Per!.Value.TotalHours;
            rates.Add((point.At, new Reading(rate)));
            before = point;
        }

        return rates.Count > 0;
    }
}
