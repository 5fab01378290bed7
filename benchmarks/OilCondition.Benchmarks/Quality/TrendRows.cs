using OilCondition.Statistics;

namespace OilCondition.Benchmarks.Quality;

/// <summary>Verdicts on what moves and on what does not, at the default 5 %.</summary>
public static class TrendRows
{
    public static IEnumerable<ScoreRow> Of(int runs)
    {
        yield return Seen(
            "rise of 4.8 sd in the last quarter of 36 readings",
            random => Of(HeldOutProcesses.LateRise(random, 36, 4.8)),
            "seen as rising",
            Rises,
            "≥ 75 % (was 30; 75 without the search for steps)",
            runs
        );
        yield return Seen(
            "step of 4.5 sd upwards at three quarters of 36 readings",
            random => Of(HeldOutProcesses.Step(random, 36, 27, 4.5)),
            "seen as rising",
            Rises,
            "reported (was 4; 69 without the search for steps)",
            runs
        );
        yield return Seen(
            "the same",
            random => Of(HeldOutProcesses.Step(random, 36, 27, 4.5)),
            "seen as a step or as rising",
            found => Rises(found) || found.Changes.Count > 0,
            "≥ 90 % (was 99.7)",
            runs
        );
        foreach (var (count, was) in new[] { (12, "24.5"), (24, "15.8"), (40, "10.9") })
        {
            yield return Seen(
                $"nothing; lag-1 correlation 0.6, {count} readings",
                random => Of(HeldOutProcesses.Correlated(random, count, 0.6)),
                "false trend",
                Moves,
                $"≤ 8 % (was {was})",
                runs
            );
        }

        foreach (var (count, was) in new[] { (12, "5.7"), (24, "5.9"), (40, "6") })
        {
            yield return Seen(
                $"nothing; white scatter, {count} readings",
                random => Of(HeldOutProcesses.White(random, count)),
                "false trend",
                Moves,
                $"≤ 8 % (was {was})",
                runs
            );
        }

        yield return Seen(
            "rise of 2 sd over 24 readings, white scatter",
            random => Of(HeldOutProcesses.Rise(random, 24, 2)),
            "seen as rising",
            Rises,
            "≥ 65 % (was 75.8)",
            runs
        );
        yield return Seen(
            "10 bottles on each of 3 dates, rise of 2 sd over the span",
            random =>
            {
                var (times, values) = HeldOutProcesses.Bottles(random, 2);
                return TrendAssessment.Of(times, values);
            },
            "seen as rising",
            Rises,
            "≥ 90 % (was 39; 99 by the line alone)",
            runs
        );
    }

    private static ScoreRow Seen(
        string plant,
        Func<Random, TrendAssessment> judged,
        string what,
        Func<TrendAssessment, bool> isSeen,
        string mustBe,
        int runs
    )
    {
        var random = new Random(200);
        var seen = Enumerable.Range(0, runs).Count(_ => isSeen(judged(random)));
        return new ScoreRow(plant, $"{what} {ScoreRow.Percent(seen, runs)}", mustBe, runs);
    }

    private static TrendAssessment Of(double[] values) =>
        TrendAssessment.Of([.. Enumerable.Range(0, values.Length).Select(i => (double)i)], values);

    private static bool Rises(TrendAssessment found) => found.Verdict == TrendVerdict.Rising;

    private static bool Moves(TrendAssessment found) => found.Verdict is TrendVerdict.Rising or TrendVerdict.Falling;
}
