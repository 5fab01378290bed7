using OilCondition.Charts.Drawing;
using OilCondition.Prognosis;

namespace OilCondition.Charts.Pictures;

/// <summary>What happened and what will, on the time axis of a trend: now, dates of the forecast, oil changes, top-ups, treatments.</summary>
internal sealed class TrendMoments
{
    private readonly Page page;
    private readonly TimeAxis time;
    private readonly List<Moment> moments = [];
    private readonly List<Layer> keys = [];

    public TrendMoments(
        Page page,
        TimeAxis time,
        ConditionAssessment assessment,
        RemainingLife? life,
        DateTimeOffset from
    )
    {
        this.page = page;
        this.time = time;
        var (texts, now) = (page.Texts, assessment.Options.AsOf);
        moments.Add(
            new Moment(time.Days(now), texts.Say("moment.now", ("date", page.Day(now))), Ink.Frame, Dash.Solid)
        );
        if (life is RemainingLife.Forecast forecast)
        {
            foreach (var (chance, at) in LifeDates.Of(forecast))
            {
                Add(at, LifeDates.Words(page, chance, at), Ink.Blue, Dash.Dots);
            }

            keys.Add(LifeDates.Key(page));
        }

        var events = assessment.History.Events.Where(one => one.At <= now).ToList();
        var seen = events.Where(one => one.At >= from).ToList();
        Add(seen.OfType<OilChange>(), texts["moment.oil-change"], Ink.Green, Dash.Long);
        Add(seen.OfType<TopUp>(), texts["moment.top-up"], Ink.SkyBlue, Dash.Dots);
        Treatments = Stretches(events.OfType<TreatmentRun>(), now);
    }

    /// <summary>Lines over the whole height, the most important first.</summary>
    public IReadOnlyList<Moment> Lines => moments;

    /// <summary>What the key says of the lines.</summary>
    public IReadOnlyList<Layer> Keys => keys;

    /// <summary>The stretches of treatments.</summary>
    public Boxes Treatments { get; }

    private void Add(DateTimeOffset at, string words, Ink ink, Dash dash)
    {
        if (time.Shows(time.Days(at)))
        {
            moments.Add(new Moment(time.Days(at), words, ink, dash));
        }
    }

    /// <summary>Events of a kind, the latest first.</summary>
    private void Add(IEnumerable<OilEvent> events, string words, Ink ink, Dash dash)
    {
        var before = moments.Count;
        foreach (var one in events.Reverse())
        {
            Add(one.At, words, ink, dash);
        }

        if (moments.Count > before)
        {
            keys.Add(new Strokes(words, ink, dash, []));
        }
    }

    private Boxes Stretches(IEnumerable<TreatmentRun> runs, DateTimeOffset now)
    {
        // A run of hours on an axis of years is still to be seen.
        var least = (time.To - time.From) / 300;
        return new Boxes(
            page.Texts["treatment"],
            Ink.PaleGrey,
            [
                .. runs.Select(run =>
                        (
                            From: Math.Max(time.From, time.Days(run.At)),
                            To: time.Days(run.EndedAt is { } end && end < now ? end : now)
                        )
                    )
                    .Where(stretch => stretch.To >= time.From)
                    .Select(stretch => new Stroke(
                        new Spot(stretch.From, double.MinValue),
                        new Spot(Math.Max(stretch.To, stretch.From + least), double.MaxValue)
                    )),
            ]
        );
    }
}
