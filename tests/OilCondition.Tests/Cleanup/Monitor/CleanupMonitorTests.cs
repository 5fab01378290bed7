using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Sampling;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Cleanup.Monitor;

/// <summary>A run followed reading by reading.</summary>
public class CleanupMonitorTests
{
    private static CleanupStatus At(double hour, CleanupMonitorOptions? options = null) =>
        CleanupMonitor
            .Of(options ?? LiveRuns.Warm(), LiveRuns.WholeRun().Where(one => one.At <= Runs.At(hour)))
            .Status();

    /// <summary>280 to 60 at 0.3 1/h passes 100 after ln(220/40)/0.3 = 5.68 h, 15.68 h from the start; four hours on it is met.</summary>
    [Theory]
    [InlineData(3, CleanupPhase.Warming)]
    [InlineData(8, CleanupPhase.Warming)]
    [InlineData(9.5, CleanupPhase.FreeWater)]
    [InlineData(14, CleanupPhase.Falling)]
    [InlineData(15.5, CleanupPhase.Falling)]
    [InlineData(16.5, CleanupPhase.Holding)]
    [InlineData(19.5, CleanupPhase.Holding)]
    [InlineData(20.5, CleanupPhase.AtTarget)]
    public void The_phases_of_a_run(double hour, CleanupPhase expected) => At(hour).Phase.ShouldBe(expected);

    [Fact]
    public void The_completion_and_its_interval_hold_the_truth()
    {
        var expected = At(14.5).CurveArrival.ShouldBeOfType<Arrival<DateTimeOffset>.Expected>();

        var truth = Runs.At(10 + Math.Log(5.5) / 0.3);
        expected.Earliest.ShouldBeLessThan(truth);
        expected.Latest.ShouldBeGreaterThan(truth);
        (expected.Latest - expected.Earliest).TotalHours.ShouldBeLessThan(0.5);
    }

    [Fact]
    public void Met_is_when_it_has_held_for_the_stated_time()
    {
        var status = At(30);

        // The first reading at or below is that of hour 16; a curve reading later.
        status.HoldingSince.ShouldBe(Runs.At(16));
        status.MetAt.ShouldBe(Runs.At(20));
        status.ReboundAt.ShouldBeNull();
    }

    [Fact]
    public void The_fit_begins_after_warming_and_free_water()
    {
        var curve = At(14.5).Curve;

        curve.FirstReadingAt.ShouldBe(Runs.At(10));
        curve.LeftOutReadings.Count.ShouldBe(20);
    }

    /// <summary>The whole run by the curve's own door, readings given at once: the second route.</summary>
    [Fact]
    public void The_curve_is_the_one_that_the_whole_log_gives()
    {
        var log = LiveRuns.WholeRun().ToList();
        var warm = log.First(one => one.Temperature!.Value.DegreesCelsius >= 45).At;
        var whole = CleanupCurve.Fit(
            [.. log.Select(one => one.At)],
            [
                .. log.Select(one =>
                {
                    var state = Invented.Curve.FromSensor(one.RelativeSaturation!.Value, one.Temperature!.Value);
                    return one.RelativeSaturation!.Value.DecimalFractions >= 0.995
                        ? new Reading(state.Total.PartsPerMillion, Qualifier.GreaterThan)
                        : new Reading(state.Total.PartsPerMillion);
                }),
            ],
            new CleanupOptions(startedAt: warm)
        );

        var curve = At(30).Curve;

        curve.RatePerHour.ShouldBe(whole.RatePerHour, 1e-9);
        curve.Floor.ShouldBe(whole.Floor, 1e-6);
        curve.Count.ShouldBe(whole.Count);
    }

    [Fact]
    public void Cold_oil_below_the_target_does_not_count()
    {
        var monitor = new CleanupMonitor(LiveRuns.Warm());
        for (var hour = 0.0; hour <= 12; hour += 0.5)
        {
            monitor.Take(LiveRuns.Sensor(hour, 50, celsius: 30));
        }

        var status = monitor.Status();
        status.Phase.ShouldBe(CleanupPhase.Warming);
        status.IsHolding.ShouldBeFalse();
        status.IsMet.ShouldBeFalse();
    }

    [Fact]
    public void Referred_to_a_temperature_cold_oil_counts_and_says_how_wet_it_is_there()
    {
        var monitor = new CleanupMonitor(
            CleanupMonitorOptions.ReferredTo(
                Invented.Start,
                new TreatmentTarget(LiveRuns.Ppm(60)),
                Invented.Curve,
                TimeSpan.FromHours(4),
                LiveRuns.Celsius(20)
            )
        );
        for (var hour = 0.0; hour <= 12; hour += 0.5)
        {
            monitor.Take(LiveRuns.Sensor(hour, 50, celsius: 30));
        }

        monitor.Status().Phase.ShouldBe(CleanupPhase.AtTarget);
        monitor.Status().RelativeSaturationAtReference!.Value.DecimalFractions.ShouldBe(0.5, 0.001);
    }

    [Fact]
    public void A_rebound_after_the_target_was_met_is_seen()
    {
        var monitor = CleanupMonitor.Of(LiveRuns.Warm(), LiveRuns.WholeRun());
        monitor.Take(LiveRuns.Sensor(31, 140));

        monitor.Status().Phase.ShouldBe(CleanupPhase.Rebounded);
        monitor.Status().ReboundAt.ShouldBe(Runs.At(31));
        monitor.Status().IsMet.ShouldBeFalse();
    }

    [Fact]
    public void After_a_rebound_it_can_be_met_again_and_the_rebound_stays_known()
    {
        var monitor = CleanupMonitor.Of(LiveRuns.Warm(), LiveRuns.WholeRun());
        monitor.Take(LiveRuns.Sensor(31, 140));
        for (var hour = 31.5; hour <= 36; hour += 0.5)
        {
            monitor.Take(LiveRuns.Sensor(hour, 70));
        }

        var status = monitor.Status();
        status.Phase.ShouldBe(CleanupPhase.AtTarget);
        status.MetAt.ShouldBe(Runs.At(35.5));
        status.ReboundAt.ShouldNotBeNull();
    }

    [Fact]
    public void Above_the_target_before_it_held_is_no_rebound()
    {
        var monitor = CleanupMonitor.Of(LiveRuns.Warm(), LiveRuns.WholeRun(18));
        monitor.Take(LiveRuns.Sensor(18.2, 101));

        monitor.Status().ReboundAt.ShouldBeNull();
        monitor.Status().IsHolding.ShouldBeFalse();
    }

    [Fact]
    public void A_gap_breaks_the_hold()
    {
        var monitor = new CleanupMonitor(LiveRuns.Warm(gapHours: 1));
        monitor.Take(LiveRuns.Sensor(1, 50));
        monitor.Take(LiveRuns.Sensor(6, 50));

        monitor.Status().Phase.ShouldBe(CleanupPhase.Holding);
        monitor.Status().HoldingSince.ShouldBe(Runs.At(6));
    }

    [Fact]
    public void A_titration_above_the_target_keeps_a_low_sensor_from_meeting_it()
    {
        var monitor = CleanupMonitor.Of(LiveRuns.Warm(), LiveRuns.WholeRun());
        monitor.Take(CleanupReading.Titration(Runs.At(18.25), LiveRuns.Ppm(130), LiveRuns.Celsius(50)));

        monitor.Status().FollowsSensor.ShouldBeTrue();
        monitor.Status().MetAt.ShouldBe(Runs.At(22.5));
    }

    [Fact]
    public void Titrations_alone_are_followed_and_free_water_is_left_out()
    {
        var monitor = new CleanupMonitor(LiveRuns.Warm());
        double[] ppm = [2000, 1500, 1000, 280, 214, 156, 117, 92];
        for (var i = 0; i < ppm.Length; i++)
        {
            monitor.Take(CleanupReading.Titration(Runs.At(2 * i), LiveRuns.Ppm(ppm[i]), LiveRuns.Celsius(50)));
        }

        var status = monitor.Status();
        status.FollowsSensor.ShouldBeFalse();
        status.Curve.LeftOutReadings.Count.ShouldBe(3);
        status.Phase.ShouldBe(CleanupPhase.Holding);
    }

    [Fact]
    public void A_run_that_levels_off_above_the_target_is_stalled() =>
        At(30, LiveRuns.Warm(targetPpm: 50)).Phase.ShouldBe(CleanupPhase.Stalled);

    /// <summary>A tenth of the fall is left after ln 10/0.3 = 7.68 h, 17.68 h from the start: stalled not sooner, though the level has long been known.</summary>
    [Theory]
    [InlineData(15, CleanupPhase.Falling)]
    [InlineData(17, CleanupPhase.Falling)]
    [InlineData(18, CleanupPhase.Stalled)]
    public void It_stalls_when_nine_tenths_of_the_fall_are_over(double hour, CleanupPhase expected) =>
        At(hour, LiveRuns.Warm(targetPpm: 50)).Phase.ShouldBe(expected);

    [Fact]
    public void What_is_done_with_a_reading_is_said()
    {
        var monitor = new CleanupMonitor(LiveRuns.Warm());

        monitor.Take(LiveRuns.Sensor(2, 200)).ShouldBe(ReadingReceipt.Taken);
        monitor.Take(LiveRuns.Sensor(2, 200)).ShouldBe(ReadingReceipt.Duplicate);
        monitor.Take(LiveRuns.Sensor(2, 210)).ShouldBe(ReadingReceipt.Conflicting);
        monitor.Take(LiveRuns.Sensor(1, 250)).ShouldBe(ReadingReceipt.TakenOutOfOrder);
        monitor.Take(LiveRuns.Sensor(2 + 10 / 3600.0, 200)).ShouldBe(ReadingReceipt.Thinned);
        monitor.Take(LiveRuns.Sensor(-1, 200)).ShouldBe(ReadingReceipt.BeforeStart);

        monitor.KeptCount.ShouldBe(2);
        monitor.CountOf(ReadingReceipt.Duplicate).ShouldBe(1);
        monitor.Status().Latest!.Value.Value.ShouldBe(210, 1e-6);
    }

    [Fact]
    public void A_code_is_held_like_the_water()
    {
        var options = CleanupMonitorOptions.WhileWarm(
            Invented.Start,
            new TreatmentTarget(code: CleanlinessCode.Parse("16/14/11")),
            Invented.Curve,
            TimeSpan.FromHours(4),
            LiveRuns.Celsius(45)
        );
        var monitor = new CleanupMonitor(options);
        for (var hour = 0; hour <= 12; hour++)
        {
            // 10 000, 2500, 250 per mL down to 1 % at 0.5 1/h; 16 ends at 640, 14 at 160, 11 at 20.
            var left = 0.01 + 0.99 * Math.Exp(-0.5 * hour);
            monitor.Take(
                CleanupReading.OfParticles(Runs.At(hour), new ParticleLevels(10_000 * left, 2500 * left, 250 * left))
            );
            if (hour == 4)
            {
                monitor.Status().Phase.ShouldBe(CleanupPhase.Falling);
                monitor
                    .Status()
                    .ParticleCurve.TimeTo(options.Code!)
                    .ShouldNotBeOfType<Arrival<DateTimeOffset>.NotDetermined>();
            }
        }

        // 640/10 000, 160/2500: left ≤ 0.064 from hour 5.8 on, so the reading of hour 6.
        monitor.Status().Phase.ShouldBe(CleanupPhase.AtTarget);
        monitor.Status().MetAt.ShouldBe(Runs.At(10));
    }

    [Fact]
    public void Nothing_read_is_said()
    {
        new CleanupMonitor(LiveRuns.Warm()).Status().Phase.ShouldBe(CleanupPhase.NoReadings);
        new CleanupMonitor(LiveRuns.Warm()).Status().AsOf.ShouldBe(Invented.Start);
    }

    /// <summary>Random logs, each also shuffled and with repeats: every order ends in the same answer, with cells that had to widen and without.</summary>
    [Theory]
    [InlineData(16)]
    [InlineData(1024)]
    public void Every_order_ends_in_the_same_answer(int mostCells) =>
        Gen.Select(
                Gen.Select(Gen.Int[0, 3600], Gen.Double[20, 400], Gen.Double[30, 60], Gen.Int[0, 3]).Array[0, 60],
                Gen.Int[0, 1_000_000]
            )
            .Holds(
                (log, seed) =>
                {
                    var readings = log.Select(one => Any(one.Item1, one.Item2, one.Item3, one.Item4)).ToList();
                    var random = new Random(seed);
                    var shuffled = readings
                        .Concat(readings.Take(10))
                        .Select(one => (one, random.Next()))
                        .OrderBy(one => one.Item2)
                        .Select(one => one.one)
                        .ToList();
                    var options = LiveRuns.Warm(holdHours: 3, mostCells: mostCells);

                    var monitor = new CleanupMonitor(options);
                    foreach (var reading in readings.OrderBy(one => one.At))
                    {
                        monitor.Take(reading);
                        monitor.KeptCount.ShouldBeLessThanOrEqualTo(3 * mostCells);
                    }

                    LiveRuns
                        .Answers(CleanupMonitor.Of(options, shuffled).Status())
                        .ShouldBe(LiveRuns.Answers(monitor.Status()));
                },
                iter: 60
            );

    /// <summary>Memory is bounded, and thinning keeps the fit: 2000 readings in at most 32 cells still give rate and floor of the truth.</summary>
    [Fact]
    public void Thinning_keeps_the_fit()
    {
        var random = new Random(11);
        var monitor = new CleanupMonitor(LiveRuns.Warm(mostCells: 32));
        for (var i = 0; i < 2000; i++)
        {
            var hour = i / 100.0;
            monitor.Take(LiveRuns.Sensor(hour, Runs.Exponential(hour, 280, 60, 0.3) + 0.5 * Runs.Normal(random)));
        }

        monitor.KeptCount.ShouldBeInRange(17, 32);
        monitor.Status().Curve.RatePerHour.ShouldBe(0.3, 0.01);
        monitor.Status().Curve.Floor.ShouldBe(60, 1.5);
    }

    /// <summary>A short rise between two kept readings is thinned away for the curve, never for holding.</summary>
    [Fact]
    public void A_thinned_reading_above_the_target_still_breaks_the_hold()
    {
        var monitor = new CleanupMonitor(LiveRuns.Warm(mostCells: 16));
        for (var i = 0; i <= 600; i++)
        {
            monitor.Take(LiveRuns.Sensor(i / 60.0, i == 301 ? 130 : 50));
        }

        monitor.Status().ReboundAt.ShouldNotBeNull();
        monitor.Status().ReboundAt.ShouldBe(Runs.At(301 / 60.0));
    }

    private static CleanupReading Any(int minute, double ppm, double celsius, int kind) =>
        kind switch
        {
            0 => LiveRuns.Sensor(minute / 60.0, ppm, celsius),
            1 => CleanupReading.Titration(Runs.At(minute / 60.0), LiveRuns.Ppm(ppm), LiveRuns.Celsius(celsius)),
            2 => CleanupReading.OfParticles(Runs.At(minute / 60.0), new ParticleLevels(10 * ppm, 2 * ppm, ppm / 10)),
            _ => CleanupReading.OfTemperature(Runs.At(minute / 60.0), LiveRuns.Celsius(celsius)),
        };
}
