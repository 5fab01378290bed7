using OilCondition.Charts.Drawing;
using OilCondition.Prognosis;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>A remaining life alone: the readings that it was told from, the limit, and by when it is passed.</summary>
internal sealed class LifePicture(Page page, RemainingLife life)
{
    private readonly ChartTexts texts = page.Texts;
    private readonly Shown shown = new(page.Texts, life.Series.Measurand);

    public Scene Scene()
    {
        var measurand = life.Series.Measurand;
        var title = texts.Say("title.of", ("whose", shown.Name), ("what", texts["life.title"]));
        var sentence = LifeWords.Of(page, shown, life, "life.limit");
        var points = life.Series.Points;
        if (points.Count == 0)
        {
            return Drawing.Scene.Nothing(title, texts["readings.none"], [sentence]);
        }

        var isLogarithmic = measurand.Scale == NaturalScale.Logarithmic;
        var dates = life is RemainingLife.Forecast forecast ? LifeDates.Of(forecast).ToList() : [];
        var time = page.Time([.. points.Select(point => point.At), .. Seen(points, dates)]);
        List<Layer> layers =
        [
            .. ReadingMarks.Of(
                page,
                shown.From,
                texts["mark.reading"],
                Ink.Black,
                MarkerShape.FilledCircle,
                [.. points.Select(point => (point.At, point.Reading))]
            ),
        ];
        if (dates.Count > 0)
        {
            layers.Add(LifeDates.Key(page));
        }

        var limit = shown.From(life.Limit);
        return new Scene(
            title,
            [sentence],
            time,
            NumberAxis.Around(
                shown.Label,
                points.Select(point => shown.From(point.Reading.Value)).Append(limit),
                isLogarithmic,
                texts
            )
        )
        {
            Layers = layers,
            Levels =
            [
                new LevelMark(
                    limit,
                    texts.Say("limit.figure", ("limit", shown.Text(life.Limit))),
                    Ink.Vermilion,
                    Dash.Solid
                ),
            ],
            Moments = [.. Moments(dates, time)],
        };
    }

    private IEnumerable<DateTimeOffset> Seen(
        IReadOnlyList<SeriesPoint> points,
        List<(double Chance, DateTimeOffset At)> dates
    )
    {
        if (life is not RemainingLife.Forecast { Crossing.AsOf: var now })
        {
            return [];
        }

        var most = now.AddDays(LifeDates.MostAhead * Math.Max(30, (now - points[0].At).TotalDays));
        return dates.Select(one => one.At < most ? one.At : most).Append(now);
    }

    private IEnumerable<Moment> Moments(List<(double Chance, DateTimeOffset At)> dates, TimeAxis time)
    {
        if (life is RemainingLife.Forecast { Crossing.AsOf: var now })
        {
            yield return new Moment(
                time.Days(now),
                texts.Say("moment.now", ("date", page.Day(now))),
                Ink.Frame,
                Dash.Solid
            );
        }

        foreach (var (chance, at) in dates.Where(one => time.Shows(time.Days(one.At))))
        {
            yield return new Moment(time.Days(at), LifeDates.Words(page, chance, at), Ink.Blue, Dash.Dots);
        }
    }
}
