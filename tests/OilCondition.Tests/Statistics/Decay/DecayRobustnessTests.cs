using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>Odd series of every kind: the answer is the global optimum, within the bounds, and never an exception.</summary>
public class DecayRobustnessTests
{
    private const int Series = 10_000;

    [Fact]
    public void None_of_ten_thousand_series_is_above_the_optimum_of_a_dense_grid()
    {
        var random = new Random(20260411);
        var worst = 0.0;
        for (var run = 0; run < Series; run++)
        {
            var (times, values) = Draw(random, run % 6);
            var fit = ExponentialDecay.Fit(times, values);
            fit.Status.ShouldNotBe(ExponentialDecayStatus.TooFewReadings);
            fit.Floor.ShouldBeGreaterThanOrEqualTo(0);
            fit.Rate.ShouldBeGreaterThan(0);
            fit.RateStandardError.ShouldBeGreaterThanOrEqualTo(0);
            double.IsFinite(fit.FloorStandardError + fit.StartStandardError + fit.RateStandardError).ShouldBeTrue();

            // Each reported curve has the RSS that is reported.
            var own = Squares(times, values, fit.Start, fit.Floor, fit.Rate);
            fit.ResidualSumOfSquares.ShouldBe(own, 1e-7 * own + 1e-9);
            worst = Math.Max(worst, own / Grid(times, values) - 1);
        }

        worst.ShouldBeLessThan(1e-3);
    }

    [Theory]
    [InlineData(
        "between two octaves: two readings close together at the start",
        new[] { 0.297, 0.325, 3.095, 5.329 },
        new[] { 1036.12, 963.69, 128.88, 76.91 }
    )]
    [InlineData(
        "between two octaves: steep, the early readings tell everything",
        new[] { 0.002, 0.032, 2.958, 5.417, 8.203, 11.274 },
        new[] { 1005.27, 922.01, 181.73, 140.69, 113.68, 123.48 }
    )]
    [InlineData(
        "between two octaves: steep, ten readings at the floor",
        new[] { 0.204, 0.233, 3.113, 5.481, 8.243, 11.339, 14.88, 18.767, 22.642, 27.206, 31.763, 36.534 },
        new[] { 1001.82, 923.94, 118.43, 77.79, 72.52, 71.7, 71.73, 74.88, 72.69, 74.24, 75.46, 70.88 }
    )]
    [InlineData(
        "behind the kink: free floor, found at the bound",
        new[] { 0, 1.051, 2.278, 2.915, 3.989, 5.291 },
        new[] { 925.06, 825.47, 569.85, 499.77, 367.9, 265.25 }
    )]
    [InlineData(
        "behind the kink: free floor, four readings",
        new[] { 0.0, 1, 2, 3 },
        new[] { 971.91, 746.61, 491.84, 318.63 }
    )]
    [InlineData(
        "before the kink: at the bound, found with a free floor",
        new[] { 0, 0.905, 1.471, 2.81, 3.723, 4.901 },
        new[] { 920.62, 804.92, 643.24, 430.15, 310.8, 199.33 }
    )]
    public void A_minimum_that_a_scan_of_octaves_steps_over_is_found(string what, double[] times, double[] values)
    {
        double[] since = [.. times.Select(t => t - times[0])];
        var fit = ExponentialDecay.Fit(since, values);
        (
            Squares(since, values, fit.Start, fit.Floor, fit.Rate) / Grid(since, values, points: 4000) - 1
        ).ShouldBeLessThan(1e-6, what);
    }

    [Fact]
    public void None_of_few_or_steep_readings_is_above_the_optimum_of_a_dense_grid()
    {
        // Falls of 6 to 120 time constants, or four to six readings; some with two readings close together at the start.
        var random = new Random(20260413);
        for (var run = 0; run < 4000; run++)
        {
            var few = run % 2 == 0;
            var count = few ? random.Next(4, 7) : random.Next(5, 25);
            var times = Enumerable.Range(0, count).Select(i => Math.Pow(i, 1.5)).ToArray();
            times[1] *= run % 3 == 0 ? 0.03 : 0.5 + 0.5 * random.NextDouble();
            var rate = (few ? 1 + 5 * random.NextDouble() : 6 * Math.Pow(20, random.NextDouble())) / times[^1];
            var floor = 20 + 480 * random.NextDouble();
            var noise = 20 + 80 * random.NextDouble();
            double[] values =
            [
                .. times.Select(t =>
                    floor + (1000 - floor) * Math.Exp(-rate * t) + noise * DecayNoiseSource.Normal(random)
                ),
            ];
            var fit = ExponentialDecay.Fit(times, values);
            var own = Squares(times, values, fit.Start, fit.Floor, fit.Rate);
            own.ShouldBeLessThan(1.001 * Grid(times, values, points: 1000) + 1e-6, $"run {run}");
        }
    }

    [Fact]
    public void Each_optimum_inside_its_limits_satisfies_the_normal_equations()
    {
        // Second route: at the least of squares the residuals are at right angles to every derivative of the curve.
        var random = new Random(20260412);
        var (worstLevel, worstRate, tried) = (0.0, 0.0, 0);
        for (var run = 0; run < 6000; run++)
        {
            var (times, values) = Draw(random, run % 2 == 0 ? 0 : 4);
            var fit = ExponentialDecay.Fit(times, values);
            if (fit.Status is not (ExponentialDecayStatus.Determined or ExponentialDecayStatus.AtFloorBound))
            {
                continue;
            }

            tried++;
            var atBound = fit.Status == ExponentialDecayStatus.AtFloorBound;
            double[] e = [.. times.Select(t => Math.Exp(-fit.Rate * t))];
            double[] residuals =
            [
                .. values.Select((y, i) => (y - fit.Floor - (fit.Start - fit.Floor) * e[i]) / (fit.Start - fit.Floor)),
            ];
            double[] byLogRate = [.. times.Select((t, i) => -fit.Rate * t * e[i])];
            worstLevel = Math.Max(worstLevel, Pull(residuals, e));
            worstLevel = Math.Max(worstLevel, atBound ? 0 : Pull(residuals, [.. times.Select(_ => 1.0)]));
            worstRate = Math.Max(worstRate, Pull(residuals, byLogRate));
        }

        tried.ShouldBeGreaterThan(4000);
        worstLevel.ShouldBeLessThan(1e-12);
        worstRate.ShouldBeLessThan(3e-10);

        static double Pull(double[] residuals, double[] column) =>
            Math.Abs(residuals.Zip(column, (r, c) => r * c).Sum()) / column.Sum(c => c * c);
    }

    [Theory]
    [InlineData(-0.03)]
    [InlineData(-0.0003)]
    [InlineData(0.0003)]
    [InlineData(0.03)]
    public void An_optimum_beside_the_kink_of_the_bound_satisfies_the_normal_equations(double standardErrors)
    {
        // The bound is put beside the floor that the readings themselves have, so that the search crosses the kink with its last steps.
        var random = new Random(20260414);
        var tried = 0;
        for (var run = 0; run < 300; run++)
        {
            var (times, values) = Draw(random, 0);
            var free = ExponentialDecay.Fit(times, values, new ExponentialDecayOptions(lowestFloor: null));
            if (free.Status != ExponentialDecayStatus.Determined || free.RateStandardError > 0.5 * free.Rate)
            {
                continue;
            }

            tried++;
            var bound = free.Floor + standardErrors * free.FloorStandardError;
            var fit = ExponentialDecay.Fit(times, values, new ExponentialDecayOptions(lowestFloor: bound));
            fit.Status.ShouldBe(
                standardErrors > 0 ? ExponentialDecayStatus.AtFloorBound : ExponentialDecayStatus.Determined
            );
            fit.Floor.ShouldBe(Math.Max(bound, free.Floor), 1e-9 * Math.Abs(free.Floor) + 1e-9);

            // The step of Gauss and Newton from the fit, over the parts that are free, in standard errors of the rate.
            double[] e = [.. times.Select(t => Math.Exp(-fit.Rate * t))];
            double[] byLogRate = [.. times.Select((t, i) => -(fit.Start - fit.Floor) * fit.Rate * t * e[i])];
            double[] residuals = [.. values.Select((y, i) => y - fit.Floor - (fit.Start - fit.Floor) * e[i])];
            double[][] linear = standardErrors > 0 ? [e] : [e, [.. e.Select(v => 1 - v)]];
            var rest = Rest(byLogRate, linear);
            var step = rest.Zip(residuals, (r, y) => r * y).Sum() / rest.Sum(r => r * r);
            Math.Abs(step).ShouldBeLessThan(1e-7 * free.RateStandardError / free.Rate, $"run {run}");
        }

        tried.ShouldBeGreaterThan(150);

        // What is left of a column after its projection on others (Gram and Schmidt, twice).
        static double[] Rest(double[] column, double[][] others)
        {
            var rest = column.ToArray();
            var first = others[0];
            var bases = others.Length == 1 ? [first] : new[] { first, Less(others[1], first) };
            foreach (var one in bases.Concat(bases))
            {
                rest = Less(rest, one);
            }

            return rest;
        }

        static double[] Less(double[] column, double[] by)
        {
            var share = column.Zip(by, (c, b) => c * b).Sum() / by.Sum(b => b * b);
            return [.. column.Zip(by, (c, b) => c - share * b)];
        }
    }

    /// <summary>Ordinary, nearly linear, flat, rising, few readings, large offset; noise of 2 to 10 %, constant or proportional.</summary>
    private static (double[] Times, double[] Values) Draw(Random random, int kind)
    {
        var count = kind == 4 ? random.Next(4, 7) : random.Next(6, 61);
        var amplitude = 100 + 900 * random.NextDouble();
        var timeConstants = kind == 1 ? 0.02 + 0.1 * random.NextDouble() : 1 + 5 * random.NextDouble();
        var floor = amplitude * (kind == 5 ? 20 + 80 * random.NextDouble() : 0.02 + 0.9 * random.NextDouble());
        var noise = (0.02 + 0.08 * random.NextDouble()) * amplitude;
        var proportional = random.Next(2) == 0;
        amplitude =
            kind == 2 ? 0
            : kind == 3 ? -0.9 * Math.Min(amplitude, floor)
            : amplitude;
        var times = new double[count];
        for (var i = 1; i < count; i++)
        {
            times[i] = times[i - 1] + 0.2 + random.NextDouble();
        }

        var rate = timeConstants / times[^1];
        return (
            times,
            [
                .. times.Select(t =>
                {
                    var y = floor + amplitude * Math.Exp(-rate * t);
                    var size = proportional ? noise * y / (floor + Math.Abs(amplitude)) : noise;
                    return y + size * DecayNoiseSource.Normal(random);
                }),
            ]
        );
    }

    /// <summary>Second route: a grid of rates in ln k, two-parameter regression at each in plain loops, its best point refined by golden section.</summary>
    private static double Grid(double[] times, double[] values, int points = 250)
    {
        var span = times[^1];
        var lowest = Math.Log(1 / 64.0 / span);
        var highest = Math.Log(12 / times[1]);
        var best = double.PositiveInfinity;
        var at = 0.0;
        for (var i = 0; i <= points; i++)
        {
            var u = lowest + (highest - lowest) * i / points;
            var rss = AtRate(times, values, Math.Exp(u));
            (best, at) = rss < best ? (rss, u) : (best, at);
        }

        var step = (highest - lowest) / points;
        var (from, to) = (Math.Max(lowest, at - step), Math.Min(highest, at + step));
        for (var i = 0; i < 25; i++)
        {
            var (u1, u2) = (to - 0.618 * (to - from), from + 0.618 * (to - from));
            var (y1, y2) = (AtRate(times, values, Math.Exp(u1)), AtRate(times, values, Math.Exp(u2)));
            best = Math.Min(best, Math.Min(y1, y2));
            (from, to) = y1 < y2 ? (from, u2) : (u1, to);
        }

        return best;
    }

    private static double AtRate(double[] times, double[] values, double rate)
    {
        double n = times.Length;
        double se = 0;
        double see = 0;
        double sy = 0;
        double sey = 0;
        for (var i = 0; i < times.Length; i++)
        {
            var e = Math.Exp(-rate * times[i]);
            se += e;
            see += e * e;
            sy += values[i];
            sey += e * values[i];
        }

        var amplitude = (n * sey - se * sy) / (n * see - se * se);
        var floor = (sy - amplitude * se) / n;
        (floor, amplitude) = floor < 0 ? (0, sey / see) : (floor, amplitude);
        return Squares(times, values, floor + amplitude, floor, rate);
    }

    private static double Squares(double[] times, double[] values, double start, double floor, double rate)
    {
        double sum = 0;
        for (var i = 0; i < times.Length; i++)
        {
            var r = values[i] - floor - (start - floor) * Math.Exp(-rate * times[i]);
            sum += r * r;
        }

        return sum;
    }
}
