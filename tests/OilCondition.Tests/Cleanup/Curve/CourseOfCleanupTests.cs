using OilCondition.Cleanup;
using OilCondition.Statistics;
using UnitsNet;

namespace OilCondition.Tests.Cleanup.Curve;

/// <summary>What a cleanup says when its course is not one exponential, or is none at all.</summary>
public class CourseOfCleanupTests
{
    private static CleanupCurve Fit(Random random, double[] hours, Func<double, double> truth, double scatter) =>
        CleanupCurve.Fit(Runs.Moments(hours), [.. hours.Select(t => truth(t) + scatter * Runs.Normal(random))]);

    [Fact]
    public void A_slow_fall_behind_a_fast_one_is_not_called_never()
    {
        // 350 at one and 350 at a fifth an hour, down to 20: it reaches 60 at 10.8 h, and the best single exponential levels off far above.
        var random = new Random(21);
        var hours = Runs.Evenly(12, 3);
        var (never, warned) = (0, 0);
        for (var run = 0; run < 200; run++)
        {
            var curve = Fit(random, hours, t => 20 + 350 * Math.Exp(-t) + 350 * Math.Exp(-0.2 * t), 1.7);
            var answer = curve.TimeTo(60);
            never += answer is Arrival<DateTimeOffset>.Never ? 1 : 0;
            warned += curve.Course.IsContradicted ? 1 : 0;
            (curve.Course.IsContradicted && answer is not Arrival<DateTimeOffset>.NotDetermined).ShouldBeFalse();
            (curve.Course.IsContradicted && !curve.CoverageInDoubt).ShouldBeFalse();
        }

        (never / 2.0).ShouldBeLessThan(5, "seed 21");
        (warned / 2.0).ShouldBeGreaterThan(60, "seed 21");
    }

    [Fact]
    public void A_level_that_readings_follow_for_long_is_called_never()
    {
        var curve = Fit(new Random(22), Runs.Evenly(24, 6), t => 100 + 900 * Math.Exp(-t), 4);

        curve.TimeTo(60).ShouldBeOfType<Arrival<DateTimeOffset>.Never>();
        curve.LevelsOffAbove(60, 0.95).ShouldBeTrue();
        curve.LevelsOffAbove(99, 0.95).ShouldBeFalse();
    }

    [Fact]
    public void A_flat_run_is_not_at_its_target_before_the_steepest_fall_is()
    {
        // Second route: the earliest of the falls towards 0 within the limit for the sum of squares, by a grid over start and rate.
        double[] hours = Runs.Evenly(12, 44);
        double[] values = [214, 188, 203, 176, 221, 199, 190, 212, 186, 207, 193, 209];
        var curve = CleanupCurve.Fit(Runs.Moments(hours), values, new CleanupOptions(DecayNoise.Constant));
        var answer = curve.TimeTo(100).ShouldBeOfType<Arrival<DateTimeOffset>.NotBefore>();
        var least = ExponentialDecay.Fit(hours, values).ResidualSumOfSquares;
        var t = MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, 9, 0.95);
        var earliest = double.PositiveInfinity;
        for (var start = 190.0; start < 260; start += 0.2)
        {
            for (var rate = 0.0002; rate < 0.02; rate += 0.00001)
            {
                var squares = hours.Select((h, i) => Math.Pow(values[i] - start * Math.Exp(-rate * h), 2)).Sum();
                earliest =
                    squares <= least * (1 + t * t / 9) ? Math.Min(earliest, Math.Log(start / 100) / rate) : earliest;
            }
        }

        earliest.ShouldBeGreaterThan(100);
        (answer.Earliest - Runs.At(0)).TotalHours.ShouldBe(earliest, 0.03 * earliest);
    }

    [Fact]
    public void A_run_that_rises_is_never_at_a_target_below_it()
    {
        for (var seed = 0; seed < 40; seed++)
        {
            Fit(new Random(seed), Runs.Evenly(14, 30), t => 110 + 2.5 * t, 6)
                .TimeTo(90)
                .ShouldBeOfType<Arrival<DateTimeOffset>.Never>($"seed {seed}");
        }
    }

    /// <summary>Warming from 30 to 65 °C with a time constant of half an hour, 3 % a kelvin: the fall is one exponential on a clock that runs with the rate.</summary>
    [Fact]
    public void Oil_that_warms_up_is_read_with_its_temperature()
    {
        double Celsius(double t) => 65 - 35 * Math.Exp(-2 * t);
        double Truth(double t)
        {
            var clock = Enumerable
                .Range(0, 500)
                .Sum(i => Math.Exp(0.03 * (Celsius(t * (i + 0.5) / 500) - 65)) * t / 500);
            return 60 + 840 * Math.Exp(-clock);
        }

        double[] hours = Runs.Evenly(24, 2.5);
        var reached = 2.0;
        while (Truth(reached) > 120)
        {
            reached += 0.002;
        }

        var random = new Random(24);
        var (holds, later, doubted) = (0, 0, 0);
        for (var run = 0; run < 60; run++)
        {
            Reading[] readings = [.. hours.Select(t => new Reading(Truth(t) + 12 * Runs.Normal(random)))];
            Temperature?[] warm = [.. hours.Select(t => (Temperature?)Temperature.FromDegreesCelsius(Celsius(t)))];
            var curve = CleanupCurve.Fit(Runs.Moments(hours), readings, warm);
            curve.RatePerKelvin.ShouldNotBeNull();
            curve.LeftOutReadings.ShouldBeEmpty();
            holds += curve.RateIntervalPerHour().Contains(Math.Exp(0.03 * (Celsius(2.5) - 65))) ? 1 : 0;
            later += curve.TimeTo(120) is Arrival<DateTimeOffset>.Expected it && it.Latest < Runs.At(reached) ? 1 : 0;
            doubted += curve.CoverageInDoubt ? 1 : 0;
        }

        holds.ShouldBeGreaterThan(46, "seed 24");
        later.ShouldBeLessThan(9, "seed 24");
        doubted.ShouldBeLessThan(9, "seed 24");
    }

    [Fact]
    public void Without_scatter_the_effect_of_the_temperature_is_found()
    {
        double[] hours = Runs.Evenly(20, 4);
        double Celsius(double t) => 40 + Math.Min(20, 10 * t);

        // Closed form: at 0.05 a kelvin the clock runs as exp(0.5 t − 1) up to two hours, and plainly after them.
        double Clock(double t) => t < 2 ? (Math.Exp(0.5 * t) - 1) * Math.Exp(-1) / 0.5 : Clock(1.9999999) + t - 2;
        Reading[] readings =
        [
            .. hours.Select((t, i) => new Reading(50 + 700 * Math.Exp(-0.8 * Clock(t)) + (i % 2 == 0 ? 0.02 : -0.02))),
        ];
        Temperature?[] warm = [.. hours.Select(t => (Temperature?)Temperature.FromDegreesCelsius(Celsius(t)))];
        var curve = CleanupCurve.Fit(Runs.Moments(hours), readings, warm);

        curve.RatePerKelvin!.Value.ShouldBe(0.05, 0.0001);
        curve.RatePerHour.ShouldBe(0.8, 0.01);
        curve.ValueAt(Runs.At(1)).ShouldBe(50 + 700 * Math.Exp(-0.8 * Clock(1)), 1);
        curve.TimeTo(60).TryEstimate(out var at).ShouldBeTrue();
        (at - Runs.At(0)).TotalHours.ShouldBe(2 + Math.Log(70) / 0.8 - Clock(2), 0.05);
        CleanupCurve.Fit(Runs.Moments(hours), readings).RatePerKelvin.ShouldBeNull();
        Should.Throw<ArgumentException>(() => CleanupCurve.Fit(Runs.Moments(hours), readings, [null]));
    }
}
