using OilCondition.Charts.Drawing;
using OilCondition.Prognosis;

namespace OilCondition.Charts.Pictures;

/// <summary>The trend of one measurand, drawn.</summary>
internal sealed class TrendPicture
{
    private readonly ConditionAssessment assessment;
    private readonly MeasurandState state;
    private readonly Page page;
    private readonly ChartTexts texts;
    private readonly Shown shown;
    private readonly DateTimeOffset now;
    private readonly DateTimeOffset from;
    private readonly TrendReadings readings;

    public TrendPicture(ConditionAssessment assessment, MeasurandState state, Page page, DateTimeOffset? from)
    {
        this.assessment = assessment;
        this.state = state;
        this.page = page;
        texts = page.Texts;
        shown = new Shown(texts, state.Measurand);
        now = assessment.Options.AsOf;
        this.from = from ?? (assessment.History.TryFirstRecord(out var first) ? first : now);
        readings = new TrendReadings(assessment, state, this.from);
    }

    private bool IsLogarithmic => state.Measurand.Scale == NaturalScale.Logarithmic;

    public Scene Scene()
    {
        var machine = Page.Machine(assessment.History.Machine);
        var title = texts.Say("title.of", ("whose", machine), ("what", shown.Name));
        if (!readings.Moments.Any())
        {
            return Drawing.Scene.Nothing(title, texts["readings.none"]);
        }

        var life = First();
        var time = page.Time(Shown(life));
        var line = TrendLine.Of(page, shown, state.Trend, from);
        var fan = ForecastFan.Of(page, shown, state.Trend, life, line, time);
        var moments = new TrendMoments(page, time, assessment, life, from);
        List<Layer> marks = [.. readings.Layers(page, shown)];
        var figures = LimitFigure.Of(state);
        return new Scene(
            title,
            Lines(figures),
            time,
            TrendHeight.Of(
                shown.Label,
                [
                    .. marks.OfType<Marks>().SelectMany(layer => layer.Spots).Select(spot => spot.Y),
                    .. line?.Spots.Select(spot => spot.Y) ?? [],
                    .. fan is null ? [] : new[] { fan.Limit },
                ],
                figures.Select(figure => shown.From(figure.Value)),
                IsLogarithmic,
                texts
            )
        )
        {
            Layers =
            [
                moments.Treatments,
                .. fan?.Layers ?? [],
                .. marks,
                .. line is null ? [] : new Layer[] { line },
                .. moments.Keys,
            ],
            Levels = [.. figures.Select(figure => figure.Level(texts, shown))],
            Moments = moments.Lines,
        };
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

    /// <summary>What the time axis must show: a forecast for ten years at least where the date to plan with lies in them.</summary>
    private List<DateTimeOffset> Shown(RemainingLife? life)
    {
        List<DateTimeOffset> all =
        [
            now,
            .. readings.Moments,
            .. assessment.History.Events.Where(one => one.At >= from && one.At <= now).Select(one => one.At),
        ];
        if (life is not null)
        {
            var behind = Math.Max(30, (now - all.Min()).TotalDays);
            var most = now.AddDays(
                Math.Max(LifeDates.MostAhead * behind, Math.Min(3652, 1.4 * (Earliest(life) - now).TotalDays))
            );
            var end = life is RemainingLife.Crosses crosses ? crosses.P90 : Earliest(life).AddDays(behind);
            all.Add(end < most ? end : most);
        }

        return all;
    }

    private List<string> Lines(IReadOnlyList<LimitFigure> figures)
    {
        var trend = ("trend", page.Sentences.Of(state));
        var lines = new List<string>
        {
            state.Latest is { } latest
                ? texts.Say(
                    "trend.told",
                    ("reading", shown.Text(latest.Reading)),
                    ("date", page.Day(latest.At)),
                    ("state", page.Sentences.Of(state.Worst.State)),
                    trend
                )
                : texts.Say("trend.no-reading", trend),
        };
        lines.AddRange(
            state.Lives.Select(life =>
            {
                bool IsIts(LimitFigure figure) => figure.Side == life.Side && figure.Value == life.Limit;
                var isAlarm = figures.Any(figure => figure.IsAlarm && IsIts(figure));
                return LifeWords.Of(page, shown, life, isAlarm ? "life.alarm" : "life.alert");
            })
        );
        lines.AddRange(readings.Notes(texts, IsLogarithmic));
        return lines;
    }
}
