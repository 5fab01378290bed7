using System.Globalization;
using OilCondition.Statistics;

namespace OilCondition.Benchmarks;

/// <summary>How often nominal 90 % intervals hold the truth: 1000 to 100 at one per unit of time, target 200 at ln 9. Fixed seeds.</summary>
public static class DecayCoverage
{
    public static void Run(int runs)
    {
        Console.WriteLine("| noise | bound | time constants | n | rate % | floor % | time to 200 % | no upper end % |");
        Console.WriteLine("|---|---|---|---|---|---|---|---|");
        foreach (var noise in new[] { DecayNoise.Constant, DecayNoise.Proportional, DecayNoise.Logarithmic })
        {
            foreach (var bounded in new[] { false, true })
            {
                foreach (var span in new[] { 1.0, 2, 3 })
                {
                    foreach (var count in new[] { 6, 8, 12, 24 })
                    {
                        Cell(noise, bounded, span, count, runs);
                    }
                }
            }
        }
    }

    private static void Cell(DecayNoise noise, bool bounded, double span, int count, int runs)
    {
        var random = new Random(1000 * count + (int)(10 * span) + (int)noise);
        var options = new ExponentialDecayOptions(noise, lowestFloor: bounded ? 0 : null);
        int rate = 0;
        int floor = 0;
        int time = 0;
        int open = 0;
        var truth = Math.Log(9);
        double[] times = [.. Enumerable.Range(0, count).Select(i => span * i / (count - 1))];
        for (var run = 0; run < runs; run++)
        {
            double[] values =
            [
                .. times.Select(t =>
                {
                    var y = 100 + 900 * Math.Exp(-t);
                    var z = DecayData.Normal(random);
                    return noise switch
                    {
                        DecayNoise.Constant => y + 30 * z,
                        DecayNoise.Proportional => y * (1 + 0.05 * z),
                        _ => y * Math.Exp(0.05 * z),
                    };
                }),
            ];
            var analysis = ExponentialDecay.Analyze(times, values, options);
            rate += analysis.Rate(0.9).Contains(1) ? 1 : 0;
            floor += analysis.Floor(0.9).Contains(100) ? 1 : 0;
            var reach = analysis.TimeTo(200, 0.9);
            time += reach.HasLower && reach.Lower <= truth && (!reach.HasUpper || truth <= reach.Upper) ? 1 : 0;
            open += reach.HasUpper ? 0 : 1;
        }

        Console.WriteLine(
            string.Format(
                CultureInfo.InvariantCulture,
                "| {0} | {1} | {2} | {3} | {4:F1} | {5:F1} | {6:F1} | {7:F1} |",
                noise,
                bounded ? "0" : "none",
                span,
                count,
                100.0 * rate / runs,
                100.0 * floor / runs,
                100.0 * time / runs,
                100.0 * open / runs
            )
        );
    }
}
