using System.Globalization;
using OilCondition.Prognosis;

namespace OilCondition.Benchmarks;

/// <summary>How often the nominal 90 % interval of remaining life holds the truth, and how often the limit is crossed before its early end. Fixed seeds.</summary>
public static class LifeCoverage
{
    private static readonly int[] Counts = [7, 10, 16, 36];

    public static void Run(int runs)
    {
        HeldOut(runs);
        Models(runs);
    }

    /// <summary>The default model on data that its prior was not chosen on: other drifts over noise, counts, distances, spacing.</summary>
    private static void HeldOut(int runs)
    {
        Console.WriteLine("default model, held-out data: coverage % (early misses %)");
        Console.WriteLine();
        Console.WriteLine("| data | spacing | limit at | " + string.Join(" | ", Counts.Select(n => $"n = {n}")) + " |");
        Console.WriteLine("|---|---|---|" + string.Concat(Counts.Select(_ => "---|")));
        LifeData[] kinds =
        [
            LifeData.Line(0.15, 0),
            LifeData.Line(0.2, 0),
            LifeData.Line(0.15, 0.3),
            LifeData.Line(0.15, 0.6),
            LifeData.Walk(0.15, 0),
            LifeData.Walk(0.3, 0),
            LifeData.Walk(0.25, 0.1),
            LifeData.Walk(0.1, 0.2),
        ];
        foreach (var kind in kinds)
        {
            foreach (var uneven in new[] { false, true })
            {
                foreach (var far in new[] { 1.4, 2, 3.5 })
                {
                    var cells = Counts.Select(count => Cell(kind, LifeOptions.Default, count, far, uneven, runs));
                    Console.WriteLine(
                        Text(
                            $"| {kind.Name} | {(uneven ? "uneven" : "even")} | {far} span | {string.Join(" | ", cells)} |"
                        )
                    );
                }
            }
        }
    }

    /// <summary>Each model on its own kind of data and on the wrong kind.</summary>
    private static void Models(int runs)
    {
        Console.WriteLine();
        Console.WriteLine("all models, even spacing, limit at 1.6 span, n = 8 / 12 / 24: coverage % (early misses %)");
        Console.WriteLine();
        LifeModel[] models =
        [
            LifeModel.Family,
            LifeModel.RandomWalk,
            LifeModel.LineItself,
            LifeModel.LineNewReading,
            LifeModel.ExponentialGrowth,
            LifeModel.FirstOrderLoss,
        ];
        Console.WriteLine("| data | " + string.Join(" | ", models) + " |");
        Console.WriteLine("|---|" + string.Concat(models.Select(_ => "---|")));
        LifeData[] kinds =
        [
            LifeData.Line(0.1, 0),
            LifeData.Line(0.1, 0.5),
            LifeData.Line(0.1, 0.8),
            LifeData.Walk(0.2, 0),
            LifeData.Walk(0.15, 0.05),
            LifeData.Growth(0.15),
            LifeData.Loss(0.03),
        ];
        foreach (var kind in kinds)
        {
            var cells = models.Select(model =>
                (model == LifeModel.FirstOrderLoss && kind.Side == LimitSide.Upper)
                || (
                    model == LifeModel.ExponentialGrowth
                    && !kind.Name.StartsWith("exp", StringComparison.Ordinal)
                    && !kind.Name.StartsWith("first", StringComparison.Ordinal)
                )
                    ? "-"
                    : string.Join(
                        " / ",
                        new[] { 8, 12, 24 }.Select(count =>
                            Cell(kind, new LifeOptions(model), count, 1.6, uneven: false, runs)
                        )
                    )
            );
            Console.WriteLine($"| {kind.Name} | {string.Join(" | ", cells)} |");
        }
    }

    private static string Cell(LifeData kind, LifeOptions options, int count, double far, bool uneven, int runs)
    {
        var random = new Random(1000 * count + (int)(10 * far) + (uneven ? 7 : 0));
        var inside = 0;
        var early = 0;
        var asked = 0;
        while (asked < runs)
        {
            var times = LifeData.Times(random, count, uneven);
            if (kind.Draw(random, times, far) is not { } drawn)
            {
                continue;
            }

            // A last reading that scatters over the limit is a case of its own, and a value of 0 or less has no logarithm: drawn anew.
            if (
                LifeForecast.Of(
                    LifeData.Series(times, drawn.Values),
                    drawn.Limit,
                    kind.Side,
                    LifeData.Now(times),
                    options
                )
                is not RemainingLife.Forecast life
            )
            {
                continue;
            }

            asked++;
            var chance = life.Crossing.ChanceBefore(LifeData.At(drawn.Crossing));
            early += chance < 0.05 ? 1 : 0;
            inside += chance is >= 0.05 and <= 0.95 ? 1 : 0;
        }

        return Text($"{100.0 * inside / runs:F0} ({100.0 * early / runs:F0})");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
