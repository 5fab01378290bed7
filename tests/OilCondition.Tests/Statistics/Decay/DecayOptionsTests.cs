using System.Globalization;
using CsCheck;
using OilCondition.Statistics;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Reference;

namespace OilCondition.Tests.Statistics;

public class DecayOptionsTests
{
    private static readonly double[] Hours = [0, 1, 2, 3.5, 5, 8, 12, 18, 26, 36];
    private static readonly double[] Ppm = [812, 700, 640, 540, 455, 330, 240, 150, 112, 88];

    [Fact]
    [Trait("Category", "Reference")]
    public void Misra1a_with_three_parts_agrees_with_scipy()
    {
        // trend.csv, rows TRI.Misra1a: scipy curve_fit on the NIST data; C0 is the value at x = 0, before the first reading.
        var rows = ReferenceFolder.Rows("nist/Misra1a.csv");
        var fit = ExponentialDecay.Fit(
            [.. rows.Select(row => double.Parse(row["x"], CultureInfo.InvariantCulture))],
            [.. rows.Select(row => double.Parse(row["y"], CultureInfo.InvariantCulture))],
            DecaySeries.Unbounded
        );
        ReferenceFolder.Case("trend.csv", "TRI.Misra1a.Cinf").ShouldAgree(fit.Floor);
        ReferenceFolder.Case("trend.csv", "TRI.Misra1a.C0").ShouldAgree(fit.ValueAt(0));
        ReferenceFolder.Case("trend.csv", "TRI.Misra1a.k").ShouldAgree(fit.Rate);
    }

    [Fact]
    public void Known_parts_that_equal_the_fitted_ones_change_nothing_else()
    {
        var free = ExponentialDecay.Fit(Hours, Ppm);
        var start = ExponentialDecay.Fit(Hours, Ppm, new ExponentialDecayOptions(start: free.Start));
        var floor = ExponentialDecay.Fit(Hours, Ppm, new ExponentialDecayOptions(floor: free.Floor));
        var rate = ExponentialDecay.Fit(Hours, Ppm, new ExponentialDecayOptions(rate: free.Rate));
        var two = ExponentialDecay.Fit(Hours, Ppm, new ExponentialDecayOptions(start: free.Start, floor: free.Floor));
        foreach (var fit in new[] { start, floor, rate, two })
        {
            fit.Rate.ShouldBe(free.Rate, 1e-7 * free.Rate);
            fit.Floor.ShouldBe(free.Floor, 1e-5 * free.Floor);
            fit.Start.ShouldBe(free.Start, 1e-7 * free.Start);
            fit.ResidualSumOfSquares.ShouldBe(free.ResidualSumOfSquares, 1e-8 * free.ResidualSumOfSquares);
            fit.DegreesOfFreedom.ShouldBeGreaterThan(free.DegreesOfFreedom);
        }

        // What is known carries no error, and knowing it makes the rest surer.
        floor.FloorStandardError.ShouldBe(0);
        floor.RateStandardError.ShouldBeLessThan(free.RateStandardError);
        start.StartStandardError.ShouldBe(0);
        rate.HasRateError.ShouldBeFalse();
    }

    [Fact]
    public void Weights_count_as_repeated_readings()
    {
        double[] weights = [1, 2, 1, 3, 1, 1, 2, 1, 1, 1];
        var repeated = Enumerable
            .Range(0, Hours.Length)
            .SelectMany(i => Enumerable.Repeat(i, (int)weights[i]))
            .ToArray();
        var weighted = ExponentialDecay.Fit(Hours, Ppm, weights, ExponentialDecayOptions.Default);
        var plain = ExponentialDecay.Fit([.. repeated.Select(i => Hours[i])], [.. repeated.Select(i => Ppm[i])]);
        weighted.Rate.ShouldBe(plain.Rate, 1e-9);
        weighted.Floor.ShouldBe(plain.Floor, 1e-6);
        weighted.ResidualSumOfSquares.ShouldBe(plain.ResidualSumOfSquares, 1e-6);
    }

    [Fact]
    public void Proportional_noise_satisfies_its_own_estimating_equations()
    {
        // Second route: at the solution the weighted residuals are orthogonal to each derivative of the curve.
        var fit = ExponentialDecay.Fit(Hours, Ppm, new ExponentialDecayOptions(DecayNoise.Proportional));
        Orthogonal(fit, (y, f) => (y - f) / (f * f));
    }

    [Fact]
    public void Logarithmic_noise_is_least_squares_in_the_logarithm()
    {
        var fit = ExponentialDecay.Fit(Hours, Ppm, new ExponentialDecayOptions(DecayNoise.Logarithmic));
        Orthogonal(fit, (y, f) => Math.Log(y / f) / f);
        fit.ResidualSumOfSquares.ShouldBe(
            Hours.Select((t, i) => Math.Pow(Math.Log(Ppm[i] / fit.ValueAt(t)), 2)).Sum(),
            1e-9
        );
    }

    [Fact]
    public void One_wet_bottle_is_flagged_and_hardly_moves_a_robust_fit()
    {
        // C05 of the cleanup folder: +260 ppm at 10 h. C05x, the reference without that point: k 0.10557, floor 50.50.
        var series = DecaySeries.Read("C05.csv");
        var analysis = ExponentialDecay.Analyze(series.Times, series.Values, new ExponentialDecayOptions(robust: true));
        analysis.FlaggedReadings.ShouldBe([5]);
        analysis.Residuals.Count.ShouldBe(12);
        analysis.Fit.Rate.ShouldBe(0.105572464959, 0.003);
        analysis.Fit.Floor.ShouldBe(50.5, 5);
        analysis.Rate(0.95).Contains(0.1056).ShouldBeTrue();
        ExponentialDecay.Fit(series.Times, series.Values).Rate.ShouldBeLessThan(0.08);
    }

    [Fact]
    public void Censored_likelihood_without_censored_readings_is_least_squares()
    {
        var plain = ExponentialDecay.Analyze(Hours, Ppm);
        var censored = CensoredDecay.Fit(Hours, Ppm, new bool[Hours.Length]);
        censored.Rate.ShouldBe(plain.Fit.Rate, 1e-6 * plain.Fit.Rate);
        censored.Floor.ShouldBe(plain.Fit.Floor, 1e-4 * plain.Fit.Floor);
        censored.StandardDeviation.ShouldBe(Math.Sqrt(plain.Fit.ResidualSumOfSquares / Hours.Length), 1e-5);
        censored.RateInterval(0.9).Lower.ShouldBe(plain.Rate(0.9).Lower, 1e-5);
        censored.RateInterval(0.9).Upper.ShouldBe(plain.Rate(0.9).Upper, 1e-5);
        censored.FloorInterval(0.9).Upper.ShouldBe(plain.Floor(0.9).Upper, 0.01);
        censored.FloorInterval(0.9).Lower.ShouldBe(plain.Floor(0.9).Lower, 0.01);
        censored.Reach(120, 0.9).Upper.ShouldBe(plain.Reach(120, 0.9).Upper, 0.005);
        censored.Reach(120, 0.9).Lower.ShouldBe(plain.Reach(120, 0.9).Lower, 0.005);
    }

    [Fact]
    public void Too_few_readings_above_the_limit_are_refused_by_name()
    {
        bool[] below = [false, false, false, true, true, true, true];
        CensoredDecay
            .Fit([0, 1, 2, 3, 4, 5, 6], [90, 50, 30, 20, 20, 20, 20], below)
            .Status.ShouldBe(ExponentialDecayStatus.TooFewAboveLimit);
        CensoredDecay
            .Fit([0, 1], [2, 1], [false, false])
            .Reach(1, 0.9)
            .Outcome.ShouldBe(TimeToValueOutcome.TooFewReadings);
    }

    [Fact]
    public void Units_the_order_of_rows_and_the_zero_of_the_clock_change_nothing() =>
        Gen.Select(Gen.Double[0.01, 100], Gen.Double[0.01, 100], Gen.Double[-1e4, 1e4], Gen.Int[0, 1000])
            .Holds(
                (unitOfTime, unitOfValue, shift, seed) =>
                {
                    var order = Enumerable.Range(0, Hours.Length).ToArray();
                    new Random(seed).Shuffle(order);
                    var fit = ExponentialDecay.Analyze(Hours, Ppm);
                    var other = ExponentialDecay.Analyze(
                        [.. order.Select(i => unitOfTime * Hours[i] + shift)],
                        [.. order.Select(i => unitOfValue * Ppm[i])]
                    );
                    other.Fit.Rate.ShouldBe(fit.Fit.Rate / unitOfTime, 1e-6 * fit.Fit.Rate / unitOfTime);
                    other.Fit.Floor.ShouldBe(fit.Fit.Floor * unitOfValue, 1e-5 * fit.Fit.Floor * unitOfValue);
                    other.ResidualAutocorrelation.ShouldBe(fit.ResidualAutocorrelation, 1e-5);
                    var (here, there) = (fit.Reach(120, 0.9), other.Reach(120 * unitOfValue, 0.9));
                    ((there.Upper - shift) / unitOfTime).ShouldBe(here.Upper, 1e-4 * here.Upper);
                    ((there.Lower - shift) / unitOfTime).ShouldBe(here.Lower, 1e-4 * here.Lower);
                },
                iter: 50
            );

    [Fact]
    public void Columns_give_what_single_fits_give()
    {
        int[] offsets = [0, 10, 10, 13, 23];
        double[] times = [.. Hours, 0, 1, 2, .. Hours];
        double[] values = [.. Ppm, 3, 2, 1, .. Ppm.Select(y => y / 2)];
        var fits = ExponentialDecay.FitColumns(offsets, times, values);
        fits[0].ShouldBe(ExponentialDecay.Fit(Hours, Ppm));
        fits[1].Status.ShouldBe(ExponentialDecayStatus.TooFewReadings);
        fits[2].Status.ShouldBe(ExponentialDecayStatus.TooFewReadings);
        fits[3].Floor.ShouldBe(fits[0].Floor / 2, 1e-6);
        Should.Throw<ArgumentException>(() => ExponentialDecay.FitColumns(new[] { 0, 5 }, times, values));
    }

    [Fact]
    public void A_span_fit_allocates_nothing()
    {
        ExponentialDecay.Fit(Hours, Ppm);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var i = 0; i < 100; i++)
        {
            ExponentialDecay.Fit(Hours, Ppm);
        }

        (GC.GetAllocatedBytesForCurrentThread() - before).ShouldBe(0);
    }

    [Fact]
    public void Following_residuals_put_a_warning_on_every_interval()
    {
        double[] times = [.. Enumerable.Range(0, 40).Select(i => (double)i)];
        double[] values = [.. times.Select(t => 100 + 900 * Math.Exp(-0.1 * t) + 30 * Math.Sin(t / 2))];
        var analysis = ExponentialDecay.Analyze(times, values);
        analysis.ResidualAutocorrelation.ShouldBeGreaterThan(0.5);
        analysis.Rate(0.9).CoverageInDoubt.ShouldBeTrue();
        analysis.Reach(200, 0.9).CoverageInDoubt.ShouldBeTrue();
        ExponentialDecay.Analyze(Hours, Ppm).Rate(0.9).CoverageInDoubt.ShouldBeFalse();
    }

    [Fact]
    public void The_residual_check_suggests_the_other_noise_when_it_is_wrong()
    {
        var random = new Random(5);
        double[] times = [.. Enumerable.Range(0, 24).Select(i => i / 5.0)];
        double[] values =
        [
            .. times.Select(t => (20 + 980 * Math.Exp(-t)) * (1 + 0.05 * DecayNoiseSource.Normal(random))),
        ];
        ExponentialDecay.Analyze(times, values).SuggestedNoise.ShouldBe(DecayNoise.Proportional);
        var right = new ExponentialDecayOptions(DecayNoise.Proportional);
        ExponentialDecay.Analyze(times, values, right).SuggestedNoise.ShouldBe(DecayNoise.Proportional);
    }

    [Fact]
    public void One_sided_ends_are_those_of_the_two_sided_interval_of_twice_the_doubt()
    {
        var analysis = ExponentialDecay.Analyze(Hours, Ppm);
        var done = analysis.Reach(120, 0.95, IntervalSide.Upper);
        done.HasLower.ShouldBeFalse();
        done.Upper.ShouldBe(analysis.Reach(120, 0.9).Upper, 1e-6);
        analysis.HalfLife(0.9).Lower.ShouldBe(Math.Log(2) / analysis.Rate(0.9).Upper, 1e-9);
        Should.Throw<ArgumentOutOfRangeException>(() => analysis.Rate(0.4, IntervalSide.Lower));
    }

    [Fact]
    public void Targets_below_every_floor_and_above_the_start_are_named()
    {
        var analysis = ExponentialDecay.Analyze(Hours, Ppm);
        analysis.Reach(-5, 0.9).Outcome.ShouldBe(TimeToValueOutcome.NeverReached);
        analysis.Reach(1000, 0.9).Outcome.ShouldBe(TimeToValueOutcome.AlreadyReached);
        analysis.Reach(120, 0.9).Outcome.ShouldBe(TimeToValueOutcome.Reached);
    }

    [Fact]
    public void A_start_that_is_the_floor_as_well_never_comes_below_it()
    {
        var flat = new ExponentialDecayOptions(start: 80, floor: 80);
        var below = ExponentialDecay.Analyze([0, 1, 2, 4, 8], [81.0, 79.5, 80.4, 80.2, 79.8], flat).Reach(50, 0.9);
        below.HasLower.ShouldBeFalse();
        below.HasUpper.ShouldBeFalse();
    }

    [Fact]
    public void Numbers_that_are_none_are_refused_and_equal_values_are_a_straight_line()
    {
        Should.Throw<ArgumentOutOfRangeException>(() => ExponentialDecay.Fit([0, 1, 2, double.NaN], [4, 3, 2, 1]));
        Should.Throw<ArgumentOutOfRangeException>(() =>
            ExponentialDecay.Fit([0, 1, 2, 3], [4, 3, double.PositiveInfinity, 1])
        );
        Should.Throw<ArgumentException>(() => ExponentialDecay.Fit([0, 1, 2], [4, 3, 2, 1]));
        Should.Throw<ArgumentException>(() => new ExponentialDecayOptions(start: 1, floor: 0, rate: 1));
        var flat = ExponentialDecay.Fit([0, 1, 2, 3, 4], [7, 7, 7, 7, 7]);
        flat.Status.ShouldBe(ExponentialDecayStatus.StraightLine);
        flat.ValueAt(10).ShouldBe(7, 1e-9);
    }

    private static void Orthogonal(ExponentialDecay fit, Func<double, double, double> pull)
    {
        double[] sums = new double[3];
        double[] sizes = new double[3];
        for (var i = 0; i < Hours.Length; i++)
        {
            var e = Math.Exp(-fit.Rate * Hours[i]);
            double[] gradient = [e, 1 - e, (fit.Floor - fit.Start) * Hours[i] * e];
            var r = pull(Ppm[i], fit.ValueAt(Hours[i]));
            for (var j = 0; j < 3; j++)
            {
                sums[j] += r * gradient[j];
                sizes[j] += Math.Abs(r * gradient[j]);
            }
        }

        for (var j = 0; j < 3; j++)
        {
            (Math.Abs(sums[j]) / sizes[j]).ShouldBeLessThan(1e-6);
        }
    }
}
