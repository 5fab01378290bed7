using System.Globalization;

namespace OilCondition.Benchmarks;

/// <summary>Seeded series, many different ones, so that no branch predictor learns a single one by heart.</summary>
public static class DecayData
{
    public const int Series = 256;

    public static (double[] Times, double[] Values)[] Of(int count)
    {
        var random = new Random(20260401);
        return
        [
            .. Enumerable
                .Range(0, Series)
                .Select(_ =>
                {
                    var times = new double[count];
                    for (var i = 1; i < count; i++)
                    {
                        times[i] = times[i - 1] + 0.2 + random.NextDouble();
                    }

                    var rate = (1.5 + 3 * random.NextDouble()) / times[^1];
                    var floor = 20 + 200 * random.NextDouble();
                    var amplitude = 200 + 1000 * random.NextDouble();
                    var scatter = (0.02 + 0.03 * random.NextDouble()) * amplitude;
                    return (
                        times,
                        times.Select(t => floor + amplitude * Math.Exp(-rate * t) + scatter * Normal(random)).ToArray()
                    );
                }),
        ];
    }

    public static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    public static void WriteAll(TextWriter writer)
    {
        writer.WriteLine("count,series,time,value");
        foreach (var count in new[] { 12, 50, 200 })
        {
            var all = Of(count);
            for (var s = 0; s < all.Length; s++)
            {
                for (var i = 0; i < count; i++)
                {
                    writer.WriteLine(
                        string.Format(
                            CultureInfo.InvariantCulture,
                            "{0},{1},{2:R},{3:R}",
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
