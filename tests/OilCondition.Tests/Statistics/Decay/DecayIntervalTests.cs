using CsCheck;
using MathNet.Numerics.Distributions;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Statistics;

/// <summary>Profile intervals by a second route, and the quantile they are made of.</summary>
public class DecayIntervalTests
{
    private static readonly double[] Hours = [0, 1, 2, 3.5, 5, 8, 12, 18, 26, 36];
    private static readonly double[] Ppm = [812, 700, 640, 540, 455, 330, 240, 150, 112, 88];

    [Theory]
    [InlineData(0.95, 1, 6.314)]
    [InlineData(0.95, 2, 2.920)]
    [InlineData(0.95, 3, 2.353)]
    [InlineData(0.975, 5, 2.571)]
    [InlineData(0.95, 9, 1.833)]
    [InlineData(0.99, 30, 2.457)]
    [InlineData(0.995, 120, 2.617)]
    public void Students_quantile_is_that_of_the_printed_tables(
        double probability,
        int degreesOfFreedom,
        double printed
    ) =>
        // Table of Student's t, for example NIST/SEMATECH e-Handbook of Statistical Methods 1.3.6.7.2: three decimals.
        Quantile(probability, degreesOfFreedom).ShouldBe(printed, 0.0006);

    [Fact]
    public void Students_quantile_agrees_with_the_general_inverse() =>
        Gen.Select(Gen.Double[0.501, 0.99999], Gen.Int[1, 600])
            .Holds(
                (probability, degrees) =>
                    Quantile(probability, degrees)
                        .ShouldBe(StudentT.InvCDF(0, 1, degrees, probability), 1e-8 * Quantile(probability, degrees)),
                iter: 300
            );

    [Theory]
    [InlineData(0.4, 30, 200)] // hardly a curve: a straight line is compatible
    [InlineData(1, 30, 200)]
    [InlineData(2, 30, 200)]
    [InlineData(3, 20, 150)]
    [InlineData(6, 60, 80)] // below the floor
    public void Ends_are_where_constrained_fits_of_a_grid_pass_the_limit(double span, double scatter, double target)
    {
        // Second route: a time belongs to the interval if the best curve through (time, target) has an RSS below the limit.
        var random = new Random(20260501 + (int)(10 * span));
        for (var run = 0; run < 6; run++)
        {
            double[] times = [.. Enumerable.Range(0, 10).Select(i => span * i / 9)];
            double[] values =
            [
                .. times.Select(t => 100 + 900 * Math.Exp(-t) + scatter * DecayNoiseSource.Normal(random)),
            ];
            var analysis = ExponentialDecay.Analyze(times, values, DecaySeries.Unbounded);
            var t = StudentT.InvCDF(0, 1, 7, 0.95);
            var limit = analysis.Fit.ResidualSumOfSquares * (1 + t * t / 7);
            var interval = analysis.Reach(target, 0.9);
            foreach (var share in new[] { 0.97, 0.995, 1.005, 1.03 })
            {
                if (interval.HasLower && interval.Lower > 0)
                {
                    (LeastSquaresThrough(times, values, share * interval.Lower, target) <= limit).ShouldBe(share > 1);
                }

                if (interval.HasUpper)
                {
                    (LeastSquaresThrough(times, values, share * interval.Upper, target) <= limit).ShouldBe(share < 1);
                }
            }

            if (!interval.HasUpper && interval.HasLower)
            {
                LeastSquaresThrough(times, values, 1e4, target).ShouldBeLessThanOrEqualTo(limit * (1 + 1e-6));
            }

            foreach (var end in new[] { analysis.Floor(0.9).Lower, analysis.Floor(0.9).Upper }.OfType<double>())
            {
                // The floor is the value at a time beyond all.
                LeastSquaresThrough(times, values, double.PositiveInfinity, end)
                    .ShouldBe(limit, 1e-2 * (limit - analysis.Fit.ResidualSumOfSquares));
            }
        }
    }

    [Theory]
    [InlineData(0.08, 4)] // hardly a curve: the time lies far beyond the readings
    [InlineData(0.5, 15)]
    [InlineData(2, 30)]
    public void With_a_known_floor_the_times_end_where_the_likelihood_of_the_best_rate_passes_the_limit(
        double span,
        double scatter
    )
    {
        // Second route: of the curves through (time, target) only the rate is free, and it is searched on a grid.
        var random = new Random(20261126 + (int)(100 * span));
        var ends = 0;
        for (var run = 0; run < 12; run++)
        {
            double[] times = [.. Enumerable.Range(0, 12).Select(i => span * i / 11)];
            double[] values =
            [
                .. times.Select(t => 30 + 300 * Math.Exp(-t) + scatter * DecayNoiseSource.Normal(random)),
            ];
            var analysis = ExponentialDecay.Analyze(times, values, new ExponentialDecayOptions(floor: 30));
            var t = StudentT.InvCDF(0, 1, 10, 0.95);
            var limit = analysis.Fit.ResidualSumOfSquares * (1 + t * t / 10);
            foreach (var target in new[] { 250.0, 120, 50 })
            {
                var interval = analysis.Reach(target, 0.9);
                if (interval.HasLower && interval.Lower > 0)
                {
                    ends++;
                    AboveFloor(0.9999 * interval.Lower, target).ShouldBeGreaterThan(limit);
                    AboveFloor(1.0001 * interval.Lower, target).ShouldBeLessThan(limit);
                }

                if (interval.HasUpper && interval.Upper > 0)
                {
                    ends++;
                    AboveFloor(0.9999 * interval.Upper, target).ShouldBeLessThan(limit);
                    AboveFloor(1.0001 * interval.Upper, target).ShouldBeGreaterThan(limit);
                }
            }

            double AboveFloor(double time, double target)
            {
                var (best, at) = (double.PositiveInfinity, 0.0);
                for (var (step, from, to) = (0.02, -16.0, 5.0); step > 1e-7; step /= 20)
                {
                    for (var u = from; u <= to; u += step)
                    {
                        var squares = Squares(time, target, Math.Exp(u));
                        (best, at) = squares < best ? (squares, u) : (best, at);
                    }

                    (from, to) = (at - step, at + step);
                }

                return best;
            }

            double Squares(double time, double target, double rate)
            {
                double sum = 0;
                for (var i = 0; i < times.Length; i++)
                {
                    var rest = values[i] - 30 - (target - 30) * Math.Exp(-rate * (times[i] - time));
                    sum += rest * rest;
                }

                return sum;
            }
        }

        ends.ShouldBeGreaterThan(20);
    }

    [Fact]
    public void Without_its_first_reading_a_series_that_may_be_a_sudden_drop_keeps_its_floor_and_loses_its_start()
    {
        // Five readings of which any one may be an outlier. Second route: the four that are left on a grid of rates, with the time counted from the
        // first of them and the sums about their means.
        double[] times = [0, 0.351, 1.084, 1.534, 1.884];
        double[] values = [824.6, 576.9, 252.7, 180.0, 184.0];
        var analysis = ExponentialDecay.Analyze(times, values, new ExponentialDecayOptions(robust: true));
        var rates = Enumerable.Range(0, 20000).Select(i => Math.Exp(-4 + 0.0006 * i)).ToArray();
        var least = Ways().SelectMany(way => rates.Select(rate => Floor(way, rate, 0).Squares)).Min();
        var t = StudentT.InvCDF(0, 1, 1, 0.95);
        var limit = least * (1 + 1.5) * (1 + t * t);
        var highest = Ways().SelectMany(way => rates.Select(rate => Floor(way, rate, limit).Highest)).Max();
        var floor = analysis.Floor(0.9);
        floor.Upper!.Value.ShouldBe(highest, 2e-3 * highest);
        analysis.Reach(1.02 * highest, 0.9).Outcome.ShouldBe(TimeToValueOutcome.Reached);
        analysis.Reach(0.98 * highest, 0.9).Outcome.ShouldBe(TimeToValueOutcome.NotDemonstrated);

        // Without the first reading nothing says how high a drop began that was over at the second.
        analysis.Rate(0.9).Outcome.ShouldBe(IntervalOutcome.NoUpperEnd);
        analysis.Start(0.9).Outcome.ShouldBe(IntervalOutcome.NotDetermined);
        analysis.ValueAt(0.2, 0.9).Outcome.ShouldBe(IntervalOutcome.NotDetermined);
        analysis.ValueAt(0.4, 0.9).Outcome.ShouldBe(IntervalOutcome.Bounded);

        IEnumerable<int[]> Ways() =>
            Enumerable.Range(0, 5).Select(left => Enumerable.Range(0, 5).Where(i => i != left).ToArray());

        (double Squares, double Highest) Floor(int[] way, double rate, double limit)
        {
            double[] drops = [.. way.Select(i => -Math.Exp(-rate * (times[i] - times[way[0]])) + 1)];
            double[] read = [.. way.Select(i => values[i])];
            var (middle, mean) = (drops.Average(), read.Average());
            var spread = drops.Sum(d => (d - middle) * (d - middle));
            var change = drops.Zip(read, (d, y) => (d - middle) * (y - mean)).Sum() / spread;
            var squares = drops.Zip(read, (d, y) => Math.Pow(y - mean - change * (d - middle), 2)).Sum();
            var variance = 1.0 / 4 + (1 - middle) * (1 - middle) / spread;
            return (
                squares,
                squares > limit
                    ? double.NegativeInfinity
                    : mean + change * (1 - middle) + Math.Sqrt(variance * (limit - squares))
            );
        }
    }

    [Fact]
    public void A_straight_fall_without_a_floor_bound_has_a_time_close_to_that_of_the_line()
    {
        // 1000 − 10 t with a little scatter: a line reaches 700 at 30, far from any floor.
        double[] times = [0, 5, 10, 15, 20, 25];
        double[] values = [1002, 948, 901, 849, 803, 748];
        var interval = ExponentialDecay.Analyze(times, values, DecaySeries.Unbounded).Reach(700, 0.9);
        interval.Outcome.ShouldBe(TimeToValueOutcome.Reached);
        interval.Lower.ShouldBeInRange(28.5, 30);
        interval.Upper.ShouldBeInRange(30, 33);
    }

    [Fact]
    public void The_earliest_time_of_a_straight_fall_is_that_of_straight_lines()
    {
        // Beyond the readings the curve that gets there first is the straightest, and a straight line is compatible here:
        // the lower end is where the best line through (time, target) passes the limit.
        double[] times = [0, 5, 10, 15, 20, 25];
        double[] values = [1002, 948, 901, 849, 803, 748];
        foreach (var target in new[] { 745.0, 700, 600 })
        {
            var analysis = ExponentialDecay.Analyze(times, values, DecaySeries.Unbounded);
            var t = StudentT.InvCDF(0, 1, 3, 0.95);
            var limit = analysis.Fit.ResidualSumOfSquares * (1 + t * t / 3);
            var (outside, inside) = (20.0, (1000 - target) / 10);
            for (var i = 0; i < 60; i++)
            {
                var middle = (outside + inside) / 2;
                (outside, inside) = LineThrough(middle, target) <= limit ? (outside, middle) : (middle, inside);
            }

            analysis.Reach(target, 0.9).Lower.ShouldBe(inside, 1e-6 * inside);
        }

        double LineThrough(double time, double target)
        {
            var slope =
                times.Zip(values, (x, y) => (x - time) * (y - target)).Sum() / times.Sum(x => (x - time) * (x - time));
            return times.Zip(values, (x, y) => y - target - slope * (x - time)).Sum(rest => rest * rest);
        }
    }

    [Fact]
    public void A_higher_confidence_contains_a_lower_one_and_both_contain_the_estimate() =>
        Gen.Select(Gen.Double[0.5, 4], Gen.Double[0.005, 0.1], Gen.Int[5, 30], Gen.Int[0, 100000])
            .Holds(
                (span, noise, count, seed) =>
                {
                    var random = new Random(seed);
                    double[] times = [.. Enumerable.Range(0, count).Select(i => span * i / (count - 1))];
                    double[] values =
                    [
                        .. times.Select(t => 100 + 900 * Math.Exp(-t) * (1 + noise * DecayNoiseSource.Normal(random))),
                    ];
                    var analysis = ExponentialDecay.Analyze(times, values);
                    var (narrow, wide) = (analysis.Rate(0.8), analysis.Rate(0.95));
                    Inside(narrow, wide, analysis.Fit.Rate);
                    Inside(analysis.Floor(0.8), analysis.Floor(0.95), analysis.Fit.Floor);
                    Inside(analysis.Start(0.8), analysis.Start(0.95), analysis.Fit.Start);
                    Inside(analysis.HalfLife(0.8), analysis.HalfLife(0.95), analysis.Fit.HalfLife);
                    var time = analysis.Reach(300, 0.8);
                    if (time.HasEstimate)
                    {
                        time.Lower.ShouldBeLessThanOrEqualTo(time.Estimate * (1 + 1e-6));
                        (time.HasUpper ? time.Upper : double.MaxValue).ShouldBeGreaterThan(time.Estimate * (1 - 1e-6));
                    }
                },
                iter: 300
            );

    [Fact]
    public void One_side_of_the_time_is_asked_for_by_name_in_the_short_form_too()
    {
        var fit = ExponentialDecay.Fit(Hours, Ppm);
        var done = ExponentialDecay.TimeToValue(fit, Hours, Ppm, 120, 0.95, side: IntervalSide.Upper);
        done.HasLower.ShouldBeFalse();
        done.Side.ShouldBe(IntervalSide.Upper);
        done.Upper.ShouldBe(ExponentialDecay.TimeToValue(fit, Hours, Ppm, 120, 0.9).Upper, 1e-6);
    }

    private static void Inside(Interval narrow, Interval wide, double estimate)
    {
        (
            wide.Lower is null || (narrow.Lower is { } lower && wide.Lower <= lower + 1e-9 * Math.Abs(lower))
        ).ShouldBeTrue();
        (
            wide.Upper is null || (narrow.Upper is { } upper && wide.Upper >= upper - 1e-9 * Math.Abs(upper))
        ).ShouldBeTrue();
        var size = 1e-6 * Math.Abs(estimate);
        (narrow.Lower is null || narrow.Lower <= estimate + size).ShouldBeTrue();
        (narrow.Upper is null || narrow.Upper >= estimate - size).ShouldBeTrue();
    }

    /// <summary>Half-width over standard error of a band is the quantile and nothing else.</summary>
    private static double Quantile(double probability, int degreesOfFreedom)
    {
        var count = degreesOfFreedom + 2;
        double[] times = [.. Enumerable.Range(0, count).Select(i => (double)i / count)];
        double[] values = [.. times.Select((t, i) => 100 + 900 * Math.Exp(-3 * t) + (i % 2 == 0 ? 1 : -1))];
        var fit = ExponentialDecay.Fit(times, values, new ExponentialDecayOptions(floor: 100));
        fit.DegreesOfFreedom.ShouldBe(degreesOfFreedom);
        var band = fit.BandAt(0.5, BandKind.Mean, 2 * probability - 1);
        return (band.Upper - band.Lower)!.Value / 2 / fit.StandardErrorAt(0.5, BandKind.Mean);
    }

    /// <summary>Least RSS over rates of the curve A (e(t) − e(time)) + target.</summary>
    private static double LeastSquaresThrough(double[] times, double[] values, double time, double target)
    {
        var best = double.PositiveInfinity;
        for (var u = -14.0; u < 6; u += 0.004)
        {
            var rate = Math.Exp(u);
            var origin = Math.Exp(-rate * time);
            double products = 0;
            double squares = 0;
            double total = 0;
            for (var i = 0; i < times.Length; i++)
            {
                var x = Math.Exp(-rate * times[i]) - origin;
                var y = values[i] - target;
                products += x * y;
                squares += x * x;
                total += y * y;
            }

            best = Math.Min(best, total - products * products / squares);
        }

        return best;
    }
}
