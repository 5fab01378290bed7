using OilCondition.Prognosis;
using OilCondition.Statistics;
using UnitsNet;

namespace OilCondition.Benchmarks;

/// <summary>Invented series whose crossing is known: the mean moves 0 to 1 over 400 days, the limit lies at a multiple of that.</summary>
public sealed record LifeData(string Name, LimitSide Side, Func<Random, double[], double, LifeData.Drawn?> Draw)
{
    public const double SpanDays = 400;

    private static readonly DateTimeOffset Start = new(2025, 1, 6, 8, 0, 0, TimeSpan.Zero);

    private static readonly Measurand Invented = new(
        "invented",
        "invented measurand",
        "units",
        LimitSide.Upper,
        NaturalScale.Linear,
        -1e9,
        1e9
    );

    private static readonly Machine Machine = new(
        "M1",
        "invented machine",
        new Oil("invented oil", new Dictionary<Measurand, Reading>()),
        Volume.FromLiters(1000),
        Temperature.FromDegreesCelsius(60),
        Temperature.FromDegreesCelsius(20)
    );

    /// <summary>Values at the times, the limit, and when it is crossed; times in units of the span.</summary>
    public sealed record Drawn(double[] Values, double Limit, double Crossing);

    public static LifeData Line(double noise, double correlation) =>
        new(
            correlation == 0
                ? $"line, noise {noise:P0}"
                : $"line, noise {noise:P0} with lag-1 correlation {correlation}",
            LimitSide.Upper,
            (random, times, far) =>
            {
                var e = noise * DecayData.Normal(random);
                var values = new double[times.Length];
                for (var i = 0; i < times.Length; i++)
                {
                    values[i] = times[i] + e;
                    e = correlation * e + noise * Math.Sqrt(1 - correlation * correlation) * DecayData.Normal(random);
                }

                return new Drawn(values, far, far);
            }
        );

    public static LifeData Walk(double randomWalk, double noise) =>
        new(
            noise == 0 ? $"random walk {randomWalk:P0}" : $"random walk {randomWalk:P0}, noise {noise:P0}",
            LimitSide.Upper,
            (random, times, far) =>
            {
                var values = new double[times.Length];
                double state = 0;
                for (var i = 0; i < times.Length; i++)
                {
                    if (i > 0)
                    {
                        var step = times[i] - times[i - 1];
                        var next = state + step + randomWalk * Math.Sqrt(step) * DecayData.Normal(random);

                        // A path that touched the limit between two readings (Brownian bridge) has been crossed: drawn anew.
                        var touched = Math.Exp(-2 * (far - state) * (far - next) / (randomWalk * randomWalk * step));
                        if (next >= far || touched > random.NextDouble())
                        {
                            return null;
                        }

                        state = next;
                    }

                    values[i] = state + noise * DecayData.Normal(random);
                }

                return new Drawn(values, far, times[^1] + InverseGaussian(random, far - state, randomWalk));
            }
        );

    public static LifeData Growth(double noise) =>
        new(
            $"exponential growth, noise {noise:P0} of the value",
            LimitSide.Upper,
            (random, times, far) =>
                new Drawn(
                    [.. times.Select(t => Math.Exp(2 * t + noise * DecayData.Normal(random)))],
                    Math.Exp(2 * far),
                    far
                )
        );

    public static LifeData Loss(double noise) =>
        new(
            $"first-order loss, noise {noise:P0} of new",
            LimitSide.Lower,
            (random, times, far) =>
                new Drawn([.. times.Select(t => Math.Exp(-t) + noise * DecayData.Normal(random))], Math.Exp(-far), far)
        );

    public static MeasurandSeries Series(double[] times, double[] values)
    {
        var samples = times.Select(
            (t, i) =>
                new OilSample(
                    $"S{i}",
                    Start.AddDays(SpanDays * t),
                    new Dictionary<Measurand, Reading> { [Invented] = new(values[i]) }
                )
        );
        return OilHistory.Create(Machine, samples, [], []).SampleSeries(Invented, Start, Now(times));
    }

    public static DateTimeOffset Now(double[] times) => Start.AddDays(SpanDays * times[^1]);

    public static DateTimeOffset At(double time) => Start.AddDays(SpanDays * Math.Min(time, 1e4));

    /// <summary>Equal spacing, or samples taken up to a third of an interval early or late with every fifth forgotten.</summary>
    public static double[] Times(Random random, int count, bool uneven)
    {
        var times = new double[count];
        double at = 0;
        for (var i = 0; i < count; i++)
        {
            times[i] = uneven ? at + 0.66 * (random.NextDouble() - 0.5) : at;
            at += uneven && random.NextDouble() < 0.2 ? 2 : 1;
        }

        var (first, last) = (times[0], times[^1]);
        return [.. times.Select(t => (t - first) / (last - first))];
    }

    /// <summary>First passage with drift 1 (Michael, Schucany and Haas 1976).</summary>
    private static double InverseGaussian(Random random, double distance, double randomWalk)
    {
        var shape = distance * distance / (randomWalk * randomWalk);
        var z = DecayData.Normal(random);
        var y = distance * z * z / (2 * shape);
        var small = distance * (1 + y - Math.Sqrt(2 * y + y * y));
        return random.NextDouble() <= distance / (distance + small) ? small : distance * distance / small;
    }
}
