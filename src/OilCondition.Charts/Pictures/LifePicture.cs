using OilCondition.Charts.Drawing;
using OilCondition.Prognosis;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>A remaining life alone: the readings that it was told from, the limit, and by when it is passed.</summary>
internal sealed class LifePicture(Page page, RemainingLife life)
{
    /// <summary>Dates are shown as far ahead as three times what lies behind, as on the chart of a trend.</summary>
    private const double MostAhead = 3;

    private readonly ChartTexts texts = page.Texts;
    private readonly Shown shown = Shown.Of(life.Series.Measurand.Unit, page.Units);

    public Scene Scene()
    {
        var measurand = life.Series.Measurand;
        var name = texts.Name(measurand.Name);
        var title = texts.Say("{0}: {1}", name, texts.Say("remaining life"));
        var sentence = LifeWords.Of(page, shown, life, "The limit {0}");
        var points = life.Series.Points;
        if (points.Count == 0)
        {
            return Drawing.Scene.Nothing(title, texts.Say("No readings."), [sentence]);
        }

        var isLogarithmic = measurand.Scale == NaturalScale.Logarithmic;
        var dates = Dates().ToList();
        var time = page.Time([.. points.Select(point => point.At), .. Seen(points, dates)]);
        List<Layer> layers =
        [
            .. ReadingMarks.Of(
                page,
                shown,
                texts.Say("reading"),
                Ink.Black,
                MarkerShape.FilledCircle,
                [.. points.Select(point => (point.At, point.Reading))]
            ),
        ];
        if (dates.Count > 0)
        {
            layers.Add(new Strokes(texts.Say("limit passed in 10, 50 and 90 % of cases"), Ink.Blue, Dash.Dots, []));
        }

        var limit = shown.From(life.Limit);
        var unit = shown.Unit.Length == 0 ? "" : $", {texts.Name(shown.Unit)}";
        return new Scene(
            title,
            [sentence],
            time,
            NumberAxis.Around(
                name + unit,
                points.Select(point => shown.From(point.Reading.Value)).Append(limit),
                isLogarithmic,
                texts
            )
        )
        {
            Layers = layers,
            Levels =
            [
                new LevelMark(limit, texts.Say("limit {0}", shown.Text(texts, life.Limit)), Ink.Vermilion, Dash.Solid),
            ],
            Moments = [.. Moments(dates, time)],
        };
    }

    private IEnumerable<(double Chance, DateTimeOffset At)> Dates()
    {
        if (life is not RemainingLife.Forecast forecast)
        {
            yield break;
        }

        foreach (var chance in new[] { 0.1, 0.9, 0.5 })
        {
            if (forecast.Crossing.TryAt(chance, out var at))
            {
                yield return (chance, at);
            }
        }
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

        var most = now.AddDays(MostAhead * Math.Max(30, (now - points[0].At).TotalDays));
        return dates.Select(one => one.At < most ? one.At : most).Append(now);
    }

    private IEnumerable<Moment> Moments(List<(double Chance, DateTimeOffset At)> dates, TimeAxis time)
    {
        if (life is RemainingLife.Forecast { Crossing.AsOf: var now })
        {
            yield return new Moment(time.Days(now), texts.Say("now {0}", page.Day(now)), Ink.Frame, Dash.Solid);
        }

        foreach (var (chance, at) in dates.Where(one => time.Shows(time.Days(one.At))))
        {
            yield return new Moment(
                time.Days(at),
                $"{texts.Number(100 * chance)} % {page.Day(at)}",
                Ink.Blue,
                Dash.Dots
            );
        }
    }
}
