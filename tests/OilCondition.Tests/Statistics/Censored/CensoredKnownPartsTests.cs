using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>Known start, floor or rate beside readings below a limit: against least squares, and against a general optimiser on the likelihood written out.</summary>
public class CensoredKnownPartsTests
{
    private static readonly double[] Hours = [0, 1, 2, 3.5, 5, 8, 12, 18, 26, 36];
    private static readonly double[] Ppm = [812, 700, 640, 540, 455, 330, 240, 150, 112, 88];
    private static readonly bool[] Below = [.. Enumerable.Range(0, 10).Select(i => i is 6 or 8 or 9)];

    /// <summary>Every set of known parts that leaves one to fit, with both kinds of scatter.</summary>
    public static TheoryData<DecayNoise, double?, double?, double?> Known()
    {
        var data = new TheoryData<DecayNoise, double?, double?, double?>();
        foreach (var noise in new[] { DecayNoise.Constant, DecayNoise.Proportional })
        {
            data.Add(noise, null, null, null);
            data.Add(noise, 800, null, null);
            data.Add(noise, null, 80, null);
            data.Add(noise, null, null, 0.12);
            data.Add(noise, 800, 80, null);
            data.Add(noise, 800, null, 0.12);
            data.Add(noise, null, 80, 0.12);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Known))]
    public void Without_readings_below_a_limit_it_is_the_least_squares_fit(
        DecayNoise noise,
        double? start,
        double? floor,
        double? rate
    )
    {
        var options = new ExponentialDecayOptions(noise, start: start, floor: floor, rate: rate);
        var plain = ExponentialDecay.Analyze(Hours, Ppm, options);
        var fit = CensoredDecay.Fit(Hours, Ppm, new bool[10], options);
        fit.Status.ShouldBe(plain.Fit.Status);
        fit.Start.ShouldBe(plain.Fit.Start, 1e-6 * plain.Fit.Start);
        fit.Floor.ShouldBe(plain.Fit.Floor, 1e-6 * plain.Fit.Start);
        fit.Rate.ShouldBe(plain.Fit.Rate, 1e-7 * plain.Fit.Rate);
        fit.StandardDeviation.ShouldBe(
            Math.Sqrt(plain.Fit.ResidualSumOfSquares / 10),
            1e-7 * Math.Sqrt(plain.Fit.ResidualSumOfSquares)
        );

        // With constant scatter the covariance is that of least squares, but for the divisor n.
        if (noise == DecayNoise.Constant)
        {
            var divisor = Math.Sqrt((10.0 - FreeParts(options)) / 10);
            fit.StartStandardError.ShouldBe(
                plain.Fit.StartStandardError * divisor,
                0.05 * plain.Fit.StartStandardError
            );
            fit.FloorStandardError.ShouldBe(
                plain.Fit.FloorStandardError * divisor,
                0.05 * plain.Fit.FloorStandardError
            );
            fit.RateStandardError.ShouldBe(plain.Fit.RateStandardError * divisor, 0.05 * plain.Fit.RateStandardError);
        }

        foreach (var side in new[] { IntervalSide.Both, IntervalSide.Lower, IntervalSide.Upper })
        {
            Same(fit.RateInterval(0.9, side), plain.Rate(0.9, side), 2e-5 * fit.Rate);
            Same(fit.FloorInterval(0.9, side), plain.Floor(0.9, side), 2e-3);
        }

        // The reach of the least-squares set is within 1 % of the excess that was meant, hence the tolerances.
        foreach (var hour in new[] { 0, 3.0, 20, 60 })
        {
            var (one, other) = (fit.ValueInterval(hour, 0.9), plain.ValueAt(hour, 0.9));
            one.Lower.ShouldBe(other.Lower, 5e-3);
            one.Upper.ShouldBe(other.Upper, 5e-3);
        }

        foreach (var target in new[] { 900.0, 790, 300, 120, 81, 70, 20, -5 })
        {
            var (one, other) = (fit.Reach(target, 0.9), plain.Reach(target, 0.9));
            one.Outcome.ShouldBe(other.Outcome, $"target {target}");
            one.HasLower.ShouldBe(other.HasLower);
            one.HasUpper.ShouldBe(other.HasUpper);
            one.Lower.ShouldBe(other.Lower, 2e-3 + 5e-4 * other.Lower);
            one.Upper.ShouldBe(other.Upper, 2e-3 + 5e-4 * other.Upper);
            one.Estimate.ShouldBe(other.Estimate, 1e-4);
        }
    }

    /// <summary>Second route: the simplex of Nelder and Mead on the likelihood written out, with the scatter in proportion to the curve that comes out.</summary>
    [Theory]
    [MemberData(nameof(Known))]
    public void The_curve_is_what_a_general_optimiser_finds(
        DecayNoise noise,
        double? start,
        double? floor,
        double? rate
    )
    {
        var options = new ExponentialDecayOptions(noise, start: start, floor: floor, rate: rate);
        var fit = CensoredDecay.Fit(Hours, Ppm, Below, options);
        var best = Search(fit, start, floor, rate);
        fit.LogLikelihood.ShouldBe(best.LogLikelihood, 1e-8);
        fit.Start.ShouldBe(best.Start, 2e-4 * best.Start);
        fit.Floor.ShouldBe(best.Floor, 2e-4 * best.Start);
        fit.Rate.ShouldBe(best.Rate, 2e-4 * best.Rate);
        fit.Start.ShouldBe(start ?? fit.Start);
        fit.Floor.ShouldBe(floor ?? fit.Floor);
        fit.Rate.ShouldBe(rate ?? fit.Rate);
    }

    /// <summary>Second route: at each end of an interval the best curve with that value is as much less likely as the level says.</summary>
    [Theory]
    [MemberData(nameof(Known))]
    public void At_the_ends_of_intervals_the_likelihood_has_fallen_by_what_the_level_says(
        DecayNoise noise,
        double? start,
        double? floor,
        double? rate
    )
    {
        var options = new ExponentialDecayOptions(noise, start: start, floor: floor, rate: rate);
        var fit = CensoredDecay.Fit(Hours, Ppm, Below, options);
        var degrees = 7 - FreeParts(options);
        var t = StudentT.InvCDF(0, 1, degrees, 0.95);
        var meant = fit.LogLikelihood - 0.5 * 7 * Math.Log(1 + t * t / degrees);
        var ends = 0;
        void Falls(bool has, double end, Func<double, Best> search)
        {
            if (has && end > 0)
            {
                search(end).LogLikelihood.ShouldBe(meant, 2e-5);
                ends++;
            }
        }

        if (rate is null)
        {
            var interval = fit.RateInterval(0.9);
            Falls(interval.Lower.HasValue, interval.Lower ?? 0, end => Search(fit, start, floor, end));
            Falls(interval.Upper.HasValue, interval.Upper ?? 0, end => Search(fit, start, floor, end));
        }

        if (floor is null)
        {
            var interval = fit.FloorInterval(0.9);
            Falls(interval.Lower.HasValue, interval.Lower ?? 0, end => Search(fit, start, end, rate));
            Falls(interval.Upper.HasValue, interval.Upper ?? 0, end => Search(fit, start, end, rate));
        }

        // The curve at a time.
        var value = fit.ValueInterval(9, 0.9);
        Falls(value.Lower.HasValue, value.Lower ?? 0, end => Search(fit, start, floor, rate, (9, end)));
        Falls(value.Upper.HasValue, value.Upper ?? 0, end => Search(fit, start, floor, rate, (9, end)));
        var ready = fit.Reach(200, 0.9);
        Falls(ready.HasLower, ready.Lower, end => Search(fit, start, floor, rate, (end, 200)));
        Falls(ready.HasUpper, ready.Upper, end => Search(fit, start, floor, rate, (end, 200)));
        ends.ShouldBeGreaterThanOrEqualTo(4);
    }

    [Theory]
    [MemberData(nameof(Known))]
    public void A_reading_below_a_limit_far_above_the_curve_says_nothing(
        DecayNoise noise,
        double? start,
        double? floor,
        double? rate
    )
    {
        var options = new ExponentialDecayOptions(noise, start: start, floor: floor, rate: rate);
        var fit = CensoredDecay.Fit(Hours, Ppm, Below, options);
        var more = CensoredDecay.Fit([.. Hours, 15], [.. Ppm, 3000], [.. Below, true], options);
        more.AboveLimitCount.ShouldBe(7);
        more.Rate.ShouldBe(fit.Rate, 1e-9 * fit.Rate);
        more.Floor.ShouldBe(fit.Floor, 1e-9 * fit.Start);
        more.Start.ShouldBe(fit.Start, 1e-9 * fit.Start);
        more.StandardDeviation.ShouldBe(fit.StandardDeviation, 1e-9 * fit.StandardDeviation);
        more.LogLikelihood.ShouldBe(fit.LogLikelihood, 1e-9);
        more.Reach(200, 0.9).Upper.ShouldBe(fit.Reach(200, 0.9).Upper, 1e-5);
    }

    [Fact]
    public void A_known_start_before_the_first_reading_is_met_there()
    {
        var options = new ExponentialDecayOptions(start: 1000, startTime: -1.5);
        var fit = CensoredDecay.Fit(Hours, Ppm, Below, options);
        fit.StartTime.ShouldBe(-1.5);
        fit.ValueAt(-1.5).ShouldBe(1000, 1e-9);
        fit.Span.ShouldBe(37.5);
        var best = Search(fit, 1000, null, null);
        fit.LogLikelihood.ShouldBe(best.LogLikelihood, 1e-8);
        Should.Throw<ArgumentOutOfRangeException>(() =>
            CensoredDecay.Fit([-2, .. Hours], [900, .. Ppm], [false, .. Below], options)
        );
    }

    [Fact]
    public void With_known_start_and_rate_no_curve_is_below_that_of_the_lowest_floor()
    {
        // The readings fall below 800 exp(−0.12 t): the floor stays at 0, and the earliest crossing of 100 is ln 8 / 0.12.
        double[] values = [.. Hours.Select((t, i) => 800 * Math.Exp(-0.12 * t) - (i % 2 == 0 ? 1 : 3))];
        var fit = CensoredDecay.Fit(Hours, values, Below, new ExponentialDecayOptions(start: 800, rate: 0.12));
        fit.Status.ShouldBe(ExponentialDecayStatus.AtFloorBound);
        fit.ValueInterval(9, 0.9).Lower.ShouldBe(800 * Math.Exp(-0.12 * 9), 1e-9);
        fit.ValueInterval(9, 0.9).Upper.ShouldBeGreaterThan(fit.ValueInterval(9, 0.9).Lower);
        fit.Reach(100, 0.9).Lower.ShouldBe(Math.Log(8) / 0.12, 1e-6);
    }

    [Fact]
    public void Each_known_part_spares_a_reading_above_the_limit()
    {
        bool[] three = [.. Enumerable.Range(0, 10).Select(i => i > 2)];
        CensoredDecay.Fit(Hours, Ppm, three).Status.ShouldBe(ExponentialDecayStatus.TooFewAboveLimit);
        CensoredDecay
            .Fit(Hours, Ppm, three, new ExponentialDecayOptions(floor: 80))
            .Status.ShouldNotBe(ExponentialDecayStatus.TooFewAboveLimit);

        // A reading at the moment of the known start tells nothing of the rate.
        CensoredDecay
            .Fit(
                [0, 0, 0, 5],
                [800, 810, 790, 400],
                [false, false, false, true],
                new ExponentialDecayOptions(start: 800, floor: 80)
            )
            .Status.ShouldBe(ExponentialDecayStatus.TooFewAboveLimit);
        CensoredDecay
            .Fit([3, 3, 3], [500, 510, 505], [false, false, true], new ExponentialDecayOptions(floor: 80, rate: 0.1))
            .Status.ShouldBe(ExponentialDecayStatus.TooFewAboveLimit);
    }

    private static int FreeParts(ExponentialDecayOptions options) =>
        new[] { options.Start, options.Floor, options.Rate }.Count(part => part is null);

    private static void Same(Interval one, Interval other, double tolerance)
    {
        one.Outcome.ShouldBe(other.Outcome);
        one.Lower.ShouldBe(other.Lower, tolerance);
        one.Upper.ShouldBe(other.Upper, tolerance);
    }

    /// <summary>The best curve with the given parts, or through a point, with the scatter in the sizes of the curve that was fitted.</summary>
    private static Best Search(
        CensoredDecayFit fit,
        double? start,
        double? floor,
        double? rate,
        (double Hour, double Value)? through = null
    )
    {
        double[] sizes = [.. Hours.Select(t => fit.Options.Noise == DecayNoise.Proportional ? fit.ValueAt(t) : 1)];
        Best At(Vector<double> x)
        {
            var next = 0;
            var k = rate ?? fit.Rate * Math.Exp(x[next++]);
            var f = floor ?? fit.Floor + fit.Start * x[next++];
            var s = start ?? fit.Start * (1 + x[next++]);
            if (through is { } at)
            {
                // Solved for a part that is free: exact where a penalty would only come close.
                var left = Math.Exp(-k * (at.Hour - fit.StartTime));
                if (start is null)
                {
                    s = f + (at.Value - f) / left;
                }
                else if (floor is null)
                {
                    f = (at.Value - s * left) / (1 - left);
                }
                else
                {
                    k = Math.Log((s - f) / (at.Value - f)) / (at.Hour - fit.StartTime);
                }
            }

            var sigma = fit.StandardDeviation * Math.Exp(x[next]);
            double sum = f < 0 ? -1e9 * f * f : 0;
            for (var i = 0; i < Hours.Length; i++)
            {
                var curve = f + (s - f) * Math.Exp(-k * (Hours[i] - fit.StartTime));
                var r = (Ppm[i] - curve) / (sigma * sizes[i]);
                sum += Below[i] ? Math.Log(Normal.CDF(0, 1, r)) : Normal.PDFLn(0, 1, r) - Math.Log(sigma * sizes[i]);
            }

            return new Best(double.IsNaN(sum) ? -1e12 : sum, s, f, k);
        }

        var free = 4 - (start is null ? 0 : 1) - (floor is null ? 0 : 1) - (rate is null ? 0 : 1);
        var guess = Vector<double>.Build.Dense(free);
        var size = 0.05;
        for (var round = 0; round < 6; round++, size /= 4)
        {
            guess = NelderMeadSimplex
                .Minimum(
                    ObjectiveFunction.Value(x => -At(x).LogLikelihood),
                    guess,
                    Vector<double>.Build.Dense(free, size),
                    1e-13,
                    20000
                )
                .MinimizingPoint;
        }

        return At(guess);
    }

    private sealed record Best(double LogLikelihood, double Start, double Floor, double Rate);
}
