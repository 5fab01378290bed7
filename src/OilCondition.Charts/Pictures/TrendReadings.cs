using OilCondition.Charts.Drawing;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>The readings of a measurand from a moment on, each once: judged, set aside, of earlier oil, and by the sensor.</summary>
internal sealed class TrendReadings
{
    private const int MostSensorPoints = 400;

    private readonly List<SeriesPoint> setAside;
    private readonly List<SeriesPoint> earlier;

    public TrendReadings(ConditionAssessment assessment, MeasurandState state, DateTimeOffset from)
    {
        var (history, now) = (assessment.History, assessment.Options.AsOf);
        bool IsShown(SeriesPoint point) => point.At >= from;
        Judged = [.. state.Trend.Judged.Points.Where(IsShown)];
        setAside = [.. state.Trend.Judged.LeftOut.Where(IsShown)];
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

    /// <summary>Whether top-ups diluted a judged reading, so that it is not the one that was reported.</summary>
    public bool AreDiluted => Judged.Any(point => point.Reading.Value != point.Reported.Value);

    /// <summary>Whether a sample has a reading that no scale of logarithms can show.</summary>
    public bool HaveZeros => Judged.Concat(setAside).Concat(earlier).Any(point => !(point.Reading.Value > 0));

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
