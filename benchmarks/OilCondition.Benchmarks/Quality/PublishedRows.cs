using OilCondition.Prognosis;

namespace OilCondition.Benchmarks.Quality;

/// <summary>Cracks that others measured, replayed: after five to nine readings, when is each greater length reached?</summary>
public static class PublishedRows
{
    private static readonly double[] Lengths = [1.15, 1.25, 1.35, 1.6];

    public static IEnumerable<ScoreRow> Of()
    {
        var tally = new ForecastTally();
        int due = 0;
        int missed = 0;
        foreach (var path in PublishedPaths.Cracks())
        {
            for (var seen = 5; seen <= 9; seen++)
            {
                foreach (var length in Lengths)
                {
                    if (path[seen - 1] >= length || PublishedPaths.Crossing(path, length) is not { } month)
                    {
                        continue;
                    }

                    var last = seen - 1;
                    var history = MonthlyRecords.History(path[..seen]);
                    var series = history.SampleSeries(
                        MonthlyRecords.Invented,
                        MonthlyRecords.At(0),
                        MonthlyRecords.At(last)
                    );
                    var life = LifeForecast.Of(series, length, LimitSide.Upper, MonthlyRecords.At(last));
                    tally.Add((RemainingLife.Forecast)life, MonthlyRecords.At(month));
                    if ((month - last) * MonthlyRecords.MonthDays <= 180)
                    {
                        due++;
                        var found = MonthlyRecords.Assess(history, MonthlyRecords.Alarm(length), last);
                        missed += found.Worst < Severity.Alert ? 1 : 0;
                    }
                }
            }
        }

        yield return new ScoreRow(
            "fatigue cracks of 21 test units (Lu and Meeker 1993), after 5 to 9 readings, to 1.15, 1.25, 1.35 and 1.6 in",
            $"{tally.Shares} ({tally.Held} and {tally.Early} of {tally.Asked})",
            "≥ 75 % held, ≤ 15 % before (was 23.7, 76.3)",
            tally.Asked
        );
        yield return new ScoreRow(
            "the same where the length is reached within 180 days",
            $"no alert yet {ScoreRow.Percent(missed, due)}",
            "reported (was 22.1)",
            due
        );
    }
}
