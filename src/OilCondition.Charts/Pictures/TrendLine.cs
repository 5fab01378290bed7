using OilCondition.Charts.Drawing;
using OilCondition.Statistics;

namespace OilCondition.Charts.Pictures;

/// <summary>The slope of a verdict through the middle of the judged readings.</summary>
internal static class TrendLine
{
    private const int Parts = 24;

    /// <summary>The line from a moment on; null where no trend is shown.</summary>
    public static Trace? Of(Page page, Shown shown, SeriesTrend trend, DateTimeOffset from)
    {
        var assessed = trend.Assessment;
        if (assessed.Verdict is not (TrendVerdict.Rising or TrendVerdict.Falling))
        {
            return null;
        }

        var logarithmic = assessed.Scale == NaturalScale.Logarithmic;
        var series = trend.Judged;
        double Scaled(double value) => logarithmic ? Math.Log(value) : value;
        var values = series
            .Points.Where(point => !point.Reading.IsCensored && (!logarithmic || point.Reading.Value > 0))
            .Select(point => (point.At, Level: Scaled(point.Reading.Value) - assessed.Slope * series.DaysAt(point.At)))
            .OrderBy(point => point.Level)
            .ToList();
        if (values.Count < 2)
        {
            return null;
        }

        var middle = (values[(values.Count - 1) / 2].Level + values[values.Count / 2].Level) / 2;
        double At(DateTimeOffset at)
        {
            var value = middle + assessed.Slope * series.DaysAt(at);
            return shown.From(logarithmic ? Math.Exp(value) : value);
        }

        // Over oil hours the line bends where the duty does; on a scale that is not the axis' own it is curved.
        var (first, last) = (values.Min(point => point.At), values.Max(point => point.At));
        var moments = Enumerable
            .Range(0, Parts + 1)
            .Select(i => first.AddTicks((last - first).Ticks / Parts * i))
            .Concat(series.IsOverOilHours ? series.Points.Select(point => point.At) : [])
            .Where(at => at >= first && at <= last && at >= from)
            .Distinct()
            .OrderBy(at => at);
        return new Trace(
            page.Texts[assessed.Verdict == TrendVerdict.Rising ? "trend.rising" : "trend.falling"],
            Ink.Blue,
            Dash.Solid,
            [.. moments.Select(at => new Spot(page.Days(at), At(at)))],
            2.2f
        );
    }
}
