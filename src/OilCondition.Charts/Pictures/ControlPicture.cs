using OilCondition.Charts.Drawing;
using OilCondition.ControlCharts;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>A control chart, drawn.</summary>
internal sealed class ControlPicture
{
    private readonly Page page;
    private readonly ChartTexts texts;
    private readonly Shown shown;
    private readonly string title;
    private readonly DateTimeOffset[] moments;
    private readonly double[] values;
    private readonly int bounds;

    public ControlPicture(Page page, MeasurandSeries series, string? title)
    {
        this.page = page;
        texts = page.Texts;
        shown = new Shown(texts, series.Measurand);
        this.title = title is null ? shown.Name : texts.Say("title.of", ("whose", title), ("what", shown.Name));
        var plain = series.Points.Where(point => !point.Reading.IsCensored).ToList();
        moments = [.. plain.Select(point => point.At)];
        values = [.. plain.Select(point => point.Reading.Value)];
        bounds = series.Points.Count - plain.Count;
    }

    public Scene Individuals(IndividualsChart chart) =>
        Readings(chart.Plot(values), chart.Mean, texts["control.individuals"]);

    public Scene Average(EwmaChart chart) => Readings(chart.Plot(values), chart.Target, texts["control.ewma"]);

    public Scene Sums(CusumChart chart)
    {
        var points = chart.Plot(values);
        var up = Line(Ink.Black, points.Select(point => shown.Change(point.Upper)), null) with { Dash = Dash.Solid };
        var down = Line(Ink.Blue, points.Select(point => shown.Change(-point.Lower)), null) with { Dash = Dash.Solid };
        LevelMark Level(string key, double sum) =>
            new(shown.Change(sum), texts.Say(key, ("limit", shown.ChangeText(sum))), Ink.Vermilion, Dash.Long);
        return Draw(
            texts["control.cusum"],
            [
                up,
                down,
                Dots(up, texts["control.sum-above"]),
                Dots(down, texts["control.sum-below"]) with
                {
                    Shape = MarkerShape.FilledSquare,
                },
            ],
            [
                .. points.Select(point =>
                    (
                        shown.Change(point.Signal == ChartSignal.Below ? -point.Lower : point.Upper),
                        point.Signal != ChartSignal.None
                    )
                ),
            ],
            [
                Level("control.signal-above", chart.DecisionInterval),
                Level("control.signal-below", -chart.DecisionInterval),
            ]
        );
    }

    private Scene Readings(IReadOnlyList<ChartPoint> points, double centre, string what)
    {
        var line = Line(Ink.Black, points.Select(point => shown.From(point.Value)), null) with
        {
            Dash = Dash.Solid,
            Width = 1.2f,
        };
        Trace Limit(Func<ChartPoint, double> limit, string? key) =>
            Line(Ink.Vermilion, points.Select(point => shown.From(limit(point))), key);
        LevelMark Level(string key, string place, double level, Ink ink, Dash? dash) =>
            new(shown.From(level), texts.Say(key, (place, shown.Text(level))), ink, dash);
        return Draw(
            what,
            [
                Limit(point => point.UpperLimit, texts["control.limits"]),
                Limit(point => point.LowerLimit, null),
                line,
                Dots(line, what),
            ],
            [.. points.Select(point => (shown.From(point.Value), point.Signal != ChartSignal.None))],
            points.Count == 0
                ? []
                :
                [
                    Level("control.centre", "level", centre, Ink.Blue, Dash.Short),
                    Level("limit.figure", "limit", points[points.Count - 1].UpperLimit, Ink.Vermilion, null),
                    Level("limit.figure", "limit", points[points.Count - 1].LowerLimit, Ink.Vermilion, null),
                ]
        );
    }

    private Trace Line(Ink ink, IEnumerable<double> heights, string? key) =>
        new(key, ink, Dash.Long, [.. heights.Select((height, i) => new Spot(page.Days(moments[i]), height))], 1.6f);

    private static Marks Dots(Trace line, string key) =>
        new(key, line.Ink, MarkerShape.FilledCircle, line.Spots, line.Spots.Count > 400 ? 3 : 7);

    private Scene Draw(
        string what,
        IReadOnlyList<Layer> layers,
        IReadOnlyList<(double Height, bool IsSignal)> points,
        IReadOnlyList<LevelMark> levels
    )
    {
        if (points.Count == 0)
        {
            return Scene.Nothing(title, texts["readings.none"], [.. Bounds()]);
        }

        List<int> signals = [.. Enumerable.Range(0, points.Count).Where(i => points[i].IsSignal)];
        var heights = layers.OfType<Trace>().SelectMany(course => course.Spots).Select(spot => spot.Y);
        return new Scene(
            title,
            [
                texts.Say("control.told", ("kind", what)),
                signals.Count == 0
                    ? texts.Say("control.told-none", ("count", Count(points.Count)))
                    : texts.Say(
                        "control.told-signals",
                        ("signals", Count(signals.Count)),
                        ("count", Count(points.Count)),
                        ("date", page.Day(moments[signals[0]]))
                    ),
                .. Bounds(),
            ],
            page.Time(moments),
            NumberAxis.Around(shown.In(what), heights.Concat(levels.Select(level => level.At)), false, texts)
        )
        {
            Layers =
            [
                .. layers,
                new Marks(
                    texts["control.signal"],
                    Ink.Vermilion,
                    MarkerShape.OpenSquare,
                    [.. signals.Select(i => new Spot(page.Days(moments[i]), points[i].Height))],
                    13
                ),
            ],
            Levels = levels,
        };
    }

    private IEnumerable<string> Bounds() =>
        bounds == 0 ? [] : [texts.Say("control.told-bounds", ("count", Count(bounds)))];

    private string Count(int count) => page.Sentences.Number(count);
}
