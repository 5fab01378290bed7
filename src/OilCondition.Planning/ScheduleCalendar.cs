using System.Globalization;
using System.Text;

namespace OilCondition.Planning;

/// <summary>A schedule as a calendar of letters: one line a machine, days across.</summary>
internal static class ScheduleCalendar
{
    private const int LettersADay = 4;
    private const int DaysABlock = 20;
    private const int NameWidth = 16;

    public static string Of(UnitSchedule schedule)
    {
        if (schedule.Visits.Count == 0)
        {
            return "no visits";
        }

        var problem = schedule.Problem;
        var start = problem.Grid.Moment(0);
        var first = new DateTimeOffset(start.Date, start.Offset);
        var last = schedule.Visits[^1].DisconnectEnd;
        var days = (int)Math.Ceiling((last - first).TotalDays);
        var text = new StringBuilder();
        for (var day = 0; day < days; day += DaysABlock)
        {
            var shown = Math.Min(DaysABlock, days - day);
            var dates = string.Concat(
                Enumerable
                    .Range(day, shown)
                    .Select(i => first.AddDays(i).ToString("dd", CultureInfo.InvariantCulture).PadRight(LettersADay))
            );
            text.Append(' ', NameWidth).Append(dates.TrimEnd()).Append('\n');
            foreach (var visit in schedule.Visits)
            {
                var name = visit.Task.Id.Length < NameWidth ? visit.Task.Id : visit.Task.Id[..(NameWidth - 2)] + "…";
                text.Append(name.PadRight(NameWidth));
                for (var i = 0; i < shown * LettersADay; i++)
                {
                    var from = first.AddHours((day * LettersADay + i) * 24.0 / LettersADay);
                    text.Append(Letter(schedule, visit, from, from.AddHours(24.0 / LettersADay)));
                }

                text.Append('\n');
            }

            text.Append('\n');
        }

        text.Append("six hours a letter: t travel, c connected, P treatment, w waiting, - closed, x unit unavailable");
        return text.ToString();
    }

    /// <summary>What takes most of the six hours in words of the plan; the treatment wins where it shares them.</summary>
    private static char Letter(UnitSchedule schedule, UnitVisit visit, DateTimeOffset from, DateTimeOffset to)
    {
        bool Meets(DateTimeOffset begin, DateTimeOffset end) => begin < to && end > from;
        if (Meets(visit.ProcessStart, visit.ProcessEnd))
        {
            return 'P';
        }

        if (Meets(visit.ConnectStart, visit.ProcessStart) || Meets(visit.ProcessEnd, visit.DisconnectEnd))
        {
            return 'c';
        }

        if (!visit.IsRunning && Meets(visit.Leave, visit.Arrive))
        {
            return 't';
        }

        if (!visit.IsRunning && Meets(visit.Arrive, visit.ConnectStart))
        {
            return 'w';
        }

        if (visit.Task.Windows.Count > 0 && !visit.Task.Windows.Any(window => Meets(window.From, window.To)))
        {
            return '-';
        }

        var unit = schedule.Problem.Unit;
        return
            unit.Unavailable.Any(window => window.From <= from && window.To >= to)
            || to <= unit.HiredFrom
            || from >= unit.HiredUntil
            ? 'x'
            : '.';
    }
}
