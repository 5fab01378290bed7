using OilCondition.Statistics;

namespace OilCondition.Benchmarks.Quality;

/// <summary>What happens all at once: seen at the first reading, and is the next sample taken soon?</summary>
public static class JumpRows
{
    private const int Before = 12;

    public static IEnumerable<ScoreRow> Of(int runs) =>
        new[] { 1, 2, 4, 6 }.Select(after => Jump(after, runs)).Concat([Leak(runs), StirredUp(runs)]);

    private static ScoreRow Jump(int after, int runs)
    {
        var random = new Random(100 + after);
        var limits = MonthlyRecords.Alarm(100);
        int silent = 0;
        int withoutAlert = 0;
        int longest = 0;
        int notShortest = 0;
        for (var run = 0; run < runs; run++)
        {
            var history = MonthlyRecords.History(HeldOutProcesses.Jump(random, Before, after));
            var last = Before + after - 1;
            var found = MonthlyRecords.Assess(history, limits, last);
            var days = MonthlyRecords.DaysToNextSample(found, last);
            silent += found.Findings.Count == 0 ? 1 : 0;
            withoutAlert += found.Worst < Severity.Alert ? 1 : 0;
            longest += days >= found.Options.Sampling.Longest.TotalDays - 0.5 ? 1 : 0;
            notShortest += days > found.Options.Sampling.Shortest.TotalDays + 0.5 ? 1 : 0;
        }

        var was = after switch
        {
            1 => "100, 100, 99.6, 99.9",
            2 => "100, 100, 99.4, 99.6",
            4 => "100, 100, 99.9, 100",
            _ => "99.8, 99.8, 32.2, 100",
        };
        return new ScoreRow(
            $"12 readings near 30 (sd 3), then {after} near 75, alarm at 100",
            $"no finding {Share(silent)}, no alert {Share(withoutAlert)}, next sample put off to the longest interval {Share(longest)}, not at the shortest {Share(notShortest)}",
            (after == 1 ? "no finding ≤ 2 %" : "no finding ≤ 2 %, no alert ≤ 2 %")
                + $", longest 0, not shortest 0 (was {was})",
            runs
        );
        string Share(int number) => ScoreRow.Percent(number, runs);
    }

    private static ScoreRow Leak(int runs)
    {
        const int Crossed = 14;
        var random = new Random(120);
        var limits = MonthlyRecords.Alarm(1);
        int atTwelfth = 0;
        int inTime = 0;
        int nextTooLate = 0;
        for (var run = 0; run < runs; run++)
        {
            var history = MonthlyRecords.History(HeldOutProcesses.Leak(random, Crossed));
            var twelfth = MonthlyRecords.Assess(history, limits, 11);
            var alerted = twelfth.Worst >= Severity.Alert;
            atTwelfth += alerted ? 1 : 0;
            inTime +=
                alerted
                || MonthlyRecords.Assess(history, limits, 12).Worst >= Severity.Alert
                || MonthlyRecords.Assess(history, limits, 13).Worst >= Severity.Alert
                    ? 1
                    : 0;
            nextTooLate += MonthlyRecords.DaysToNextSample(twelfth, Crossed) >= 0 ? 1 : 0;
        }

        return new ScoreRow(
            "leak: flat at 30 % of the limit, steep from the 10th of 12 readings on, crossed 3 months after the 12th",
            $"alert at the 12th {Share(atTwelfth)}, alert a month before the crossing {Share(inTime)}, next sample only after the crossing {Share(nextTooLate)}",
            "reported (was 20.6, 53.3, 66.2)",
            runs
        );
        string Share(int number) => ScoreRow.Percent(number, runs);
    }

    private static ScoreRow StirredUp(int runs)
    {
        var random = new Random(130);
        var limits = MonthlyRecords.Alarm(1);
        int finding = 0;
        int life = 0;
        int rising = 0;
        for (var run = 0; run < runs; run++)
        {
            var values = HeldOutProcesses.StirredUp(random, 17);
            var history = MonthlyRecords.History(values);
            var found = Enumerable.Range(12, 5).Select(i => MonthlyRecords.Assess(history, limits, i)).ToList();
            finding += found[0].Findings.Count > 0 ? 1 : 0;
            life += found.Skip(1).Any(MonthlyRecords.HasLifeAlert) ? 1 : 0;
            rising += SeriesTrend.Of(MonthlyRecords.Series(values)).Assessment.Verdict == TrendVerdict.Rising ? 1 : 0;
        }

        return new ScoreRow(
            "a cold tank is stirred up at the 13th reading (90 % of the limit) and settles again",
            $"finding at the 13th {Share(finding)}, life alert while it settles {Share(life)}, still called rising after 4 months {Share(rising)}",
            "reported (was 0, 0, 53.3)",
            runs
        );
        string Share(int number) => ScoreRow.Percent(number, runs);
    }
}
