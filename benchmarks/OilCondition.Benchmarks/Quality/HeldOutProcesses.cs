namespace OilCondition.Benchmarks.Quality;

/// <summary>
/// Invented processes for the scorecard: monthly readings of which the truth is known. Never choose a constant of the library on them: they are
/// held out, and a figure that was tuned to them proves nothing. Their own sizes were fixed once, on the code of the day, and stay.
/// </summary>
public static class HeldOutProcesses
{
    /// <summary>Readings of one standard deviation about 0 that know nothing of one another.</summary>
    public static double[] White(Random random, int count) => Correlated(random, count, 0);

    /// <summary>Readings of one standard deviation about 0 with a lag-1 correlation.</summary>
    public static double[] Correlated(Random random, int count, double correlation)
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

    /// <summary>A rise over all readings, in standard deviations of white scatter.</summary>
    public static double[] Rise(Random random, int count, double rise) =>
        Added(White(random, count), i => rise * i / (count - 1));

    /// <summary>Flat for three quarters, then a rise over the last one.</summary>
    public static double[] LateRise(Random random, int count, double rise)
    {
        var from = 3 * count / 4;
        return Added(White(random, count), i => rise * Math.Max(0, i - from) / (count - 1 - from));
    }

    /// <summary>A step that stays, from one reading on.</summary>
    public static double[] Step(Random random, int count, int from, double size) =>
        Added(White(random, count), i => i >= from ? size : 0);

    /// <summary>Readings near 30, then all at once near 75, where the alarm is at 100.</summary>
    public static double[] Jump(Random random, int before, int after) =>
        Added(White(random, before + after), i => i < before ? 30 : 75, scatter: 3);

    /// <summary>A line with an annual cycle of random phase; all in parts of the limit.</summary>
    public static double[] Seasonal(
        Random random,
        int count,
        double from,
        double perMonth,
        double amplitude,
        double scatter
    )
    {
        var phase = 2 * Math.PI * random.NextDouble();
        return Added(White(random, count), i => Season(i, from, perMonth, amplitude, phase), scatter);
    }

    /// <summary>
    /// Two years from 0.40 to 0.86 of the limit with an annual cycle; phases in which the limit is not crossed within 180 days, and readings beyond
    /// it, are drawn anew.
    /// </summary>
    public static double[] SeasonalRise(Random random, double amplitude)
    {
        const double From = 0.4;
        const double PerMonth = 0.46 / 23;
        while (true)
        {
            var phase = 2 * Math.PI * random.NextDouble();
            var values = Added(White(random, 24), i => Season(i, From, PerMonth, amplitude, phase), scatter: 0.01);
            var crosses = Enumerable.Range(1, 59).Any(i => Season(23 + 0.1 * i, From, PerMonth, amplitude, phase) > 1);
            if (crosses && Array.TrueForAll(values, value => value <= 1))
            {
                return values;
            }
        }
    }

    private static double Season(double month, double from, double perMonth, double amplitude, double phase) =>
        (from + perMonth * month) * (1 + amplitude * Math.Sin(2 * Math.PI * month / 12 + phase));

    /// <summary>Ten bottles on each of three dates, with a rise over the span in standard deviations.</summary>
    public static (double[] Times, double[] Values) Bottles(Random random, double rise)
    {
        double[] times = [.. Enumerable.Range(0, 30).Select(i => (double)(i / 10))];
        return (times, Added(White(random, 30), i => rise * times[i] / 2));
    }

    /// <summary>Flat at 0.3 of the limit, steep from the tenth reading on, so that the limit is crossed three months after the twelfth.</summary>
    public static double[] Leak(Random random, int count) =>
        Added(White(random, count), i => 0.3 + 0.7 * Math.Max(0, i - 8) / 6, scatter: 0.02);

    /// <summary>A cold tank is stirred up after the twelfth reading: what had settled reads 0.9 of the limit, and settles again in a few months.</summary>
    public static double[] StirredUp(Random random, int count) =>
        Added(White(random, count), i => 0.3 + (i < 12 ? 0 : 0.6 * Math.Exp(-(i - 12) / 1.5)), scatter: 0.02);

    /// <summary>A rise of one limit in 18 months, diluted by a tenth of the fill every fourth month, which nobody recorded.</summary>
    public static (double[] Values, double Crossing) Diluted(Random random, int count)
    {
        const double PerMonth = 1.0 / 18;
        var levels = new List<double> { 0 };
        while (levels.Count < count || levels[^1] < 1)
        {
            levels.Add((levels.Count % 4 == 0 ? 0.9 : 1) * levels[^1] + PerMonth);
        }

        var after = levels.FindIndex(level => level >= 1);
        var crossing = after - (levels[after] - 1) / (levels[after] - levels[after - 1]);
        return (Added(White(random, count), i => levels[i], scatter: 0.02), crossing);
    }

    /// <summary>A course over one span, u from 0 to 1, with scatter as a part of the rise or of the value itself.</summary>
    public static double[] Course(Random random, int count, Func<double, double> mean, double noise, bool ofValue)
    {
        var rise = mean(1) - mean(0);
        return
        [
            .. White(random, count)
                .Select(
                    (one, i) =>
                    {
                        var value = mean(i / (count - 1.0));
                        return value + noise * (ofValue ? value : rise) * one;
                    }
                ),
        ];
    }

    /// <summary>Values about a mean; the scatter is in the unit of the values.</summary>
    public static double[] Added(double[] scattered, Func<int, double> mean, double scatter = 1) =>
        [.. scattered.Select((one, i) => mean(i) + scatter * one)];
}
