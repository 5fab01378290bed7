using System.Globalization;
using OilCondition.Statistics;

namespace OilCondition.Benchmarks;

/// <summary>How often nominal 90 % intervals hold the truth: a fall of 1000 to 100 at one per unit of time, target 200 at ln 9. Fixed seeds.</summary>
public static class DecayCoverage
{
    private static readonly double Reached = Math.Log(9);

    public static void Run(int runs)
    {
        Header("noise | bound | time constants | n | rate % | floor % | time to 200 % | no upper end %");
        foreach (var noise in new[] { DecayNoise.Constant, DecayNoise.Proportional, DecayNoise.Logarithmic })
        {
            foreach (var bounded in new[] { false, true })
            {
                foreach (var (span, count) in Plans(6, 8, 12, 24))
                {
                    var random = new Random(1000 * count + (int)(10 * span) + (int)noise);
                    var options = new ExponentialDecayOptions(noise, lowestFloor: bounded ? 0 : null);
                    var tally = Tally(runs, span, count, (_, y) => Scattered(y, noise, random), options);
                    Row(noise, bounded ? "0" : "none", span, count, tally.Text(runs));
                }
            }
        }

        Console.WriteLine();
        Header("robust fit, scatter 30 | time constants | n | rate % | floor % | time to 200 % | no upper end %");
        foreach (var outlier in new[] { 0, 150, 300 })
        {
            foreach (var (span, count) in Plans(8, 12, 24))
            {
                var random = new Random(1000 * count + (int)(10 * span) + outlier);
                var options = new ExponentialDecayOptions(lowestFloor: null, robust: true);
                var wet = 0;
                var tally = Tally(
                    runs,
                    span,
                    count,
                    (i, y) =>
                    {
                        wet = i == 0 ? random.Next(count) : wet;
                        return Scattered(y, DecayNoise.Constant, random) + (i == wet ? outlier : 0);
                    },
                    options
                );
                Row(outlier == 0 ? "no outlier" : $"one reading {outlier} too high", span, count, tally.Text(runs));
            }
        }
    }

    /// <summary>Readings below a limit; slower, hence a mode of its own. The bias is that of the estimates, relative to the truth.</summary>
    public static void RunCensored(int runs)
    {
        Header(
            "noise | n | limit | below the limit % | rate % | floor % | time to target % | bias of rate % | bias of floor | median bias of time %"
        );
        foreach (var noise in new[] { DecayNoise.Constant, DecayNoise.Proportional })
        {
            foreach (var (count, limit, floor, scatter, target) in CensoredPlans)
            {
                Censored(noise, count, limit, floor, scatter, target, runs);
            }
        }
    }

    /// <summary>200 falling to a floor over 5 time constants.</summary>
    private static readonly (int Count, double Limit, double Floor, double Scatter, double Target)[] CensoredPlans =
    [
        (12, 10, 9, 3, 20),
        (12, 10, 5, 3, 20),
        (12, 25, 5, 2, 15),
        (12, 40, 5, 3, 30),
        (24, 25, 5, 2, 15),
    ];

    private static void Censored(
        DecayNoise noise,
        int count,
        double limit,
        double floor,
        double scatter,
        double target,
        int runs
    )
    {
        var random = new Random(1000 * count + (int)limit + (int)noise);
        var truth = Math.Log((200 - floor) / (target - floor));
        double[] times = [.. Enumerable.Range(0, count).Select(i => 5.0 * i / (count - 1))];
        var (rate, level, time, fitted, censored) = (0, 0, 0, 0, 0);
        var (rateBias, floorBias) = (0.0, 0.0);
        var timeBias = new List<double>();
        for (var run = 0; run < runs; run++)
        {
            double[] values =
            [
                .. times.Select(t =>
                {
                    var y = floor + (200 - floor) * Math.Exp(-t);
                    return y + (noise == DecayNoise.Constant ? scatter : 0.1 * y) * DecayData.Normal(random);
                }),
            ];
            bool[] below = [.. values.Select(y => y < limit)];
            var fit = CensoredDecay.Fit(
                times,
                [.. values.Select(y => Math.Max(y, limit))],
                below,
                new ExponentialDecayOptions(noise, lowestFloor: null)
            );
            if (fit.Status is ExponentialDecayStatus.TooFewAboveLimit)
            {
                continue;
            }

            fitted++;
            censored += below.Count(b => b);
            rate += fit.RateInterval(0.9).Contains(1) ? 1 : 0;
            level += fit.FloorInterval(0.9).Contains(floor) ? 1 : 0;
            var reach = fit.Reach(target, 0.9);
            time += Holds(reach, truth) ? 1 : 0;
            rateBias += fit.Rate - 1;
            floorBias += fit.Floor - floor;
            timeBias.Add(reach.HasEstimate ? reach.Estimate / truth - 1 : double.PositiveInfinity);
        }

        timeBias.Sort();
        Row(
            noise,
            count,
            limit,
            Percent(censored, fitted * count),
            Percent(rate, fitted),
            Percent(level, fitted),
            Percent(time, fitted),
            Number(100 * rateBias / fitted),
            Number(floorBias / fitted),
            Number(100 * timeBias[timeBias.Count / 2])
        );
    }

    private static IEnumerable<(double Span, int Count)> Plans(params int[] counts) =>
        new[] { 1.0, 2, 3 }.SelectMany(span => counts.Select(count => (span, count)));

    private static double Scattered(double y, DecayNoise noise, Random random) =>
        noise switch
        {
            DecayNoise.Constant => y + 30 * DecayData.Normal(random),
            DecayNoise.Proportional => y * (1 + 0.05 * DecayData.Normal(random)),
            _ => y * Math.Exp(0.05 * DecayData.Normal(random)),
        };

    private static Covered Tally(
        int runs,
        double span,
        int count,
        Func<int, double, double> read,
        ExponentialDecayOptions options
    )
    {
        double[] times = [.. Enumerable.Range(0, count).Select(i => span * i / (count - 1))];
        var covered = new Covered(0, 0, 0, 0);
        for (var run = 0; run < runs; run++)
        {
            double[] values = [.. times.Select((t, i) => read(i, 100 + 900 * Math.Exp(-t)))];
            var analysis = ExponentialDecay.Analyze(times, values, options);
            var reach = analysis.Reach(200, 0.9);
            covered = new Covered(
                covered.Rate + (analysis.Rate(0.9).Contains(1) ? 1 : 0),
                covered.Floor + (analysis.Floor(0.9).Contains(100) ? 1 : 0),
                covered.Time + (Holds(reach, Reached) ? 1 : 0),
                covered.Open + (reach.HasUpper ? 0 : 1)
            );
        }

        return covered;
    }

    private static bool Holds(TimeToValueInterval reach, double truth) =>
        reach.HasLower && reach.Lower <= truth && (!reach.HasUpper || truth <= reach.Upper);

    private static void Header(string columns)
    {
        Console.WriteLine($"| {columns} |");
        Console.WriteLine("|" + string.Concat(Enumerable.Repeat("---|", columns.Split('|').Length)));
    }

    private static void Row(params object[] cells) =>
        Console.WriteLine(
            "| " + string.Join(" | ", cells.Select(cell => Convert.ToString(cell, CultureInfo.InvariantCulture))) + " |"
        );

    private static string Percent(int part, int whole) => Number(100.0 * part / whole);

    private static string Number(double value) => value.ToString("F1", CultureInfo.InvariantCulture);

    private readonly record struct Covered(int Rate, int Floor, int Time, int Open)
    {
        public string Text(int runs) =>
            string.Join(" | ", Percent(Rate, runs), Percent(Floor, runs), Percent(Time, runs), Percent(Open, runs));
    }
}
