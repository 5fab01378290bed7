using OilCondition.Statistics;
using OilCondition.Tests.Cleanup;

namespace OilCondition.Tests.Statistics;

/// <summary>The short ways of a profile, each against the long one.</summary>
public class DecayProfileTests
{
    private const double Octave = 0.6931471805599453;

    /// <summary>Weighted readings in scaled time, for one pass at a time.</summary>
    private static (double[] Times, double[] Values, double[] Weights) Drawn(Random random, int count, double constants)
    {
        double[] times = [.. Enumerable.Range(0, count).Select(i => i + 0.5 * random.NextDouble())];
        return (
            times,
            [.. times.Select(t => 100 + 900 * Math.Exp(-constants * t / count) + 60 * Runs.Normal(random))],
            [.. times.Select(_ => 0.2 + random.NextDouble())]
        );
    }

    [Fact]
    public void Slow_rates_have_the_same_sums_by_moments_as_by_exponentials()
    {
        // Second route: the sums written out, with a drop that keeps its digits.
        var (times, values, weights) = Drawn(new Random(11), 13, 2);
        var columns = new DecayColumns(new double[DecayColumns.Scratch(13)], times, values, weights, times[0]);
        var slow = new DecaySlowSums(columns, new double[DecaySlowSums.Scratch]);
        double[] rates = [Math.Exp(-44 * Octave), 1e-6, 0.03, DecaySlowSums.Fastest];
        slow.AtFourRates(LaneMath.Of(rates[0], rates[1], rates[2], rates[3]), out var d, out var dd, out var dy);
        for (var rate = 0; rate < 4; rate++)
        {
            var (sum, square, product) = (0.0, 0.0, 0.0);
            for (var i = 0; i < columns.Count; i++)
            {
                var drop = LaneMath.Drop(rates[rate] * columns.Times[i]);
                sum += columns.Weights[i] * drop;
                square += columns.Weights[i] * drop * drop;
                product += columns.Weights[i] * drop * columns.Values[i];
            }

            LaneMath.At(d, rate).ShouldBe(sum, 1e-13 * sum);
            LaneMath.At(dd, rate).ShouldBe(square, 1e-12 * square);
            LaneMath.At(dy, rate).ShouldBe(product, 1e-12 * sum);
        }
    }

    [Fact]
    public void Only_rates_of_straight_lines_are_left_out()
    {
        var whole = Rates(new DecayGrid(-44 * Octave, 1.2, hasNoLowest: false));
        var grid = new DecayGrid(-44 * Octave, 1.2, hasNoLowest: true);
        var kept = Rates(grid);

        kept.Length.ShouldBeLessThan(whole.Length / 2 + 8);
        var leftOut = whole.Except(kept).ToArray();
        leftOut.Length.ShouldBe(whole.Length - kept.Length);
        leftOut.Max().ShouldBeLessThan(Math.Exp(-12));
        leftOut.Min().ShouldBeGreaterThan(kept[3]);
        for (var i = 2; i < kept.Length - 2; i++)
        {
            var at = Array.IndexOf(whole, kept[i]);
            grid.HasNeighbours(i).ShouldBe(whole[at - 2] == kept[i - 2] && whole[at + 2] == kept[i + 2]);
        }

        static double[] Rates(DecayGrid grid) =>
            [
                .. Enumerable
                    .Range(0, grid.Count)
                    .Select(i => LaneMath.At(grid.Group(i / LaneMath.Width), i % LaneMath.Width)),
            ];
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.1)]
    [InlineData(0.6)]
    public void Without_a_slowest_rate_values_reach_as_far_as_a_scan_of_all_rates(double constants)
    {
        // Second route: at each of 20,000 rates the line of y on exp(−k t) and the error of its value at a time.
        var (times, values, _) = Drawn(new Random(12), 12, constants);
        var analysis = ExponentialDecay.Analyze(times, values, DecaySeries.Unbounded);
        analysis.Rate(0.9).Lower.ShouldBeNull();
        var t = MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, 9, 0.95);
        var limit = analysis.Fit.ResidualSumOfSquares * (1 + t * t / 9);
        var span = times[^1] - times[0];
        foreach (var spans in new[] { 0.4, 2.0, 20 })
        {
            var (least, largest) = (double.PositiveInfinity, double.NegativeInfinity);
            for (var u = -44 * Octave; u < Math.Log(12 * span); u += 0.002)
            {
                double Drop(double time) => LaneMath.Drop(Math.Exp(u) / span * (time - times[0]));
                double[] drops = [.. times.Select(Drop)];
                var (mean, level) = (drops.Average(), values.Average());
                var size = drops.Sum(d => (d - mean) * (d - mean));
                var change = drops.Select((d, i) => (d - mean) * (values[i] - level)).Sum() / size;
                var rest = drops.Select((d, i) => values[i] - level - change * (d - mean)).Sum(r => r * r);
                if (rest <= limit)
                {
                    var off = Drop(times[0] + spans * span) - mean;
                    var half = Math.Sqrt((limit - rest) * (1.0 / 12 + off * off / size));
                    least = Math.Min(least, level + change * off - half);
                    largest = Math.Max(largest, level + change * off + half);
                }
            }

            var found = analysis.ValueAt(times[0] + spans * span, 0.9);
            found.Lower!.Value.ShouldBe(least, 1e-4 * (largest - least), $"{spans} spans");
            found.Upper!.Value.ShouldBe(largest, 1e-4 * (largest - least), $"{spans} spans");
        }
    }

    [Theory]
    [InlineData(double.NegativeInfinity)]
    [InlineData(0.0)] // most ellipses are cut off
    [InlineData(-3000.0)] // some are
    public void Floors_and_crossings_of_an_ellipse_are_those_of_its_curves(double lowestFloor)
    {
        // Second route: curves all over the ellipse; no end may lie inside of what they reach, nor farther out than they are apart.
        var random = new Random(13);
        var (ends, latest) = (0, 0);
        for (var run = 0; run < 60; run++)
        {
            var (times, values, weights) = Drawn(random, 9, 4 * random.NextDouble());
            var columns = new DecayColumns(new double[DecayColumns.Scratch(9)], times, values, weights, times[0]);
            var shape = new DecayShape(columns, null, null, lowestFloor);
            var rates = LaneMath.Of(0.05, 0.3, 1.1, 5);
            columns.AtFourRates(rates, out var d, out var dd, out var dy);
            var limit = shape.Total * (0.3 + 0.9 * random.NextDouble());
            var ellipse = new DecayEllipse(9, shape, d, dd, dy, limit);
            var target = columns.Scaled(200 + 500 * random.NextDouble());
            ellipse.Floors(out var leastFloor, out var largestFloor);
            ellipse.Cross(target, out var first, out var last);
            var isThere = ellipse.WhereAny(LaneMath.Of(1));
            for (var i = 0; i < 4; i++)
            {
                var (mean, v) = (LaneMath.At(d, i) / 9, 0.0);
                v = LaneMath.At(dd, i) - 9 * mean * mean;
                var best = (LaneMath.At(dy, i) - mean * columns.SumY) / v;
                var room = limit - (shape.Total - best * best * v);
                var (lowest, highest) = (double.PositiveInfinity, double.NegativeInfinity);
                var (early, late) = (1.0, 0.0);
                for (var step = 0; room > 0 && step < 100 * 700; step++)
                {
                    var radius = (1 + step / 700) / 100.0;
                    var angle = 2 * Math.PI * (step % 700) / 700;
                    var change = best + Math.Sqrt(room / v) * radius * Math.Sin(angle);
                    var centre = columns.SumY / 9 + Math.Sqrt(room / 9) * radius * Math.Cos(angle);
                    var floor = centre + change * (1 - mean);
                    if (floor < shape.LowestFloor)
                    {
                        continue;
                    }

                    lowest = Math.Min(lowest, floor);
                    highest = Math.Max(highest, floor);
                    var drop = (target - (floor - change)) / change;
                    if (change < 0 && drop < 1)
                    {
                        early = Math.Min(early, Math.Max(0, drop));
                        late = Math.Max(late, Math.Max(0, drop));
                    }
                }

                if (!double.IsFinite(lowest))
                {
                    continue;
                }

                LaneMath.At(isThere, i).ShouldBe(1);
                var apart = 0.02 * Math.Sqrt(room * (1.0 / 9 + (1 - mean) * (1 - mean) / v));
                lowest.ShouldBeInRange(LaneMath.At(leastFloor, i) - 1e-9, LaneMath.At(leastFloor, i) + apart);
                highest.ShouldBeInRange(LaneMath.At(largestFloor, i) - apart, LaneMath.At(largestFloor, i) + 1e-9);
                early.ShouldBeInRange(LaneMath.At(first, i) - 1e-9, LaneMath.At(first, i) + 0.05);
                if (highest < target)
                {
                    // Else one of them never gets there.
                    late.ShouldBeInRange(LaneMath.At(last, i) - 0.05, LaneMath.At(last, i) + 1e-9);
                    latest++;
                }

                ends++;
            }
        }

        ends.ShouldBeGreaterThan(100);
        latest.ShouldBeGreaterThan(10);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(null)]
    public void At_an_end_of_the_rate_the_fit_of_that_rate_is_at_the_limit(double? lowestFloor)
    {
        var random = new Random(14);
        var ends = 0;
        for (var run = 0; run < 40; run++)
        {
            var (times, values, weights) = Drawn(random, 6 + run % 20, 1 + 4 * random.NextDouble());
            var analysis = ExponentialDecay.Analyze(
                times,
                values,
                new ExponentialDecayOptions(lowestFloor: lowestFloor),
                weights
            );
            var least = analysis.Fit.ResidualSumOfSquares;
            var t = MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, times.Length - 3, 0.95);
            var excess = least * t * t / (times.Length - 3);
            var rate = analysis.Rate(0.9);
            foreach (var end in new[] { rate.Lower, rate.Upper }.OfType<double>())
            {
                var known = new ExponentialDecayOptions(lowestFloor: lowestFloor, rate: end);
                var there = ExponentialDecay.Fit(times, values, weights, known).ResidualSumOfSquares;
                (there - least).ShouldBe(excess, 2e-7 * excess, $"run {run}");
                ends++;
            }
        }

        ends.ShouldBeGreaterThan(60);
    }

    [Fact]
    public void Exact_readings_leave_one_curve_and_not_none()
    {
        // Their residuals are rounding, so that ends of the rate apart from the best one would be too.
        var random = new Random(16);
        for (var run = 0; run < 500; run++)
        {
            var (floor, fall, rate) = (
                20 + 300 * random.NextDouble(),
                100 + 900 * random.NextDouble(),
                0.05 + 0.3 * random.NextDouble()
            );
            double[] times = [.. Enumerable.Range(0, 5 + run % 20).Select(i => i + 0.5 * random.NextDouble())];
            double[] values = [.. times.Select(t => floor + fall * Math.Exp(-rate * t))];
            var analysis = ExponentialDecay.Analyze(times, values, DecaySeries.Unbounded);

            analysis.Rate(0.9).Lower!.Value.ShouldBe(rate, 1e-6 * rate, $"run {run}");
            analysis.Floor(0.9).Lower!.Value.ShouldBe(floor, 1e-3 * fall, $"run {run}");
            analysis.Floor(0.9).Upper!.Value.ShouldBe(floor, 1e-3 * fall, $"run {run}");
            analysis
                .TimeTo(floor + fall / 2, 0.9)
                .ShouldBeOfType<Arrival<double>.Expected>($"run {run}")
                .Latest.ShouldBe(Math.Log(2) / rate, 1e-3 / rate);
        }
    }

    [Theory]
    [InlineData(DecayNoise.Constant, true)]
    [InlineData(DecayNoise.Proportional, false)]
    [InlineData(DecayNoise.Logarithmic, false)]
    [InlineData(DecayNoise.TwoComponent, false)]
    public void What_a_fit_hands_on_is_of_the_weights_that_it_ended_with(DecayNoise noise, bool robust)
    {
        // Second route: one more fit, with those weights given.
        var (times, values, _) = Drawn(new Random(15), 14, 2);
        values[5] += robust ? 900 : 0;
        var options = new ExponentialDecayOptions(noise, robust: robust);
        var weights = new double[14];
        var working = new double[14];
        var found = new DecayFound();
        DecayFitter.Fit(times, values, default, options, weights, working, null, found);
        var again = new DecayFound();
        DecayFitter.Fit(times, working, weights, ExponentialDecayOptions.Default, default, default, null, again);

        found.Scan.Length.ShouldBe(again.Scan.Length);
        for (var i = 0; i < again.Scan.Length; i++)
        {
            found.Scan[i].ShouldBe(again.Scan[i], 1e-12 * again.Scan[i]);
        }

        found.ScaledRate.ShouldBe(again.ScaledRate, 1e-12 * again.ScaledRate);
        found.Sums.DD2.ShouldBe(again.Sums.DD2, 1e-12);
    }
}
