using OilCondition.Charts.Drawing;
using OilCondition.Prognosis;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>The trend of one measurand, drawn.</summary>
internal sealed class TrendPicture
{
    /// <summary>A limit so far off that the readings would fill less than this share of the height stays off the chart, and is named at its edge.</summary>
    private const double LeastShare = 0.12;

    /// <summary>Forecasts are shown as far ahead as three times what lies behind, and ten years at least where the date to plan with lies in them.</summary>
    private const double MostAhead = 3;

    private const int MostSensorPoints = 400;

    private readonly ConditionAssessment assessment;
    private readonly MeasurandState state;
    private readonly Page page;
    private readonly ChartTexts texts;
    private readonly Shown shown;
    private readonly DateTimeOffset now;
    private readonly DateTimeOffset from;
    private readonly IReadOnlyList<SeriesPoint> judged;
    private readonly IReadOnlyList<SeriesPoint> setAside;
    private readonly IReadOnlyList<SeriesPoint> earlier;
    private readonly IReadOnlyList<SeriesPoint> sensor;
    private readonly IReadOnlyList<LimitFigure> figures;

    public TrendPicture(ConditionAssessment assessment, MeasurandState state, Page page, DateTimeOffset? from)
    {
        this.assessment = assessment;
        this.state = state;
        this.page = page;
        texts = page.Texts;
        shown = Shown.Of(state.Measurand.Unit, page.Units);
        now = assessment.Options.AsOf;
        this.from = from ?? (assessment.History.TryFirstRecord(out var first) ? first : now);
        bool IsShown(SeriesPoint point) => point.At >= this.from;
        judged = [.. state.Trend.Judged.Points.Where(IsShown)];
        setAside = [.. state.Trend.Judged.LeftOut.Where(IsShown)];
        var known = new HashSet<(DateTimeOffset, string)>(
            judged.Concat(setAside).Select(point => (point.At, point.SampleNumber))
        );
        var all = this.from <= now ? assessment.History.SampleSeries(state.Measurand, this.from, now) : null;
        earlier = [.. (all?.Points ?? []).Where(point => !known.Contains((point.At, point.SampleNumber)))];
        setAside = [.. setAside, .. (all?.LeftOut ?? []).Where(point => known.Add((point.At, point.SampleNumber)))];
        sensor = Sensor();
        figures = LimitFigure.Of(state);
    }

    public Scene Scene()
    {
        var title = texts.Say("{0}: {1}", Page.Machine(assessment.History.Machine), texts.Name(state.Measurand.Name));
        if (judged.Count + setAside.Count + earlier.Count + sensor.Count == 0)
        {
            return Drawing.Scene.Nothing(title, texts.Say("No readings."));
        }

        var life = First();
        var time = page.Time(Moments(life));
        var fan = life is null ? null : Fan(life, time);
        var line = TrendLayers.Line(page, shown, state.Trend, from);
        List<Layer> layers =
        [
            .. Treatments(time),
            .. fan?.Layers ?? [],
            .. Readings(),
            .. line is null ? [] : new Layer[] { line },
        ];
        var values = layers.OfType<Marks>().SelectMany(layer => layer.Spots.Select(spot => spot.Y));
        var y = Upright([.. values, .. line?.Spots.Select(spot => spot.Y) ?? []], fan?.Limit);
        var moments = Moments(time, life);
        layers.AddRange(moments.Keys);
        return new Scene(title, Lines(), time, y)
        {
            Layers = layers,
            Levels = [.. figures.Select(figure => figure.Level(page, shown))],
            Moments = moments.Moments,
        };
    }

    private bool IsLogarithmic => state.Measurand.Scale == NaturalScale.Logarithmic;

    private IReadOnlyList<SeriesPoint> Sensor()
    {
        if (from > now)
        {
            return [];
        }

        var each = TimeSpan.FromTicks(Math.Max(TimeSpan.TicksPerMinute, (now - from).Ticks / MostSensorPoints));
        return assessment.History.SensorSeries(state.Measurand, from, now, each).Points;
    }

    /// <summary>The life that ends first, of those that have a date to plan with.</summary>
    private RemainingLife? First() =>
        state
            .Lives.Where(life => life is RemainingLife.Crosses or RemainingLife.NoLatestDate)
            .OrderBy(Earliest)
            .FirstOrDefault();

    private static DateTimeOffset Earliest(RemainingLife life) =>
        life switch
        {
            RemainingLife.Crosses crosses => crosses.P10,
            RemainingLife.NoLatestDate open => open.P10,
            _ => DateTimeOffset.MaxValue,
        };

    private List<DateTimeOffset> Moments(RemainingLife? life)
    {
        List<DateTimeOffset> all =
        [
            now,
            .. judged.Concat(setAside).Concat(earlier).Concat(sensor).Select(point => point.At),
            .. assessment.History.Events.Where(one => one.At >= from && one.At <= now).Select(one => one.At),
        ];
        if (life is not null)
        {
            var behind = Math.Max(30, (now - all.Min()).TotalDays);
            var most = now.AddDays(
                Math.Max(MostAhead * behind, Math.Min(3652, 1.4 * (Earliest(life) - now).TotalDays))
            );
            var end = life is RemainingLife.Crosses crosses ? crosses.P90 : Earliest(life).AddDays(behind);
            all.Add(end < most ? end : most);
        }

        return all;
    }

    private IEnumerable<Layer> Readings()
    {
        static IReadOnlyList<(DateTimeOffset, Reading)> Of(IEnumerable<SeriesPoint> points) =>
            [.. points.Select(point => (point.At, point.Reading))];
        return
        [
            .. ReadingMarks
                .Of(page, shown, texts.Say("sensor"), Ink.SkyBlue, MarkerShape.FilledCircle, Of(sensor))
                .Select(layer => layer is Marks marks ? marks with { Size = 4 } : layer),
            .. ReadingMarks.Of(
                page,
                shown,
                texts.Say("earlier oil, or before a treatment"),
                Ink.Grey,
                MarkerShape.OpenCircle,
                Of(earlier)
            ),
            .. ReadingMarks.Of(page, shown, texts.Say("reading"), Ink.Black, MarkerShape.FilledCircle, Of(judged)),
            .. ReadingMarks.SetAside(page, shown, setAside),
        ];
    }

    /// <summary>From the end of the trend, or from the last reading, to the dates at which the limit is passed.</summary>
    private (IReadOnlyList<Layer> Layers, double Limit)? Fan(RemainingLife life, TimeAxis time)
    {
        if (life is not RemainingLife.Forecast forecast || state.Trend.Judged.Points.Count == 0)
        {
            return null;
        }

        var points = state.Trend.Judged.Points;
        var last = points[points.Count - 1];
        var limit = shown.From(life.Limit);
        var start = new Spot(page.Days(last.At), shown.From(last.Reading.Value));
        if (TrendLayers.Line(page, shown, state.Trend, from) is { Spots.Count: > 1 } line)
        {
            var end = line.Spots[line.Spots.Count - 1];
            start = life.Side == LimitSide.Upper == end.Y < limit ? end : start;
        }

        DateTimeOffset? At(double chance) => forecast.Crossing.TryAt(chance, out var at) ? at : null;
        var (p10, p50, p90) = (At(0.1), At(0.5), At(0.9));
        if (p10 is not { } early || page.Days(early) > time.To)
        {
            return null;
        }

        var width = Math.Max(time.To - start.X, 1e-6);
        Spot Cut(DateTimeOffset? at)
        {
            var x = at is { } moment ? page.Days(moment) : start.X + 1e4 * width;
            if (x <= time.To)
            {
                return new Spot(Math.Max(x, start.X), limit);
            }

            var part = (time.To - start.X) / (x - start.X);
            return new Spot(time.To, Between(start.Y, limit, part));
        }

        var (first, latest) = (Cut(early), Cut(p90));
        List<Spot> outline = [start, first];
        if (latest.Y != limit)
        {
            outline.Add(new Spot(time.To, limit));
        }

        outline.Add(latest);
        List<Layer> layers =
        [
            new Shade(
                p90 is null
                    ? texts.Say("forecast: limit passed from the earliest date (10 %) on")
                    : texts.Say("forecast: dates at which the limit is passed (10 to 90 %)"),
                Ink.PaleBlue,
                outline
            ),
        ];
        if (p50 is not null)
        {
            layers.Add(new Trace(texts.Say("forecast, 50 %"), Ink.Blue, Dash.Short, [start, Cut(p50)], 1.6f));
        }

        layers.Add(
            new Strokes(
                null,
                Ink.Blue,
                Dash.Solid,
                [new Stroke(first, latest.Y == limit ? latest : new Spot(time.To, limit))],
                5
            )
        );
        return (layers, limit);
    }

    private double Between(double from, double to, double part) =>
        IsLogarithmic && from > 0 && to > 0
            ? Math.Exp(Math.Log(from) + part * (Math.Log(to) - Math.Log(from)))
            : from + part * (to - from);

    private NumberAxis Upright(IReadOnlyList<double> values, double? forecastTo)
    {
        List<double> all = [.. values, .. forecastTo is { } limit ? new[] { limit } : []];
        double Place(double value) => IsLogarithmic ? Math.Log10(Math.Max(value, 1e-300)) : value;
        var usable = all.Where(value => !IsLogarithmic || value > 0).Select(Place).ToList();
        foreach (var figure in figures.Select(one => shown.From(one.Value)).Where(one => !IsLogarithmic || one > 0))
        {
            if (usable.Count == 0)
            {
                all.Add(figure);
                continue;
            }

            var (low, high) = (usable.Min(), usable.Max());
            var place = Place(figure);
            var size = Math.Max(high, place) - Math.Min(low, place);

            // One level has no size of its own: then it is compared with its height.
            var own = high > low ? high - low : Math.Max(Math.Abs(high), IsLogarithmic ? 1 : 0);
            if (own >= LeastShare * size)
            {
                all.Add(figure);
            }
        }

        var unit = shown.Unit.Length == 0 ? "" : $", {texts.Name(shown.Unit)}";
        return NumberAxis.Around(texts.Name(state.Measurand.Name) + unit, all, IsLogarithmic, texts);
    }

    private (IReadOnlyList<Moment> Moments, IReadOnlyList<Layer> Keys) Moments(TimeAxis time, RemainingLife? life)
    {
        var moments = new List<Moment>
        {
            new(time.Days(now), texts.Say("now {0}", page.Day(now)), Ink.Frame, Dash.Solid),
        };
        var keys = new List<Layer>();
        void Add(DateTimeOffset at, string words, Ink ink, Dash dash)
        {
            if (time.Shows(time.Days(at)))
            {
                moments.Add(new Moment(time.Days(at), words, ink, dash));
            }
        }

        if (life is RemainingLife.Forecast forecast)
        {
            foreach (var chance in new[] { 0.1, 0.9, 0.5 })
            {
                if (forecast.Crossing.TryAt(chance, out var at))
                {
                    Add(at, $"{texts.Number(100 * chance)} % {page.Day(at)}", Ink.Blue, Dash.Dots);
                }
            }

            keys.Add(new Strokes(texts.Say("limit passed in 10, 50 and 90 % of cases"), Ink.Blue, Dash.Dots, []));
        }

        var events = assessment.History.Events.Where(one => one.At >= from && one.At <= now).ToList();
        void Events<T>(string words, Ink ink, Dash dash)
            where T : OilEvent
        {
            var before = moments.Count;
            foreach (var one in events.OfType<T>().Reverse())
            {
                Add(one.At, words, ink, dash);
            }

            if (moments.Count > before)
            {
                keys.Add(new Strokes(words, ink, dash, []));
            }
        }

        Events<OilChange>(texts.Say("oil change"), Ink.Green, Dash.Long);
        Events<TopUp>(texts.Say("top-up"), Ink.SkyBlue, Dash.Dots);
        return (moments, keys);
    }

    private IEnumerable<Layer> Treatments(TimeAxis time)
    {
        var runs = assessment.History.Events.OfType<TreatmentRun>().Where(run => run.At <= now).ToList();
        var stretches = runs.Select(run =>
                (
                    From: Math.Max(time.From, time.Days(run.At)),
                    To: time.Days(run.EndedAt is { } end && end < now ? end : now)
                )
            )
            .Where(stretch => stretch.To >= time.From)
            .ToList();
        if (stretches.Count == 0)
        {
            yield break;
        }

        // A run of hours on an axis of years is still to be seen.
        var least = (time.To - time.From) / 300;
        yield return new Boxes(
            texts.Say("treatment"),
            Ink.PaleGrey,
            [
                .. stretches.Select(stretch => new Stroke(
                    new Spot(stretch.From, double.MinValue),
                    new Spot(Math.Max(stretch.To, stretch.From + least), double.MaxValue)
                )),
            ]
        );
    }

    private List<string> Lines()
    {
        var lines = new List<string>
        {
            state.Latest is { } latest
                ? texts.Say(
                    "{0} on {1}: {2}; {3}.",
                    page.Reading(shown, latest.Reading),
                    page.Day(latest.At),
                    page.State(state.Worst.State),
                    Verdict()
                )
                : texts.Say("No reading of this oil; {0}.", Verdict()),
        };
        lines.AddRange(state.Lives.Select(Sentence));
        lines.AddRange(ReadingMarks.Notes(page, state.Measurand, judged, [.. setAside, .. earlier]));
        return lines;
    }

    private string Verdict()
    {
        var change = assessment.Findings.FirstOrDefault(finding =>
            finding.Code == FindingCode.SuddenChange && finding.Measurand.Equals(state.Measurand)
        );
        if (change is not null)
        {
            double Figure(string id) => change.Evidence.First(item => item.Id == id).Value!.Value;
            return texts.Say(
                Figure("readings-since-change") == 1
                    ? "sudden change from about {0} to {1}, to be confirmed ({2} readings)"
                    : "changed at once from about {0} to {1} ({2} readings)",
                shown.Text(texts, Figure("usual-before")),
                shown.Text(texts, Figure("usual-since")),
                texts.Count(state.Trend.Judged.Points.Count)
            );
        }

        return TrendLayers.Verdict(page, shown, state.Trend);
    }

    private string Sentence(RemainingLife life)
    {
        var isAlarm = figures.Any(figure => figure.IsAlarm && figure.Side == life.Side && figure.Value == life.Limit);
        return LifeWords.Of(page, shown, life, isAlarm ? "The alarm figure {0}" : "The alert figure {0}");
    }
}
