using System.Globalization;
using OilCondition.Statistics;

namespace OilCondition.Benchmarks;

/// <summary>How often the trend assessor sees something in pure scatter, and how often it sees a trend, a step or a wild reading that is there. Fixed seeds.</summary>
public static class TrendFalseAlarms
{
    private static readonly (string Name, Func<Random, int, double[]> Draw)[] Scatters =
    [
        ("normal", (random, n) => Independent(random, n, DecayData.Normal)),
        (
            "rounded to one standard deviation",
            (random, n) => Independent(random, n, r => Math.Round(DecayData.Normal(r)))
        ),
        ("Student, 3 degrees of freedom", (random, n) => Independent(random, n, Heavy)),
        ("skewed (exponential)", (random, n) => Independent(random, n, r => -Math.Log(1 - r.NextDouble()))),
        ("lag-1 correlation 0.3", (random, n) => Correlated(random, n, 0.3)),
        ("lag-1 correlation 0.6", (random, n) => Correlated(random, n, 0.6)),
        ("random walk", RandomWalk),
    ];

    public static void Run(int runs)
    {
        Console.WriteLine("| scatter | n | trend % | interval leaves out 0 % | change % | outlier % |");
        Console.WriteLine("|---|---|---|---|---|---|");
        foreach (var (name, draw) in Scatters)
        {
            foreach (var count in new[] { 5, 6, 8, 12, 24, 48 })
            {
                Nothing(name, draw, count, runs);
            }
        }

        Console.WriteLine();
        Console.WriteLine(
            "| rise over the span, in standard deviations | n | trend found % | slope covered % (nominal 95) |"
        );
        Console.WriteLine("|---|---|---|---|");
        foreach (var rise in new[] { 2.0, 4, 8 })
        {
            foreach (var count in new[] { 6, 8, 12, 24 })
            {
                Rise(rise, count, runs);
            }
        }

        Console.WriteLine();
        Console.WriteLine("| what is there | n | found % | found and right % |");
        Console.WriteLine("|---|---|---|---|");
        foreach (var count in new[] { 8, 12, 24 })
        {
            Step(count, runs);
            Wild(count, runs);
        }
    }

    private static void Nothing(string name, Func<Random, int, double[]> draw, int count, int runs)
    {
        var random = new Random(100 + count);
        int trend = 0;
        int interval = 0;
        int change = 0;
        int outlier = 0;
        var times = Times(count);
        for (var run = 0; run < runs; run++)
        {
            var found = TrendAssessment.Of(times, draw(random, count));
            trend += found.Verdict is TrendVerdict.Rising or TrendVerdict.Falling ? 1 : 0;
            interval += found.SlopeInterval.Contains(0) ? 0 : 1;
            change += found.Changes.Count > 0 ? 1 : 0;
            outlier += found.Outliers.Count > 0 ? 1 : 0;
        }

        Row(
            "| {0} | {1} | {2:F1} | {3:F1} | {4:F1} | {5:F1} |",
            name,
            count,
            Share(trend),
            Share(interval),
            Share(change),
            Share(outlier)
        );
        double Share(int number) => 100.0 * number / runs;
    }

    private static void Rise(double rise, int count, int runs)
    {
        var random = new Random(200 + count);
        int found = 0;
        int covered = 0;
        var times = Times(count);
        for (var run = 0; run < runs; run++)
        {
            var scatter = Independent(random, count, DecayData.Normal);
            var trend = TrendAssessment.Of(times, [.. scatter.Select((s, i) => s + rise * i / (count - 1))]);
            found += trend.Verdict == TrendVerdict.Rising ? 1 : 0;
            covered += trend.SlopeInterval.Contains(rise / (count - 1)) ? 1 : 0;
        }

        Row("| {0} | {1} | {2:F1} | {3:F1} |", rise, count, 100.0 * found / runs, 100.0 * covered / runs);
    }

    private static void Step(int count, int runs)
    {
        var random = new Random(300 + count);
        int found = 0;
        int right = 0;
        var times = Times(count);
        for (var run = 0; run < runs; run++)
        {
            var at = count / 2;
            double[] values =
            [
                .. Independent(random, count, DecayData.Normal)
                    .Select((s, i) => s + (i < at ? 0.8 * i : 0.8 * (i - at)) - (i < at ? 0 : 6)),
            ];
            var trend = TrendAssessment.Of(times, values);
            found += trend.Changes.Count > 0 ? 1 : 0;
            right += trend.Changes.Any(c => c.FirstAfter == at) ? 1 : 0;
        }

        Row(
            "| oil change within a rise, drop of 6 standard deviations and more | {0} | {1:F1} | {2:F1} |",
            count,
            100.0 * found / runs,
            100.0 * right / runs
        );
    }

    private static void Wild(int count, int runs)
    {
        var random = new Random(400 + count);
        int found = 0;
        int right = 0;
        var times = Times(count);
        for (var run = 0; run < runs; run++)
        {
            var values = Independent(random, count, DecayData.Normal);
            var at = random.Next(count);
            for (var i = 0; i < count; i++)
            {
                values[i] += 0.3 * i + (i == at ? 8 : 0);
            }

            var trend = TrendAssessment.Of(times, values);
            found += trend.Outliers.Contains(at) ? 1 : 0;
            right += trend.Outliers.SequenceEqual([at]) && trend.Changes.Count == 0 ? 1 : 0;
        }

        Row(
            "| one wild reading on a rise, 8 standard deviations | {0} | {1:F1} | {2:F1} |",
            count,
            100.0 * found / runs,
            100.0 * right / runs
        );
    }

    private static double[] Times(int count) => [.. Enumerable.Range(0, count).Select(i => (double)i)];

    private static double[] Independent(Random random, int count, Func<Random, double> draw) =>
        [.. Enumerable.Range(0, count).Select(_ => draw(random))];

    private static double[] Correlated(Random random, int count, double correlation)
    {
        var values = new double[count];
        var last = DecayData.Normal(random);
        for (var i = 0; i < count; i++)
        {
            values[i] = last;
            last = correlation * last + Math.Sqrt(1 - correlation * correlation) * DecayData.Normal(random);
        }

        return values;
    }

    private static double[] RandomWalk(Random random, int count)
    {
        double level = 0;
        return [.. Enumerable.Range(0, count).Select(_ => level += DecayData.Normal(random))];
    }

    private static double Heavy(Random random)
    {
        var squares = Enumerable.Range(0, 3).Sum(_ => Math.Pow(DecayData.Normal(random), 2));
        return DecayData.Normal(random) / Math.Sqrt(squares / 3);
    }

    private static void Row(string format, params object[] cells) =>
        Console.WriteLine(string.Format(CultureInfo.InvariantCulture, format, cells));
}
