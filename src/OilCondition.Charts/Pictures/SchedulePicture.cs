using OilCondition.Charts.Drawing;
using ScottPlot;

namespace OilCondition.Charts.Pictures;

/// <summary>A schedule, drawn.</summary>
internal sealed class SchedulePicture(
    Page page,
    string title,
    IReadOnlyList<TreatmentDecision.IVisit> visits,
    IReadOnlyList<string> leftOut
)
{
    private readonly ChartTexts texts = page.Texts;

    public Scene Scene()
    {
        if (visits.Count == 0)
        {
            return Drawing.Scene.Nothing(title, texts["schedule.none"], LeftOut());
        }

        var (first, end) = (visits.Min(Begin), visits.Max(visit => visit.DisconnectEnd));

        // A due date months ahead would press the visits together; the words have its slack.
        var latest = end + TimeSpan.FromTicks((end - first).Ticks / 3);
        var moments = visits
            .SelectMany(visit => new[] { Begin(visit), visit.DisconnectEnd, visit.Due })
            .Where(at => at >= first - (end - first) && at <= latest);
        var time = page.Time(moments);
        Boxes Bars(
            string key,
            Ink ink,
            double half,
            Func<TreatmentDecision.IVisit, IEnumerable<(DateTimeOffset From, DateTimeOffset To)>> spans
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
            new RowAxis("", [.. visits.Select(visit => visit.MachineId)], isUpsideDown: true)
        )
        {
            Layers =
            [
                Bars(
                    texts["schedule.travel"],
                    Ink.Frame,
                    0.06,
                    visit => visit.IsRunning ? [] : [(visit.Leave, visit.Arrive)]
                ),
                Bars(
                    texts["schedule.waiting"],
                    Ink.White,
                    0.14,
                    visit =>
                        visit.IsRunning
                            ? [(visit.ProcessEnd, visit.DisconnectStart)]
                            : [(visit.Arrive, visit.ConnectStart), (visit.ProcessEnd, visit.DisconnectStart)]
                ),
                Bars(
                    texts["schedule.connecting"],
                    Ink.SkyBlue,
                    0.22,
                    visit => [(visit.ConnectStart, visit.ProcessStart), (visit.DisconnectStart, visit.DisconnectEnd)]
                ),
                Bars(texts["treatment"], Ink.Blue, 0.3, visit => [(visit.ProcessStart, visit.ProcessEnd)]),
                new Marks(
                    texts["schedule.due"],
                    Ink.Vermilion,
                    MarkerShape.FilledDiamond,
                    [
                        .. visits
                            .Select((visit, row) => new Spot(time.Days(visit.Due), row))
                            .Where(spot => time.Shows(spot.X)),
                    ],
                    11
                ),
            ],
            Levels = [.. visits.Select((visit, row) => new LevelMark(row, Words(visit), Ink.Grey, null))],
        };
    }

    private static DateTimeOffset Begin(TreatmentDecision.IVisit visit) =>
        visit.IsRunning ? visit.ConnectStart : visit.Leave;

    private string Words(TreatmentDecision.IVisit visit) =>
        texts.Say(
            IsLate(visit) ? "schedule.late" : "schedule.to-spare",
            ("date", page.Day(visit.Due)),
            ("hours", page.Sentences.Number(visit.SlackToDue.Duration().TotalHours))
        );

    private static bool IsLate(TreatmentDecision.IVisit visit) => visit.SlackToDue < TimeSpan.Zero;

    private List<string> Lines() =>
        [
            texts.Say(
                "schedule.told",
                ("count", page.Sentences.Number(visits.Count)),
                ("from", page.Minute(visits.Min(Begin))),
                ("to", page.Minute(visits.Max(visit => visit.DisconnectEnd))),
                ("late", page.Sentences.Number(visits.Count(IsLate)))
            ),
            .. LeftOut(),
        ];

    private IReadOnlyList<string> LeftOut() =>
        leftOut.Count == 0 ? [] : [texts.Say("schedule.left-out", ("tasks", string.Join(", ", leftOut)))];
}
