using OilCondition.Prognosis;

namespace OilCondition.Benchmarks.Quality;

/// <summary>Damage that others measured, replayed: after five to nine readings, when is each greater figure reached?</summary>
public static class PublishedRows
{
    private const int Fewest = 5;
    private const int Most = 9;

    public static IEnumerable<ScoreRow> Of() =>
        [
            .. Rows(
                "fatigue cracks of 21 test units (Lu and Meeker 1993), after 5 to 9 readings, to 1.15, 1.25, 1.35 and 1.6 in",
                PublishedPaths.Cracks(),
                [1.15, 1.25, 1.35, 1.6],
                "≥ 75 % held, ≤ 15 % before (was 23.7, 76.3)",
                "reported (was 22.1)"
            ),
            .. Rows(
                "operating current of 15 lasers (Meeker and Escobar 1998), after 5 to 9 readings, to 4, 5, 6 and 8 %",
                PublishedPaths.Lasers(),
                [4, 5, 6, 8],
                "reported; not looked at before the family was fixed",
                "reported"
            ),
        ];

    private static IEnumerable<ScoreRow> Rows(
        string what,
        IReadOnlyList<double[]> paths,
        double[] figures,
        string mustHold,
        string mustAlert
    )
    {
        var tally = new ForecastTally();
        int due = 0;
        int missed = 0;
        foreach (var path in paths)
        {
            for (var last = Fewest - 1; last < Most; last++)
            {
                foreach (var figure in figures)
                {
                    if (path[last] >= figure || PublishedPaths.Crossing(path, figure) is not { } month)
                    {
                        continue;
                    }

                    var history = MonthlyRecords.History(path[..(last + 1)]);
                    var series = history.SampleSeries(
                        MonthlyRecords.Invented,
                        MonthlyRecords.At(0),
                        MonthlyRecords.At(last)
                    );
                    var life = LifeForecast.Of(series, figure, LimitSide.Upper, MonthlyRecords.At(last));
                    tally.Add((RemainingLife.Forecast)life, MonthlyRecords.At(month));
                    if ((month - last) * MonthlyRecords.MonthDays <= 180)
                    {
                        due++;
                        var found = MonthlyRecords.Assess(history, MonthlyRecords.Alarm(figure), last);
                        missed += found.Worst < Severity.Alert ? 1 : 0;
                    }
                }
            }
        }

        yield return new ScoreRow(
            what,
            $"{tally.Shares} ({tally.Held} and {tally.Early} of {tally.Asked})",
            mustHold,
            tally.Asked
        );
        yield return new ScoreRow(
            "the same where the figure is reached within 180 days",
            $"no alert yet {ScoreRow.Percent(missed, due)}",
            mustAlert,
            due
        );
    }
}
