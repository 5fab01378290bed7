using OilCondition.Charts.Drawing;
using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Charts.Pictures;

/// <summary>Lines of a slope through the middle of the judged readings.</summary>
internal static class TrendLine
{
    private const int Parts = 24;

    /// <summary>The line of the verdict from a moment on; null where no trend is shown.</summary>
    public static Trace? Of(Page page, Shown shown, SeriesTrend trend, DateTimeOffset from = default)
    {
        var assessed = trend.Assessment;
        return Course.Of(trend) is not { } course
            ? null
            : new Trace(
                page.Texts[assessed.Verdict == TrendVerdict.Rising ? "trend.rising" : "trend.falling"],
                Ink.Blue,
                Dash.Solid,
                [
                    .. course
                        .Moments(from)
                        .Select(at => new Spot(page.Days(at), shown.From(course.At(at, assessed.Slope)))),
                ],
                2.2f
            );
    }

    /// <summary>Between the least and the largest slope of the interval, through the same middle; null where the readings do not bound it in figures.</summary>
    public static Shade? Slopes(Page page, Shown shown, SeriesTrend trend)
    {
        if (
            Course.Of(trend) is not { } course
            || trend.Assessment.SlopeInterval is not { Lower: { } lower, Upper: { } upper }
            || !(upper > lower)
        )
        {
            return null;
        }

        var ends = course
            .Moments(default)
            .Select(at => (Day: page.Days(at), One: course.At(at, lower), Other: course.At(at, upper)))
            .ToList();
        if (ends.Any(one => !Guard.IsFinite(one.One) || !Guard.IsFinite(one.Other)))
        {
            return null;
        }

        return new Shade(
            page.Texts.Say("trend.slopes", ("confidence", page.Texts.Reported(100 * trend.Assessment.Confidence))),
            Ink.PaleBlue,
            [
                .. ends.Select(one => new Spot(one.Day, shown.From(Math.Max(one.One, one.Other)))),
                .. Enumerable.Reverse(ends).Select(one => new Spot(one.Day, shown.From(Math.Min(one.One, one.Other)))),
            ]
        );
    }

    /// <summary>Lines through the middle of the judged values: the level at the middle of their days.</summary>
    private sealed record Course(
        MeasurandSeries Series,
        bool IsLogarithmic,
        double MiddleDay,
        double Level,
        DateTimeOffset First,
        DateTimeOffset Last
    )
    {
        /// <summary>Null where no trend is shown, or hardly a reading is a plain value.</summary>
        public static Course? Of(SeriesTrend trend)
        {
            var assessed = trend.Assessment;
            if (assessed.Verdict is not (TrendVerdict.Rising or TrendVerdict.Falling))
            {
                return null;
            }

            var isLogarithmic = assessed.Scale == NaturalScale.Logarithmic;
            var series = trend.Judged;
            var points = series
                .Points.Where(point => !point.Reading.IsCensored && (!isLogarithmic || point.Reading.Value > 0))
                .ToList();
            if (points.Count < 2)
            {
                return null;
            }

            var middleDay = points.Average(point => series.DaysAt(point.At));
            var levels = points
                .Select(point =>
                    (isLogarithmic ? Math.Log(point.Reading.Value) : point.Reading.Value)
                    - assessed.Slope * (series.DaysAt(point.At) - middleDay)
                )
                .OrderBy(level => level)
                .ToList();
            return new Course(
                series,
                isLogarithmic,
                middleDay,
                (levels[(levels.Count - 1) / 2] + levels[levels.Count / 2]) / 2,
                points.Min(point => point.At),
                points.Max(point => point.At)
            );
        }

        public double At(DateTimeOffset at, double slope)
        {
            var value = Level + slope * (Series.DaysAt(at) - MiddleDay);
            return IsLogarithmic ? Math.Exp(value) : value;
        }

        /// <summary>Over oil hours a line bends where the duty does; on a scale that is not the axis' own it is curved.</summary>
        public IEnumerable<DateTimeOffset> Moments(DateTimeOffset from) =>
            Enumerable
                .Range(0, Parts + 1)
                .Select(i => First.AddTicks((Last - First).Ticks / Parts * i))
                .Concat(Series.IsOverOilHours ? Series.Points.Select(point => point.At) : [])
                .Where(at => at >= First && at <= Last && at >= from)
                .Distinct()
                .OrderBy(at => at);
    }
}
