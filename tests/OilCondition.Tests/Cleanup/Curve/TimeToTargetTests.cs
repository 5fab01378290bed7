using OilCondition.Cleanup;
using OilCondition.Statistics;

namespace OilCondition.Tests.Cleanup.Curve;

public class TimeToTargetTests
{
    private static readonly double[] Hours = Runs.Evenly(12, 10);

    private static CleanupCurve Curve(double noise = 8, int seed = 1, double floor = 50)
    {
        var random = new Random(seed);
        return CleanupCurve.Fit(
            Runs.Moments(Hours),
            [.. Hours.Select(t => Runs.Exponential(t, 900, floor, 0.25) + noise * Runs.Normal(random))],
            new CleanupOptions(DecayNoise.Constant)
        );
    }

    /// <summary>The early end at one-sided 95 % is that of two sides at 90 %: an upper and a lower end at 5 % each.</summary>
    [Fact]
    public void One_side_at_half_the_uncertainty_is_the_end_of_both_sides()
    {
        var both = Curve().TimeTo(80, 0.9).ShouldBeOfType<Arrival<DateTimeOffset>.Expected>();

        Curve().Earliest(80, 0.95)!.Value.ShouldBe(both.Earliest, TimeSpan.FromSeconds(1));
        both.Confidence.ShouldBe(0.9);
        Curve()
            .TimeTo(80, 0.95)
            .ShouldBeOfType<Arrival<DateTimeOffset>.Expected>()
            .Latest.ShouldBeGreaterThan(both.Latest);
    }

    [Fact]
    public void An_open_end_is_open()
    {
        var curve = Curve(noise: 30, seed: 3, floor: 100);
        var open = curve.TimeTo(100, 0.9).ShouldBeOfType<Arrival<DateTimeOffset>.NotBefore>();

        curve.Earliest(100, 0.95)!.Value.ShouldBe(open.Earliest, TimeSpan.FromSeconds(1));
    }

    [Fact]
    public void A_level_outside_its_range_is_refused()
    {
        Should.Throw<ArgumentOutOfRangeException>(() => Curve().TimeTo(80, 0));
        Should.Throw<ArgumentOutOfRangeException>(() => Curve().TimeTo(80, 1));
        Should.Throw<ArgumentOutOfRangeException>(() => Curve().TimeTo(double.NaN));
        Curve().TimeTo(80, 0.5).Confidence.ShouldBe(0.5);
    }

    [Fact]
    public void The_observed_span_is_in_the_result()
    {
        var curve = Curve();

        curve.ObservedTimeConstants.ShouldBe(curve.RatePerHour * 10, 1e-12);
        curve.ObservedTimeConstants.ShouldBe(2.5, 0.4);
    }

    [Fact]
    public void Readings_that_follow_one_another_put_the_coverage_in_doubt()
    {
        // A slow swing of ±20 about the curve: each residual resembles the one before.
        double[] hours = Runs.Evenly(30, 12);
        double[] values = [.. hours.Select(t => Runs.Exponential(t, 900, 50, 0.3) + 20 * Math.Sin(2 * t))];
        var curve = CleanupCurve.Fit(Runs.Moments(hours), values, new CleanupOptions(detectSlowStart: false));

        curve.CoverageInDoubt.ShouldBeTrue();
        curve.TimeTo(60).CoverageInDoubt.ShouldBeTrue();
        curve.TimeTo(600).CoverageInDoubt.ShouldBeTrue();
        curve.BandAt(Runs.At(3), BandKind.Mean).CoverageInDoubt.ShouldBeTrue();
        var loop = new CleanupLoop(UnitsNet.Volume.FromLiters(100), UnitsNet.VolumeFlow.FromLitersPerMinute(1));
        new LoopPerformance(curve, loop).RemovalPerPass().CoverageInDoubt.ShouldBeTrue();
        Curve().TimeTo(80).CoverageInDoubt.ShouldBeFalse();
    }

    [Fact]
    public void Passed_by_the_best_curve_is_not_yet_shown_by_the_readings()
    {
        // Scatter 8 about a floor of 50: the curve ends near 120 at 10 h and is known there to some ±12.
        var curve = Curve();
        var end = curve.IntervalAt(Runs.At(10), 0.9);

        curve
            .TimeTo(end.Upper!.Value + 1)
            .ShouldBeOfType<Arrival<DateTimeOffset>.Already>()
            .IsDemonstrated.ShouldBeTrue();
        curve
            .TimeTo((curve.ValueAt(Runs.At(10)) + end.Upper!.Value) / 2)
            .ShouldBeOfType<Arrival<DateTimeOffset>.Already>()
            .IsDemonstrated.ShouldBeFalse();
    }

    /// <summary>The band of the curve holds the curve, that of a new reading holds the next reading; 1500 runs, standard error 0.8 points.</summary>
    [Fact]
    public void Both_bands_hold_their_coverage()
    {
        var mean = 0;
        var reading = 0;
        var random = new Random(11);
        for (var seed = 0; seed < 1500; seed++)
        {
            var curve = Curve(noise: 25, seed);
            var truth = Runs.Exponential(6, 900, 50, 0.25);
            mean += curve.BandAt(Runs.At(6), BandKind.Mean).Contains(truth) ? 1 : 0;
            var next = truth + 25 * Runs.Normal(random);
            reading += curve.BandAt(Runs.At(6), BandKind.NewReading).Contains(next) ? 1 : 0;
        }

        (mean / 15.0).ShouldBeInRange(87, 93);
        (reading / 15.0).ShouldBeInRange(87, 93);
        Should.Throw<ArgumentOutOfRangeException>(() => Curve().BandAt(Runs.At(-1), BandKind.Mean));
    }
}
