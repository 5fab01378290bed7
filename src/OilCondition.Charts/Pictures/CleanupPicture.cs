using OilCondition.Charts.Drawing;
using OilCondition.Cleanup;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>A cleanup, drawn: what the run is to bring down, or the ruling size where it has a code to reach only.</summary>
internal sealed class CleanupPicture
{
    private readonly Page page;
    private readonly ChartTexts texts;
    private readonly string title;
    private readonly CleanupStatus status;
    private readonly CleanupReading[] readings;
    private readonly Measurand measurand;
    private readonly Shown shown;
    private readonly CleanupCurve curve;
    private readonly double? target;

    public CleanupPicture(Page page, string title, CleanupStatus status, IReadOnlyList<CleanupReading> readings)
    {
        this.page = page;
        texts = page.Texts;
        this.title = title;
        this.status = status;
        this.readings = [.. readings.OrderBy(one => one.At)];
        var part = status.Options.Target is null
            ? status.Parts.FirstOrDefault(one => one.Measurand.Equals(status.RulingPart))
            : null;
        measurand = part?.Measurand ?? status.Options.Measurand;
        curve = part?.Curve ?? status.Curve;
        target = part?.Target ?? status.Options.Target;
        shown = Shown.Of(measurand.Unit, page.Units);
    }

    private bool IsLogarithmic => measurand.Scale == NaturalScale.Logarithmic;

    public Scene Scene()
    {
        var samples = Of(bySensor: false);
        var sensor = Of(bySensor: true);
        if (samples.Count + sensor.Count == 0)
        {
            return Drawing.Scene.Nothing(title, texts.Say("No readings."));
        }

        var time = page.Time(Moments([.. samples, .. sensor]));
        var curves = CurveLayers.Of(page, shown, curve, time, status.Confidence).ToList();
        List<Layer> layers =
        [
            .. curves.OfType<Shade>(),
            .. Marks(sensor, isSensor: true),
            .. Marks(samples, isSensor: false),
            .. curves.OfType<Trace>(),
        ];
        var values = layers
            .SelectMany(layer =>
                layer switch
                {
                    Marks marks => marks.Spots,
                    Trace course => course.Spots,
                    _ => [],
                }
            )
            .Select(spot => spot.Y)
            .Concat(target is { } level ? new[] { shown.From(level) } : []);
        var unit = shown.Unit.Length == 0 ? "" : $", {texts.Name(shown.Unit)}";
        return new Scene(
            title,
            Lines(),
            time,
            NumberAxis.Around(
                texts.Name(measurand.Name) + unit,
                values,
                IsLogarithmic,
                texts,
                isFromZero: !IsLogarithmic
            )
        )
        {
            Layers = layers,
            Levels = target is { } asked
                ?
                [
                    new LevelMark(
                        shown.From(asked),
                        texts.Say("target {0}", shown.Text(texts, asked)),
                        Ink.Vermilion,
                        Dash.Long
                    ),
                ]
                : [],
            Moments = [.. Marked(time)],
        };
    }

    private List<(DateTimeOffset At, Reading Reading)> Of(bool bySensor)
    {
        if (status.Options.Target is null)
        {
            return bySensor
                ? []
                :
                [
                    .. readings
                        .Where(one => one.Particles is not null)
                        .Select(one => (one.At, new Reading(Count(one)))),
                ];
        }

        return
        [
            .. readings
                .Where(one => one.IsBySensor == bySensor)
                .Select(one => (one.At, Reading: status.Options.ContentOf(one)))
                .Where(one => one.Reading is not null)
                .Select(one => (one.At, one.Reading!.Value)),
        ];
    }

    private double Count(CleanupReading reading) =>
        measurand.Equals(Measurands.Particles4) ? reading.Particles!.At4PerMillilitre
        : measurand.Equals(Measurands.Particles6) ? reading.Particles!.At6PerMillilitre
        : reading.Particles!.At14PerMillilitre;

    /// <summary>Readings of the source that is fitted and lie before the fit, such as those of the warming up, are set aside.</summary>
    private IEnumerable<Layer> Marks(List<(DateTimeOffset At, Reading Reading)> all, bool isSensor)
    {
        var isFitted = status.Options.Target is null || status.FollowsSensor == isSensor;
        bool IsAside((DateTimeOffset At, Reading Reading) one) =>
            isFitted && curve.Count > 0 && one.At < curve.FirstReadingAt && !one.Reading.IsCensored;
        var (key, ink, shape) = isSensor
            ? (texts.Say("sensor"), Ink.SkyBlue, MarkerShape.FilledCircle)
            : (
                texts.Say(measurand.Equals(Measurands.WaterContent) ? "titration" : "sample"),
                Ink.Black,
                MarkerShape.FilledSquare
            );
        List<(DateTimeOffset, Reading)> used = [.. all.Where(one => !IsAside(one))];
        List<(DateTimeOffset, Reading)> aside = [.. all.Where(IsAside)];
        var layers = ReadingMarks.Of(page, shown, key, ink, shape, used);
        return aside.Count == 0
            ? layers
            : layers.Concat(
                ReadingMarks.Of(
                    page,
                    shown,
                    texts.Say("{0}: before the fit", key),
                    Ink.Purple,
                    isSensor ? MarkerShape.Eks : MarkerShape.OpenCircleWithEks,
                    aside
                )
            );
    }

    private List<DateTimeOffset> Moments(IReadOnlyList<(DateTimeOffset At, Reading Reading)> all)
    {
        List<DateTimeOffset> moments = [.. all.Select(one => one.At), status.Options.StartedAt, status.AsOf];
        if (status.Arrival is Arrival<DateTimeOffset>.Expected expected)
        {
            // Room for a run three times as long as it has been; beyond it the words have the date.
            var most = status.AsOf.AddHours(Math.Max(6, 2 * (status.AsOf - moments.Min()).TotalHours));
            moments.Add(expected.Latest < most ? expected.Latest : most);
        }

        return moments;
    }

    private IEnumerable<Moment> Marked(TimeAxis time)
    {
        yield return new Moment(
            time.Days(status.AsOf),
            texts.Say("latest {0}", page.Minute(status.AsOf)),
            Ink.Frame,
            Dash.Solid
        );
        if (status.Arrival is Arrival<DateTimeOffset>.Expected expected)
        {
            yield return new Moment(
                time.Days(expected.Estimate),
                texts.Say("expected {0}", page.Minute(expected.Estimate)),
                Ink.Blue,
                Dash.Short
            );
            yield return new Moment(time.Days(expected.Earliest), texts.Say("earliest"), Ink.Blue, Dash.Dots);
            yield return new Moment(time.Days(expected.Latest), texts.Say("at the latest"), Ink.Blue, Dash.Dots);
        }
        else if (status.Arrival is Arrival<DateTimeOffset>.Already already)
        {
            yield return new Moment(
                time.Days(already.At),
                texts.Say("reached {0}", page.Minute(already.At)),
                Ink.Blue,
                Dash.Short
            );
        }
    }

    private List<string> Lines()
    {
        var lines = new List<string>();
        if (status.Options.Target is not null && status.Latest is { } latest)
        {
            lines.Add(texts.Say("{0} at {1}, {2}.", page.Reading(shown, latest), page.Minute(status.AsOf), Phase()));
        }
        else if (status.LatestParticles is { } counts)
        {
            lines.Add(texts.Say("{0} at {1}, {2}.", $"ISO 4406 {counts.Code}", page.Minute(status.AsOf), Phase()));
        }

        if (target is { } asked)
        {
            lines.Add(
                texts.Say(
                    "Target {0}, held for {1} h.",
                    shown.Text(texts, asked),
                    texts.Number(status.Options.HoldFor.TotalHours)
                )
            );
        }

        lines.Add(page.Arrival(status.Arrival));
        if (status.Contradiction is not null)
        {
            lines.Add(texts.Say("Sensor and samples contradict each other."));
        }

        return lines;
    }

    private string Phase() =>
        status.Phase switch
        {
            CleanupPhase.AtTarget => texts.Say("at target"),
            CleanupPhase.Holding => texts.Say("holding"),
            CleanupPhase.Rebounded => texts.Say("back above the target"),
            CleanupPhase.Warming => texts.Say("warming up"),
            CleanupPhase.NoReadings => texts.Say("no readings yet"),
            CleanupPhase.Stalled => texts.Say("stalled"),
            CleanupPhase.FreeWaterLeaving => texts.Say("free water leaving"),
            _ => texts.Say("falling"),
        };
}
