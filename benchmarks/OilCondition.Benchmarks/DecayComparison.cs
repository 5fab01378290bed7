using System.Diagnostics;
using System.Globalization;
using OilCondition.Statistics;

namespace OilCondition.Benchmarks;

/// <summary>Time per fit beside the peer, taken in turns in one process so that other load meets both, and whose optimum is the better one.</summary>
public static class DecayComparison
{
    private const int Rounds = 15;
    private const int Calibrations = 9;
    private static readonly TimeSpan LongEnough = TimeSpan.FromMilliseconds(10);

    public static void Run()
    {
        // Small matrices gain nothing from threads, and here they would compete with the other load of the machine.
        MathNet.Numerics.Control.UseSingleThread();
        Console.WriteLine(
            "| series | n | ours µs | with three intervals | columns, wall µs | peer free µs | ratio | wrong | peer bounded µs | ratio | wrong | ours wrong |"
        );
        Console.WriteLine("|---|---|---|---|---|---|---|---|---|---|---|---|");
        foreach (
            var (kind, draw) in new[]
            {
                ("ordinary", (Func<int, (double[], double[])[]>)DecayData.Ordinary),
                ("mixed", DecayData.Mixed),
            }
        )
        {
            foreach (var count in new[] { 12, 50, 200 })
            {
                Row(kind, count, draw(count));
            }
        }
    }

    private static void Row(string kind, int count, (double[] Times, double[] Values)[] series)
    {
        MathNetDecay[] peers = [.. series.Select(s => new MathNetDecay(s.Times, s.Values))];
        var unbounded = new ExponentialDecayOptions(lowestFloor: null);
        double[] own = [.. series.Select(s => ExponentialDecay.Fit(s.Times, s.Values).ResidualSumOfSquares)];
        double[] ownFree =
        [
            .. series.Select(s => ExponentialDecay.Fit(s.Times, s.Values, unbounded).ResidualSumOfSquares),
        ];
        int[] offsets = [.. Enumerable.Range(0, 16 * series.Length + 1).Select(i => i * count)];
        double[] times = [.. Enumerable.Repeat(series, 16).SelectMany(all => all.SelectMany(s => s.Times))];
        double[] values = [.. Enumerable.Repeat(series, 16).SelectMany(all => all.SelectMany(s => s.Values))];
        Action[] work =
        [
            () => Each(series, s => ExponentialDecay.Fit(s.Times, s.Values)),
            () =>
                Each(
                    series,
                    s =>
                    {
                        var analysis = ExponentialDecay.Analyze(s.Times, s.Values);
                        analysis.Rate(0.9);
                        analysis.Floor(0.9);
                        analysis.TimeTo(300, 0.9);
                    }
                ),
            () => Each(peers, p => p.Fit(bounded: false)),
            () => Each(peers, p => p.Fit(bounded: true)),
            () => ExponentialDecay.FitColumns(offsets, times, values),
        ];
        var spent = Interleaved(work, [series.Length, series.Length, peers.Length, peers.Length, 16 * series.Length]);
        var free = peers.Select((p, i) => Wrong(p, p.Fit(bounded: false), ownFree[i])).Count(wrong => wrong);
        var bound = peers.Select((p, i) => Wrong(p, p.Fit(bounded: true), own[i])).Count(wrong => wrong);
        var ours = peers
            .Select((p, i) => p.Fit(bounded: true) is { } at && own[i] > 1.001 * p.Squares(at) + 1e-9)
            .Count(wrong => wrong);
        Console.WriteLine(
            string.Format(
                CultureInfo.InvariantCulture,
                "| {0} | {1} | {2:F2} | {3:F1} ({4:F1} fits) | {5:F2} | {6:F1} | {7:F0} | {8} | {9:F1} | {10:F0} | {11} | {12} |",
                kind,
                count,
                spent[0],
                spent[1],
                spent[1] / spent[0],
                spent[4],
                spent[2],
                spent[2] / spent[0],
                free,
                spent[3],
                spent[3] / spent[0],
                bound,
                ours
            )
        );
    }

    /// <summary>Gave up, or ended more than 0.1 % above our residual sum of squares.</summary>
    private static bool Wrong(
        MathNetDecay peer,
        MathNet.Numerics.LinearAlgebra.Vector<double>? point,
        double residualSumOfSquares
    ) => point is null || !(peer.Squares(point) <= 1.001 * residualSumOfSquares + 1e-9);

    private static void Each<T, TResult>(T[] all, Func<T, TResult> work)
    {
        foreach (var one in all)
        {
            work(one);
        }
    }

    private static void Each<T>(T[] all, Action<T> work)
    {
        foreach (var one in all)
        {
            work(one);
        }
    }

    /// <summary>
    /// Median microseconds of processor time per operation; every round runs all of the work, one after the other, each for about as long,
    /// so that other load takes its share of all alike. The last one is of wall time: it is the one that uses several cores.
    /// </summary>
    private static double[] Interleaved(Action[] work, int[] operations)
    {
        var rounds = work.Select(_ => new List<double>()).ToArray();
        var repeats = work.Select(_ => 1).ToArray();
        for (var round = -Calibrations; round < Rounds; round++)
        {
            for (var i = 0; i < work.Length; i++)
            {
                var (processor, wall) = (Environment.CpuUsage.TotalTime, Stopwatch.GetTimestamp());
                for (var repeat = 0; repeat < repeats[i]; repeat++)
                {
                    work[i]();
                }

                var spent =
                    i == work.Length - 1 ? Stopwatch.GetElapsedTime(wall) : Environment.CpuUsage.TotalTime - processor;
                if (round >= 0)
                {
                    rounds[i].Add(spent.TotalMicroseconds / repeats[i] / operations[i]);
                }
                else if (spent < LongEnough)
                {
                    repeats[i] *= 2;
                }
            }
        }

        return [.. rounds.Select(all => all.Order().ElementAt(all.Count / 2))];
    }
}
