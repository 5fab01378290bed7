using OilCondition.Prognosis;

namespace OilCondition.Benchmarks.Quality;

/// <summary>Forecasts on courses that bend, on lines, walks and on nothing at all; the default model, no advice to it.</summary>
public static class ForecastRows
{
    public static IEnumerable<ScoreRow> Of(int runs)
    {
        yield return Course(
            "growth e^(2u)",
            u => Math.Exp(2 * u),
            12,
            0.05,
            ofValue: false,
            "≥ 80 % held, ≤ 12 % before (was 0, 100)",
            runs
        );
        yield return Course(
            "growth e^(2u)",
            u => Math.Exp(2 * u),
            12,
            0.05,
            ofValue: true,
            "≥ 80 % held, ≤ 12 % before (was 0, 100)",
            runs
        );
        yield return Course(
            "u²",
            u => u * u,
            24,
            0.054,
            ofValue: false,
            "≥ 85 % held, ≤ 10 % before (was 18, 82)",
            runs
        );
        yield return Course(
            "slowing growth 1 − e^(−1.5u)",
            u => 1 - Math.Exp(-1.5 * u),
            24,
            0.05,
            ofValue: false,
            "≥ 85 % held (was 46, 0)",
            runs
        );
        foreach (var count in new[] { 12, 24, 48 })
        {
            yield return Course(
                "growth e^(3.3u)",
                u => Math.Exp(3.3 * u),
                count,
                0.01,
                ofValue: false,
                "reported; read exactly",
                runs
            );
        }

        foreach (var count in new[] { 6, 12, 24 })
        {
            yield return Course(
                "runaway u/(1.7 − u)",
                u => u / (1.7 - u),
                count,
                0.02,
                ofValue: false,
                "reported; without end at 1.7 spans",
                runs
            );
        }

        foreach (var (count, mustBe) in new[] { (8, "≤ 12 % (was 35.7)"), (12, "≤ 8 % (was 28.4)") })
        {
            yield return Nothing(count, mustBe, runs);
        }

        foreach (
            var (noise, count, was) in new[]
            {
                (0.1, 8, "1.38 (was 99.6, 0.1)"),
                (0.1, 12, "1.48 (was 99.9, 0)"),
                (0.1, 24, "0.97 (was 99.9, 0)"),
                (0.2, 8, "5.32 (was 98, 0.1)"),
                (0.2, 12, "6.12 (was 99.1, 0)"),
                (0.2, 24, "2.16 (was 99.4, 0)"),
            }
        )
        {
            yield return Known(LifeData.Line(noise, 0), count, 1.6, $"88 to 97 % held, width ≤ {was}", runs);
        }

        yield return Diluted(runs);
        foreach (
            var (kind, count, was) in new[]
            {
                (LifeData.Walk(0.15, 0), 8, "87.1, 7.4, 0.37"),
                (LifeData.Walk(0.15, 0), 12, "86.8, 7.9, 0.37"),
                (LifeData.Walk(0.15, 0), 24, "86.7, 7.1, 0.35"),
                (LifeData.Walk(0.3, 0), 8, "87.9, 8.7, 0.90"),
                (LifeData.Walk(0.3, 0), 12, "88.1, 9.3, 0.89"),
                (LifeData.Walk(0.3, 0), 24, "87.4, 9.5, 0.88"),
                (LifeData.Line(0.1, 0.5), 8, "93.8, 1.8, 0.69"),
                (LifeData.Line(0.1, 0.5), 12, "98.6, 0.2, 0.86"),
                (LifeData.Line(0.1, 0.5), 24, "98.8, 0.1, 1.17"),
                (LifeData.Line(0.2, 0.5), 8, "93.2, 1.6, 1.72"),
                (LifeData.Line(0.2, 0.5), 12, "96.7, 0.2, 2.53"),
                (LifeData.Line(0.2, 0.5), 24, "96.8, 0.1, 3.91"),
            }
        )
        {
            yield return Known(kind, count, 1.4, $"reported (was {was})", runs);
        }
    }

    private static ScoreRow Course(
        string name,
        Func<double, double> mean,
        int count,
        double noise,
        bool ofValue,
        string mustBe,
        int runs
    )
    {
        const double Far = 1.4;
        var random = new Random(300 + count);
        var tally = new ForecastTally();
        while (tally.Asked < runs)
        {
            var values = HeldOutProcesses.Course(random, count, mean, noise, ofValue);
            if (Life(values, mean(Far)) is RemainingLife.Forecast life)
            {
                tally.Add(life, MonthlyRecords.At(Far * (count - 1)));
            }
        }

        return new ScoreRow(
            $"{name}, {count} readings, limit at {Far} spans, noise {ScoreRow.Percent(noise)} of the {(ofValue ? "value" : "rise")}",
            tally.Shares,
            mustBe,
            runs
        );
    }

    private static ScoreRow Diluted(int runs)
    {
        const int Count = 14;
        var random = new Random(450);
        var tally = new ForecastTally();
        while (tally.Asked < runs)
        {
            var (values, crossing) = HeldOutProcesses.Diluted(random, Count);
            if (Life(values, 1) is RemainingLife.Forecast life)
            {
                tally.Add(life, MonthlyRecords.At(crossing));
            }
        }

        return new ScoreRow(
            "a steady rise that make-up of a tenth of the fill sets back every fourth month, none recorded, 14 readings",
            tally.Shares,
            "reported (was 98, 0)",
            runs
        );
    }

    private static ScoreRow Nothing(int count, string mustBe, int runs)
    {
        const double Limit = 3;
        var random = new Random(400 + count);
        var asked = 0;
        double sum = 0;
        while (asked < runs)
        {
            if (Life(HeldOutProcesses.White(random, count), Limit) is RemainingLife.Forecast life)
            {
                asked++;
                sum += life.Crossing.ChanceBefore(MonthlyRecords.At(count - 1).AddDays(180));
            }
        }

        return new ScoreRow(
            $"nothing; white scatter, limit 3 sd away, {count} readings",
            $"stated chance within 180 days {100 * sum / asked:F1} %, the mean",
            mustBe,
            asked
        );
    }

    private static RemainingLife Life(double[] values, double limit) =>
        LifeForecast.Of(MonthlyRecords.Series(values), limit, LimitSide.Upper, MonthlyRecords.At(values.Length - 1));

    /// <summary>The data of the coverage benchmark; series whose last reading is beyond the limit are drawn anew.</summary>
    private static ScoreRow Known(LifeData kind, int count, double far, string mustBe, int runs)
    {
        var random = new Random(500 + count);
        var times = LifeData.Times(random, count, uneven: false);
        var tally = new ForecastTally();
        while (tally.Asked < runs)
        {
            if (
                kind.Draw(random, times, far) is { } drawn
                && LifeForecast.Of(LifeData.Series(times, drawn.Values), drawn.Limit, kind.Side, LifeData.Now(times))
                    is RemainingLife.Forecast life
            )
            {
                tally.Add(life, LifeData.At(drawn.Crossing));
            }
        }

        return new ScoreRow(
            $"{kind.Name}, {count} readings, limit at {far} spans",
            $"{tally.Shares}; median width {tally.MedianWidth(LifeData.SpanDays)}",
            mustBe,
            runs
        );
    }
}
