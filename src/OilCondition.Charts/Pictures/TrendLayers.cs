using OilCondition.Charts.Drawing;
using OilCondition.Statistics;
using OilCondition.Text;

namespace OilCondition.Charts.Pictures;

/// <summary>What is drawn and said of a trend, on the chart of a machine and on its own.</summary>
internal static class TrendLayers
{
    private const int Parts = 24;

    /// <summary>The slope of the verdict through the middle of the judged readings; null where no trend is shown.</summary>
    public static Trace? Line(Page page, Shown shown, SeriesTrend trend, DateTimeOffset from)
    {
        if (Course.Of(trend) is not { } course)
        {
            return null;
        }

        var key =
            trend.Assessment.Verdict == TrendVerdict.Rising
                ? page.Texts.Say("trend, rising")
                : page.Texts.Say("trend, falling");
        return new Trace(
            key,
            Ink.Blue,
            Dash.Solid,
            [
                .. course
                    .Moments(from)
                    .Select(at => new Spot(page.Days(at), shown.From(course.At(at, trend.Assessment.Slope)))),
            ],
            2.2f
        );
    }

    /// <summary>Between the least and the largest slope of the interval, through the same middle; null where the readings do not bound it in figures.</summary>
    public static Shade? Slopes(Page page, Shown shown, SeriesTrend trend, DateTimeOffset from)
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
            .Moments(from)
            .Select(at => (Day: page.Days(at), One: course.At(at, lower), Other: course.At(at, upper)))
            .ToList();
        if (ends.Any(one => !Guard.IsFinite(one.One) || !Guard.IsFinite(one.Other)))
        {
            return null;
        }

        return new Shade(
            page.Texts.Say("slopes of the interval, {0} %", page.Texts.Number(100 * trend.Assessment.Confidence)),
            Ink.PaleBlue,
            [
                .. ends.Select(one => new Spot(one.Day, shown.From(Math.Max(one.One, one.Other)))),
                .. Enumerable.Reverse(ends).Select(one => new Spot(one.Day, shown.From(Math.Min(one.One, one.Other)))),
            ]
        );
    }

    /// <summary>The verdict in words.</summary>
    public static string Verdict(Page page, Shown shown, SeriesTrend trend)
    {
        var count = page.Texts.Count(trend.Judged.Points.Count);
        return trend.Assessment.Verdict switch
        {
            TrendVerdict.Rising => page.Texts.Say(
                "rising, {0} ({1} readings)",
                Pace(page, shown, trend.Assessment),
                count
            ),
            TrendVerdict.Falling => page.Texts.Say(
                "falling, {0} ({1} readings)",
                Pace(page, shown, trend.Assessment),
                count
            ),
            TrendVerdict.NoTrend => page.Texts.Say("no even trend ({0} readings)", count),
            _ => page.Texts.Say("too few readings for a trend ({0})", count),
        };
    }

    private static string Pace(Page page, Shown shown, TrendAssessment assessed)
    {
        var texts = page.Texts;
        return assessed.Scale == NaturalScale.Logarithmic
            ? texts.Say(
                "factor {0} in 30 days",
                texts.Number(Math.Exp(30 * assessed.Slope), 0.001 * Math.Exp(30 * assessed.Slope))
            )
            : texts.Say(
                "{0} in 30 days",
                shown.Text(texts, texts.Number(30 * assessed.Slope * shown.Factor, 30 * Open(assessed) * shown.Factor))
            );
    }

    /// <summary>Half the interval of a slope, whose first figure is the last one said, as in the sentences of the assessment.</summary>
    private static double Open(TrendAssessment assessed) =>
        assessed.SlopeInterval is { Lower: { } lower, Upper: { } upper } && upper > lower
            ? (upper - lower) / 2
            : Math.Abs(assessed.Slope) / 3;

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
