using System.Globalization;

namespace OilCondition.Benchmarks;

/// <summary>Seeded series, many different ones, so that no branch predictor learns a single one by heart.</summary>
public static class DecayData
{
    public const int Series = 256;

    /// <summary>Runs as a sampling plan means them: a fall of 1.5 to 4.5 time constants, scatter of 2 to 5 % of the fall.</summary>
    public static (double[] Times, double[] Values)[] Ordinary(int count)
    {
        var random = new Random(20260401);
        return
        [
            .. Enumerable
                .Range(0, Series)
                .Select(_ =>
                {
                    var timeConstants = 1.5 + 3 * random.NextDouble();
                    var floor = 20 + 200 * random.NextDouble();
                    var amplitude = 200 + 1000 * random.NextDouble();
                    return Draw(random, count, timeConstants, floor, amplitude, 0.02 + 0.03 * random.NextDouble());
                }),
        ];
    }

    /// <summary>Half ordinary, a tenth each nearly linear, flat, rising, wide of the zero, steep; scatter of 2 to 10 % of the size of the fall.</summary>
    public static (double[] Times, double[] Values)[] Mixed(int count)
    {
        var random = new Random(20260402);
        return
        [
            .. Enumerable
                .Range(0, Series)
                .Select(i =>
                {
                    var kind = i % 10;
                    var timeConstants =
                        kind == 5 ? 0.02 + 0.1 * random.NextDouble()
                        : kind == 9 ? 20 + 40 * random.NextDouble()
                        : 1 + 5 * random.NextDouble();
                    var size = 100 + 900 * random.NextDouble();
                    var floor = size * (kind == 8 ? 20 + 80 * random.NextDouble() : 0.02 + 0.9 * random.NextDouble());
                    var amplitude =
                        kind == 6 ? 0
                        : kind == 7 ? -0.9 * Math.Min(size, floor)
                        : size;
                    return Draw(
                        random,
                        count,
                        timeConstants,
                        floor,
                        amplitude,
                        (0.02 + 0.08 * random.NextDouble()) * size / (amplitude != 0 ? Math.Abs(amplitude) : 1)
                    );
                }),
        ];
    }

    public static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    public static void WriteAll(TextWriter writer)
    {
        writer.WriteLine("kind,count,series,time,value");
        foreach (var count in new[] { 12, 50, 200 })
        {
            foreach (var (kind, all) in new[] { ("ordinary", Ordinary(count)), ("mixed", Mixed(count)) })
            {
                for (var s = 0; s < all.Length; s++)
                {
                    for (var i = 0; i < count; i++)
                    {
                        writer.WriteLine(
                            string.Format(
                                CultureInfo.InvariantCulture,
                                "{0},{1},{2},{3:R},{4:R}",
                                kind,
                                count,
                                s,
                                all[s].Times[i],
                                all[s].Values[i]
                            )
                        );
                    }
                }
            }
        }
    }

    private static (double[] Times, double[] Values) Draw(
        Random random,
        int count,
        double timeConstants,
        double floor,
        double amplitude,
        double scatter
    )
    {
        var times = new double[count];
        for (var i = 1; i < count; i++)
        {
            times[i] = times[i - 1] + 0.2 + random.NextDouble();
        }

        var rate = timeConstants / times[^1];
        var sigma = scatter * (amplitude != 0 ? Math.Abs(amplitude) : 1);
        return (times, [.. times.Select(t => floor + amplitude * Math.Exp(-rate * t) + sigma * Normal(random))]);
    }
}
