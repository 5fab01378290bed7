using OilCondition.Charts.Drawing;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>The readings of a measurand from a moment on, each once: judged, set aside, of earlier oil, and by the sensor.</summary>
internal sealed class TrendReadings
{
    private const int MostSensorPoints = 400;

    private readonly List<SeriesPoint> setAside;
    private readonly List<SeriesPoint> earlier;

    /// <summary>Those of a trend, without those that it does not rest on.</summary>
    public TrendReadings(SeriesTrend trend, DateTimeOffset from = default)
    {
        bool IsShown(SeriesPoint point) => point.At >= from;
        Judged = [.. trend.Judged.Points.Where(IsShown)];
        setAside = [.. trend.Judged.LeftOut.Where(IsShown)];
        earlier = [];
    }

    public TrendReadings(ConditionAssessment assessment, MeasurandState state, DateTimeOffset from)
        : this(state.Trend, from)
    {
        var (history, now) = (assessment.History, assessment.Options.AsOf);
        var known = new HashSet<(DateTimeOffset, string)>(
            Judged.Concat(setAside).Select(point => (point.At, point.SampleNumber))
        );
        var all = from <= now ? history.SampleSeries(state.Measurand, from, now) : null;
        earlier = [.. (all?.Points ?? []).Where(point => !known.Contains((point.At, point.SampleNumber)))];
        setAside.AddRange((all?.LeftOut ?? []).Where(point => known.Add((point.At, point.SampleNumber))));
        if (from <= now)
        {
            var each = TimeSpan.FromTicks(Math.Max(TimeSpan.TicksPerMinute, (now - from).Ticks / MostSensorPoints));
            Sensor = history.SensorSeries(state.Measurand, from, now, each).Points;
        }
    }

    /// <summary>Those that the verdict rests on.</summary>
    public IReadOnlyList<SeriesPoint> Judged { get; }

    public IReadOnlyList<SeriesPoint> Sensor { get; } = [];

    public IEnumerable<DateTimeOffset> Moments =>
        Judged.Concat(setAside).Concat(earlier).Concat(Sensor).Select(point => point.At);

    /// <summary>What to know of where the marks stand: readings that are not those reported, and readings that no scale of logarithms can show.</summary>
    public IEnumerable<string> Notes(ChartTexts texts, bool isLogarithmic)
    {
        if (Judged.Any(point => point.Reading.Value != point.Reported.Value))
        {
            yield return texts["trend.diluted"];
        }

        if (isLogarithmic && Judged.Concat(setAside).Concat(earlier).Any(point => !(point.Reading.Value > 0)))
        {
            yield return texts["trend.zeros"];
        }
    }

    public IEnumerable<Layer> Layers(Page page, Shown shown)
    {
        var texts = page.Texts;
        IEnumerable<Layer> Of(string key, Ink ink, MarkerShape shape, IEnumerable<SeriesPoint> points) =>
            ReadingMarks.Of(
                page,
                shown.From,
                texts[key],
                ink,
                shape,
                [.. points.Select(point => (point.At, point.Reading))]
            );
        return
        [
            .. Of("mark.sensor", Ink.SkyBlue, MarkerShape.FilledCircle, Sensor)
                .Select(layer => layer is Marks marks ? marks with { Size = 4 } : layer),
            .. Of("mark.earlier", Ink.Grey, MarkerShape.OpenCircle, earlier),
            .. Of("mark.reading", Ink.Black, MarkerShape.FilledCircle, Judged),
            new Marks(
                texts["mark.set-aside"],
                Ink.Purple,
                MarkerShape.OpenCircleWithEks,
                [.. setAside.Select(point => new Spot(page.Days(point.At), shown.From(point.Reading.Value)))],
                10
            ),
        ];
    }
}
