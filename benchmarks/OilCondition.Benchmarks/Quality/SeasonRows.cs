namespace OilCondition.Benchmarks.Quality;

/// <summary>An annual cycle of 15 % of the level, rising and flat.</summary>
public static class SeasonRows
{
    private const double Amplitude = 0.15;

    public static IEnumerable<ScoreRow> Of(int runs) => [Rising(runs), Flat(runs)];

    private static ScoreRow Rising(int runs)
    {
        var random = new Random(600);
        var limits = MonthlyRecords.Alarm(1);
        var alerts = Enumerable
            .Range(0, runs)
            .Count(_ =>
                MonthlyRecords.HasLifeAlert(
                    MonthlyRecords.Assess(
                        MonthlyRecords.History(HeldOutProcesses.SeasonalRise(random, Amplitude)),
                        limits,
                        23
                    )
                )
            );
        return new ScoreRow(
            "annual cycle of 15 % on a line from 40 to 86 % of the limit in 24 months, crossed within 180 days",
            $"life alert {ScoreRow.Percent(alerts, runs)}",
            "≥ 85 % (was 0)",
            runs
        );
    }

    private static ScoreRow Flat(int runs)
    {
        var random = new Random(610);
        var limits = MonthlyRecords.Alarm(1);
        var alarmed = 0;
        for (var run = 0; run < runs; run++)
        {
            var history = MonthlyRecords.History(HeldOutProcesses.Seasonal(random, 36, 0.7, 0, Amplitude, 0.05));
            alarmed += Enumerable
                .Range(5, 31)
                .Any(month => MonthlyRecords.HasLifeAlert(MonthlyRecords.Assess(history, limits, month)))
                ? 1
                : 0;
        }

        return new ScoreRow(
            "annual cycle of 15 %, flat at 70 % of the limit, 36 months, looked at every month",
            $"machines with a life alert {ScoreRow.Percent(alarmed, runs)}",
            "≤ 5 % (was 38.4)",
            runs
        );
    }
}
