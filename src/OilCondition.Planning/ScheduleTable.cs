using System.Globalization;
using System.Text;
using OilCondition.Text;

namespace OilCondition.Planning;

/// <summary>A schedule as a plain table of at most 100 columns.</summary>
internal static class ScheduleTable
{
    private const int MostName = 16;

    public static string Of(UnitSchedule schedule)
    {
        var name = Math.Clamp(
            schedule.Visits.Select(visit => visit.Task.Id.Length).DefaultIfEmpty(0).Max(),
            7,
            MostName
        );
        var text = new StringBuilder();
        text.Append(
            CultureInfo.InvariantCulture,
            $"{schedule.Problem.Unit.Name} from {PlainText.Time(schedule.Problem.Grid.Moment(0))} (UTC{schedule.Problem.Grid.Moment(0):zzz}), free after {PlainText.Number(schedule.UnitHours.TotalHours)} h\n"
        );
        text.Append(
            CultureInfo.InvariantCulture,
            $"    {Cut("machine", name)}  travel  connect      treat        treated      free         to due   waits\n"
        );
        var row = 0;
        foreach (var visit in schedule.Visits)
        {
            var travel = visit.IsRunning ? "now" : $"{PlainText.Number((visit.Arrive - visit.Leave).TotalHours)} h";
            text.Append(
                $"{++row, 3} {Cut(visit.Task.Id, name)}  {travel, 6}  {Moment(visit.ConnectStart)}  {Moment(visit.ProcessStart)}  {Moment(visit.ProcessEnd)}  {Moment(visit.DisconnectEnd)}  {Whole(visit.SlackToDue), 6}   {Waits(visit)}".TrimEnd()
            );
            text.Append('\n');
        }

        foreach (var task in schedule.LeftOut)
        {
            text.Append(CultureInfo.InvariantCulture, $"  - {Cut(task.Id, name)}  left out\n");
        }

        return text.ToString().TrimEnd('\n');
    }

    private static string Cut(string text, int width) =>
        text.Length > width ? text[..(width - 1)] + "…" : text.PadRight(width);

    private static string Moment(DateTimeOffset at) => at.ToString("MM-dd HH:mm", CultureInfo.InvariantCulture);

    private static string Whole(TimeSpan slack) =>
        slack.TotalHours is > -10 and < 10
            ? slack.TotalHours.ToString("0.#", CultureInfo.InvariantCulture)
            : Math.Round(slack.TotalHours).ToString("0", CultureInfo.InvariantCulture);

    /// <summary>At most nine columns: hours and a letter, before connecting and after the treatment.</summary>
    private static string Waits(UnitVisit visit)
    {
        var before = visit.WaitBefore > TimeSpan.Zero ? $"{Whole(visit.WaitBefore)}{Letter(visit.WaitFor)}" : "";
        var after = visit.WaitAfter > TimeSpan.Zero ? $"{Whole(visit.WaitAfter)}c" : "";
        return before.Length > 0 && after.Length > 0 ? $"{before} {after}" : before + after;
    }

    private static string Letter(WaitReason reason) =>
        reason switch
        {
            WaitReason.EarliestStart => "e",
            WaitReason.Window => "w",
            WaitReason.Crew => "c",
            WaitReason.Unit => "u",
            _ => "",
        };
}
