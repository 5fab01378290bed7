using OilCondition.Charts.Drawing;
using OilCondition.Planning;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>A schedule, drawn.</summary>
internal sealed class SchedulePicture(Page page, string title, UnitSchedule schedule)
{
    private readonly ChartTexts texts = page.Texts;

    public Scene Scene()
    {
        if (schedule.Visits.Count == 0)
        {
            return Drawing.Scene.Nothing(title, texts.Say("No visits."), LeftOut());
        }

        var visits = schedule.Visits;
        var (first, end) = (visits.Min(Begin), visits.Max(visit => visit.DisconnectEnd));

        // A due date months ahead would press the visits together; the words have its slack.
        var latest = end + TimeSpan.FromTicks((end - first).Ticks / 3);
        var moments = visits
            .SelectMany(visit => new[] { Begin(visit), visit.DisconnectEnd, visit.Task.Due })
            .Where(at => at >= first - (end - first) && at <= latest);
        var time = page.Time(moments);
        Boxes Bars(
            string key,
            Ink ink,
            double half,
            Func<UnitVisit, IEnumerable<(DateTimeOffset From, DateTimeOffset To)>> spans
        ) =>
            new(
                key,
                ink,
                [
                    .. visits.SelectMany(
                        (visit, row) =>
                            spans(visit)
                                .Where(span => span.To > span.From)
                                .Select(span => new Stroke(
                                    new Spot(time.Days(span.From), row - half),
                                    new Spot(time.Days(span.To), row + half)
                                ))
                    ),
                ],
                Ink.Black
            );
        return new Scene(
            title,
            Lines(),
            time,
            new RowAxis("", [.. visits.Select(visit => visit.Task.Id)], isUpsideDown: true)
        )
        {
            Layers =
            [
                Bars(
                    texts.Say("travel"),
                    Ink.Frame,
                    0.06,
                    visit => visit.IsRunning ? [] : [(visit.Leave, visit.Arrive)]
                ),
                Bars(
                    texts.Say("waiting"),
                    Ink.White,
                    0.14,
                    visit =>
                        visit.IsRunning
                            ? [(visit.ProcessEnd, visit.DisconnectStart)]
                            : [(visit.Arrive, visit.ConnectStart), (visit.ProcessEnd, visit.DisconnectStart)]
                ),
                Bars(
                    texts.Say("connecting, heating up, disconnecting"),
                    Ink.SkyBlue,
                    0.22,
                    visit => [(visit.ConnectStart, visit.ProcessStart), (visit.DisconnectStart, visit.DisconnectEnd)]
                ),
                Bars(texts.Say("treatment"), Ink.Blue, 0.3, visit => [(visit.ProcessStart, visit.ProcessEnd)]),
                new Marks(
                    texts.Say("due"),
                    Ink.Vermilion,
                    MarkerShape.FilledDiamond,
                    [
                        .. visits
                            .Select((visit, row) => new Spot(time.Days(visit.Task.Due), row))
                            .Where(spot => time.Shows(spot.X)),
                    ],
                    11
                ),
            ],
            Levels = [.. visits.Select((visit, row) => new LevelMark(row, Words(visit), Ink.Grey, null))],
        };
    }

    private static DateTimeOffset Begin(UnitVisit visit) => visit.IsRunning ? visit.ConnectStart : visit.Leave;

    private string Hours(TimeSpan span) => texts.Number(span.TotalHours, Math.Max(span.TotalHours / 100, 0.1));

    private string Words(UnitVisit visit) =>
        visit.Lateness > TimeSpan.Zero
            ? texts.Say("due {0}, {1} h late", page.Day(visit.Task.Due), Hours(visit.Lateness))
            : texts.Say("due {0}, {1} h to spare", page.Day(visit.Task.Due), Hours(visit.SlackToDue));

    private List<string> Lines()
    {
        var late = schedule.Visits.Count(visit => visit.Lateness > TimeSpan.Zero);
        return
        [
            texts.Say(
                "Visits: {0}, from {1} to {2}; late: {3}.",
                texts.Count(schedule.Visits.Count),
                page.Minute(schedule.Visits.Min(Begin)),
                page.Minute(schedule.Visits.Max(visit => visit.DisconnectEnd)),
                texts.Count(late)
            ),
            .. LeftOut(),
        ];
    }

    private IReadOnlyList<string> LeftOut() =>
        schedule.LeftOut.Count == 0
            ? []
            : [texts.Say("Left out: {0}.", string.Join(", ", schedule.LeftOut.Select(task => task.Id)))];
}
