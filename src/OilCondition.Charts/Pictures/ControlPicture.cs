using OilCondition.Charts.Drawing;
using OilCondition.ControlCharts;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>A control chart, drawn.</summary>
internal sealed class ControlPicture
{
    private readonly Page page;
    private readonly ChartTexts texts;
    private readonly Measurand measurand;
    private readonly Shown shown;
    private readonly string title;
    private readonly DateTimeOffset[] moments;
    private readonly int bounds;

    public ControlPicture(Page page, MeasurandSeries series, string? title)
    {
        this.page = page;
        texts = page.Texts;
        measurand = series.Measurand;
        shown = Shown.Of(measurand.Unit, page.Units);
        var name = texts.Name(measurand.Name);
        this.title = title is null ? name : texts.Say("{0}: {1}", title, name);
        var plain = series.Points.Where(point => !point.Reading.IsCensored).ToList();
        moments = [.. plain.Select(point => point.At)];
        Values = [.. plain.Select(point => point.Reading.Value)];
        bounds = series.Points.Count - plain.Count;
    }

    public double[] Values { get; }

    public Scene Readings(IReadOnlyList<ChartPoint> points, double centre, string what)
    {
        if (points.Count == 0)
        {
            return Nothing();
        }

        var lower = Line(Ink.Vermilion, points.Select(point => point.LowerLimit), null);
        var upper = Line(Ink.Vermilion, points.Select(point => point.UpperLimit), texts.Say("control limits"));
        var values = Line(Ink.Black, points.Select(point => point.Value), null) with
        {
            Dash = Dash.Solid,
            Width = 1.2f,
        };
        var last = points[points.Count - 1];
        return Draw(
            what,
            [upper, lower, values, Dots(values, texts.Say(what))],
            Signals(points.Select((point, i) => (i, point.Value, point.Signal))),
            [
                Level(centre, "centre {0}", Ink.Blue, Dash.Short),
                Level(last.UpperLimit, "limit {0}", Ink.Vermilion, null),
                Level(last.LowerLimit, "limit {0}", Ink.Vermilion, null),
            ]
        );
    }

    public Scene Sums(IReadOnlyList<CusumPoint> points, double decision)
    {
        if (points.Count == 0)
        {
            return Nothing();
        }

        const string What = "cumulative sums";
        var up = Line(Ink.Black, points.Select(point => point.Upper), null) with { Dash = Dash.Solid };
        var down = Line(Ink.Blue, points.Select(point => -point.Lower), null) with { Dash = Dash.Solid };
        return Draw(
            What,
            [
                up,
                down,
                Dots(up, texts.Say("sum above the target")),
                Dots(down, texts.Say("sum below the target, drawn downwards")) with
                {
                    Shape = MarkerShape.FilledSquare,
                },
            ],
            Signals(
                points.Select(
                    (point, i) => (i, point.Signal == ChartSignal.Below ? -point.Lower : point.Upper, point.Signal)
                )
            ),
            [
                Level(decision, "signal above {0}", Ink.Vermilion, Dash.Long),
                Level(-decision, "signal below {0}", Ink.Vermilion, Dash.Long),
            ],
            isDifference: true
        );
    }

    private Scene Nothing() => Scene.Nothing(title, texts.Say("No readings."), bounds == 0 ? null : [Bounds()]);

    private string Bounds() =>
        texts.Say("{0} readings that are only bounds (< or >) are left out.", texts.Count(bounds));

    private double Shift(double value, bool isDifference) => isDifference ? value * shown.Factor : shown.From(value);

    private Trace Line(Ink ink, IEnumerable<double> values, string? key) =>
        new(key, ink, Dash.Long, [.. values.Select((value, i) => new Spot(page.Days(moments[i]), value))], 1.6f);

    private static Marks Dots(Trace line, string key) =>
        new(key, line.Ink, MarkerShape.FilledCircle, line.Spots, line.Spots.Count > 400 ? 3 : 7);

    private Marks? Signals(IEnumerable<(int At, double Value, ChartSignal Signal)> points)
    {
        List<Spot> spots =
        [
            .. points
                .Where(point => point.Signal != ChartSignal.None)
                .Select(point => new Spot(page.Days(moments[point.At]), point.Value)),
        ];
        return spots.Count == 0
            ? null
            : new Marks(texts.Say("signal"), Ink.Vermilion, MarkerShape.OpenSquare, spots, 13);
    }

    private static LevelMark Level(double value, string phrase, Ink ink, Dash? dash) => new(value, phrase, ink, dash);

    private Scene Draw(
        string what,
        IReadOnlyList<Layer> layers,
        Marks? signals,
        IReadOnlyList<LevelMark> levels,
        bool isDifference = false
    )
    {
        Spot Seen(Spot spot) => spot with { Y = Shift(spot.Y, isDifference) };
        List<Layer> all =
        [
            .. layers
                .Concat(signals is null ? [] : new Layer[] { signals })
                .Select(layer =>
                    layer switch
                    {
                        Marks marks => marks with { Spots = [.. marks.Spots.Select(Seen)] },
                        Trace course => (Layer)(course with { Spots = [.. course.Spots.Select(Seen)] }),
                        _ => layer,
                    }
                ),
        ];
        var seen = levels
            .Select(level =>
            {
                var at = Shift(level.At, isDifference);
                return level with { At = at, Text = texts.Say(level.Text, shown.Text(texts, texts.Number(at))) };
            })
            .ToList();
        var heights = all.OfType<Marks>()
            .SelectMany(marks => marks.Spots)
            .Concat(all.OfType<Trace>().SelectMany(course => course.Spots))
            .Select(spot => spot.Y)
            .Concat(seen.Select(level => level.At));
        var unit = shown.Unit.Length == 0 ? "" : $", {texts.Name(shown.Unit)}";
        return new Scene(
            title,
            Lines(what, signals),
            page.Time(moments),
            NumberAxis.Around($"{texts.Say(what)}{unit}", heights, false, texts)
        )
        {
            Layers = all,
            Levels = seen,
        };
    }

    private List<string> Lines(string what, Marks? signals)
    {
        var first = signals is null
            ? texts.Say("Signals: none in {0}.", texts.Count(Values.Length))
            : texts.Say(
                "Signals: {0} of {1}, the first on {2}.",
                texts.Count(signals.Spots.Count),
                texts.Count(Values.Length),
                texts.Date(new DateTime(1900, 1, 1).AddDays(signals.Spots[0].X))
            );
        return [texts.Say("Control chart: {0}.", texts.Say(what)), first, .. bounds == 0 ? [] : new[] { Bounds() }];
    }
}
