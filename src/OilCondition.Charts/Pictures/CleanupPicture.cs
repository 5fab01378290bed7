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
        shown = new Shown(texts, measurand);
    }

    private bool IsLogarithmic => measurand.Scale == NaturalScale.Logarithmic;

    public Scene Scene()
    {
        var samples = Of(bySensor: false);
        var sensor = Of(bySensor: true);
        if (samples.Count + sensor.Count == 0)
        {
            return Drawing.Scene.Nothing(title, texts["readings.none"]);
        }

        var time = page.Time(Moments([.. samples, .. sensor]));
        var curves = CurveLayers.Of(page, shown.From, curve, time, status.Confidence).ToList();
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
        return new Scene(
            title,
            Lines(),
            time,
            NumberAxis.Around(shown.Label, values, IsLogarithmic, texts, isFromZero: !IsLogarithmic)
        )
        {
            Layers = layers,
            Levels = target is { } asked
                ?
                [
                    new LevelMark(
                        shown.From(asked),
                        texts.Say("cleanup.target", ("target", shown.Text(asked))),
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
            ? (texts["mark.sensor"], Ink.SkyBlue, MarkerShape.FilledCircle)
            : (
                texts[measurand.Equals(Measurands.WaterContent) ? "mark.titration" : "mark.sample"],
                Ink.Black,
                MarkerShape.FilledSquare
            );
        List<(DateTimeOffset, Reading)> used = [.. all.Where(one => !IsAside(one))];
        List<(DateTimeOffset, Reading)> aside = [.. all.Where(IsAside)];
        var layers = ReadingMarks.Of(page, shown.From, key, ink, shape, used);
        return aside.Count == 0
            ? layers
            : layers.Concat(
                ReadingMarks.Of(
                    page,
                    shown.From,
                    texts.Say("mark.before-fit", ("what", key)),
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
            texts.Say("cleanup.latest", ("at", page.Minute(status.AsOf))),
            Ink.Frame,
            Dash.Solid
        );
        if (status.Arrival is Arrival<DateTimeOffset>.Expected expected)
        {
            yield return new Moment(
                time.Days(expected.Estimate),
                texts.Say("cleanup.expected", ("at", page.Minute(expected.Estimate))),
                Ink.Blue,
                Dash.Short
            );
            yield return new Moment(time.Days(expected.Earliest), texts["cleanup.earliest"], Ink.Blue, Dash.Dots);
            yield return new Moment(time.Days(expected.Latest), texts["cleanup.at-the-latest"], Ink.Blue, Dash.Dots);
        }
        else if (status.Arrival is Arrival<DateTimeOffset>.Already already)
        {
            yield return new Moment(
                time.Days(already.At),
                texts.Say("cleanup.reached", ("at", page.Minute(already.At))),
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
            lines.Add(Told(shown.Text(latest)));
        }
        else if (status.LatestParticles is { } counts)
        {
            lines.Add(Told($"ISO 4406 {counts.Code}"));
        }

        if (target is { } asked)
        {
            lines.Add(
                texts.Say(
                    "cleanup.told-target",
                    ("target", shown.Text(asked)),
                    ("hours", page.Sentences.Number(status.Options.HoldFor.TotalHours))
                )
            );
        }

        lines.Add(page.Arrival(status.Arrival));
        if (status.Contradiction is not null)
        {
            lines.Add(texts["cleanup.contradiction"]);
        }

        return lines;
    }

    private string Told(string reading) =>
        texts.Say(
            "cleanup.told",
            ("reading", reading),
            ("at", page.Minute(status.AsOf)),
            (
                "phase",
                texts[
                    status.Phase switch
                    {
                        CleanupPhase.AtTarget => "phase.at-target",
                        CleanupPhase.Holding => "phase.holding",
                        CleanupPhase.Rebounded => "phase.rebounded",
                        CleanupPhase.Warming => "phase.warming",
                        CleanupPhase.NoReadings => "phase.no-readings",
                        CleanupPhase.Stalled => "phase.stalled",
                        CleanupPhase.FreeWater => "phase.free-water",
                        _ => "phase.falling",
                    }
                ]
            )
        );
}
