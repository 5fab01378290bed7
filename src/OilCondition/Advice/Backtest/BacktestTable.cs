using System.Globalization;
using OilCondition.Text;

namespace OilCondition;

/// <summary>A backtest as plain text: what was replayed, then alerts, limits crossed and forecasts, a line a subject.</summary>
internal static class BacktestTable
{
    public static string Of(Backtest backtest)
    {
        var options = backtest.Options;
        var subjects = backtest.Subjects.Append(backtest.Total).ToList();
        var lines = new List<string>
        {
            $"Backtest of {Whole(backtest.MachineCount)} machines, {PlainText.Date(options.From)} to {PlainText.Date(options.To)}: "
                + $"{Whole(backtest.DayCount)} days, {PlainText.Tenths(backtest.MachineYears)} machine-years",
        };
        if (backtest.NotReplayed.Count > 0)
        {
            lines.AddRange(
                PlainText.Wrap($"Without a record in the range: {string.Join(", ", backtest.NotReplayed)}", "")
            );
        }

        lines.Add("");
        lines.AddRange(
            Rows(
                ["alerts", "raised", "a year", "confirmed", "not", "acted on", "undecided", "not judged"],
                subjects.Where(one => one.Raised > 0 || one == backtest.Total),
                one =>
                    [
                        one.Subject,
                        Whole(one.Raised),
                        one.RaisedPerMachineYear is { } rate ? PlainText.Number(rate) : "-",
                        one.Confirmed.ToString(),
                        Whole(one.NotConfirmed),
                        Whole(one.ActedOn),
                        Whole(one.Undecided),
                        Whole(one.NotJudged),
                    ]
            )
        );
        lines.Add("");
        lines.AddRange(
            Rows(
                ["limits crossed", "crossed", "silent", "median warning", "begun beyond"],
                subjects.Where(one => one.Silent.Count > 0 || one.BegunBeyond > 0 || one == backtest.Total),
                one =>
                    [
                        one.Subject,
                        Whole(one.Silent.Count),
                        one.Silent.ToString(),
                        Days(one.MedianWarning?.TotalDays),
                        Whole(one.BegunBeyond),
                    ]
            )
        );
        lines.Add("");
        lines.AddRange(
            Rows(
                ["forecasts, crossed", "in 5 to 95 % (90 %)", "before (5 %)", "after (5 %)", "width", "score"],
                subjects.Where(one => one.Held.Count > 0 || one == backtest.Total),
                one =>
                    [
                        one.Subject,
                        one.Held.ToString(),
                        Percent(one.CrossedBefore.Share),
                        Percent(one.CrossedAfter.Share),
                        Days(one.MedianWidth?.TotalDays),
                        Days(one.IntervalScoreDays),
                    ]
            )
        );
        lines.Add("");
        lines.AddRange(
            Rows(
                ["forecasts, chances", "not crossed", "chance by then", "within horizon: foretold", "came"],
                subjects.Where(one =>
                    one.RunningPastInterval.Count > 0 || one.CameWithinHorizon.Count > 0 || one == backtest.Total
                ),
                one =>
                    [
                        one.Subject,
                        Whole(one.RunningPastInterval.Count),
                        Percent(one.RunningChance),
                        one.CameWithinHorizon.Count == 0
                            ? "-"
                            : one.ForetoldWithinHorizon.ToString("0.##", CultureInfo.InvariantCulture),
                        one.CameWithinHorizon.ToString(),
                    ]
            )
        );
        return string.Join("\n", lines);
    }

    private static IEnumerable<string> Rows(
        string[] head,
        IEnumerable<BacktestFigures> subjects,
        Func<BacktestFigures, string[]> cells
    )
    {
        var rows = subjects.Select(cells).Prepend(head).ToList();
        var widths = head.Select((_, column) => rows.Max(row => row[column].Length)).ToList();
        return rows.Select(row => string.Join("  ", row.Select((cell, i) => cell.PadRight(widths[i]))).TrimEnd());
    }

    private static string Whole(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Days(double? days) => days is { } one ? $"{PlainText.Number(Math.Round(one))} d" : "-";

    private static string Percent(double? share) => share is { } one ? $"{BacktestShare.Percent(one)} %" : "-";
}
