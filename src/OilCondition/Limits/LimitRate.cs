using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Limits;

/// <summary>Per which span the figures of a rate of change are meant: 30 days, 1000 oil hours.</summary>
public sealed record LimitRate
{
    /// <summary>Readings nearer together than this are not differenced: their scatter would pass for a steep rate.</summary>
    private const double ShortestDays = 1;

    /// <summary>A span.</summary>
    /// <param name="axis">Calendar or oil hours.</param>
    /// <param name="span">The span, above 0 and up to 10 years of hours.</param>
    /// <exception cref="ArgumentOutOfRangeException">The span lies outside its range.</exception>
    public LimitRate(TimeAxis axis, TimeSpan span)
    {
        Axis = axis;
        Guard.Positive(span.TotalHours, "h", nameof(span));
        Guard.InRange(span.TotalHours, 0, 87_660, "h", nameof(span));
        Span = span;
    }

    /// <summary>Calendar or oil hours.</summary>
    public TimeAxis Axis { get; }

    /// <summary>The span.</summary>
    public TimeSpan Span { get; }

    /// <summary>Differences of successive readings, scaled to the span; false when there are none.</summary>
    internal bool TryRates(MeasurandSeries series, out List<(DateTimeOffset? At, Reading Reading)> rates)
    {
        rates = [];
        var onAxis = series;
        if (Axis == TimeAxis.OilHours && !series.TryOnOilHours(out onAxis))
        {
            return false;
        }

        var hoursPerDay = Axis == TimeAxis.OilHours ? onAxis!.OilHoursPerDay!.Value : 24;
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

            var rate = (point.Reading.Value - before.Reading.Value) / (days * hoursPerDay) * Span.TotalHours;
            rates.Add((point.At, new Reading(rate)));
            before = point;
        }

        return rates.Count > 0;
    }
}
