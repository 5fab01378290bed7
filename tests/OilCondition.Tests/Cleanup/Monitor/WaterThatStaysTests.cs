using OilCondition.Cleanup;
using OilCondition.Tests.Sampling;
using OilCondition.Treatment;

namespace OilCondition.Tests.Cleanup.Monitor;

/// <summary>Water that does not leave at all: titrations that rise or stand above saturation, a sensor at saturation. 400 mg/kg saturate the oil at 60 °C.</summary>
public class WaterThatStaysTests
{
    private static CleanupMonitorOptions Options() =>
        CleanupMonitorOptions.ReferredTo(
            Invented.Start,
            new TreatmentTarget(LiveRuns.Ppm(100)),
            Invented.Curve,
            TimeSpan.FromHours(4),
            LiveRuns.Celsius(20),
            TimeSpan.FromHours(24)
        );

    private static CleanupReading Titration(double hour, double ppm, double celsius = 60) =>
        CleanupReading.Titration(Runs.At(hour), LiveRuns.Ppm(ppm), LiveRuns.Celsius(celsius));

    /// <summary>Every two hours, with a scatter of 2 %.</summary>
    private static IEnumerable<CleanupReading> Titrations(Func<double, double> ppm, double hours, int seed = 3)
    {
        var random = new Random(seed);
        for (var hour = 0.0; hour <= hours; hour += 2)
        {
            yield return Titration(hour, ppm(hour) * (1 + 0.02 * Runs.Normal(random)));
        }
    }

    private static CleanupPhase After(double hours, Func<double, double> ppm) =>
        CleanupMonitor.Of(Options(), Titrations(ppm, hours)).Status().Phase;

    /// <summary>From 420 to 700 within hours, where a leak of that size balances the unit: mixed after 6 h, set against the first sample at 12 h.</summary>
    [Fact]
    public void A_rise_to_a_level_above_saturation_is_a_stall_within_half_a_day()
    {
        double Leak(double hour) => Runs.Exponential(hour, 420, 700, 0.4);

        After(10, Leak).ShouldBe(CleanupPhase.FreeWaterLeaving);
        After(12, Leak).ShouldBe(CleanupPhase.Stalled);
        var status = CleanupMonitor.Of(Options(), Titrations(Leak, 12)).Status();
        status.StallSign.ShouldBe(StallSign.Rises);
        status.Reason.ShouldBe(CompletionReason.Stalled);
        status.Arrival.ShouldBeOfType<Arrival<DateTimeOffset>.Never>();
        status.StallEvidence.Single(one => one.Name == "first reading").Value!.Value.ShouldBe(420, 25);
    }

    /// <summary>A leak that no unit makes up: 10 mg/kg an hour without end.</summary>
    [Fact]
    public void A_rise_without_end_is_a_stall() =>
        CleanupMonitor
            .Of(Options(), Titrations(hour => 280 + 10 * hour, 24))
            .Status()
            .StallSign.ShouldBe(StallSign.Rises);

    [Theory]
    [InlineData(10, CleanupPhase.FreeWaterLeaving)]
    [InlineData(18, CleanupPhase.Stalled)]
    public void Titrations_that_stand_above_saturation_are_a_stall_within_18_hours(
        double hours,
        CleanupPhase expected
    ) => After(hours, _ => 600).ShouldBe(expected);

    /// <summary>Water of the bottom comes up in the first hours and leaves: 420, up to about 660 after 4 h, below 420 after 12 h.</summary>
    [Fact]
    public void Water_that_is_stirred_up_and_leaves_is_no_leak()
    {
        double Stirred(double hour) =>
            420 * Math.Exp(-0.08 * hour) + 900 * (Math.Exp(-0.15 * hour) - Math.Exp(-0.5 * hour));

        for (var hour = 2.0; hour <= 40; hour += 2)
        {
            After(hour, Stirred).ShouldNotBe(CleanupPhase.Stalled);
        }
    }

    /// <summary>
    /// 900 to 100 mg/kg with a time constant of 40 h, scatter 4 %, looked at each two hours for two days: of 60 runs no more than one is called; of 60 that stand at
    /// 900 nine of ten are called within 18 h.
    /// </summary>
    [Fact]
    public void A_time_constant_of_forty_hours_is_told_from_a_stand()
    {
        static bool IsCalled(Func<double, double> ppm, double until, int seed)
        {
            var random = new Random(seed);
            var monitor = new CleanupMonitor(Options());
            for (var hour = 0.0; hour <= until; hour += 2)
            {
                monitor.Take(Titration(hour, ppm(hour) * (1 + 0.04 * Runs.Normal(random))));
                if (monitor.Status().Phase == CleanupPhase.Stalled)
                {
                    return true;
                }
            }

            return false;
        }

        int[] seeds = [.. Enumerable.Range(7000, 60)];
        seeds
            .Count(seed => IsCalled(hour => Runs.Exponential(hour, 900, 100, 1 / 40.0), 48, seed))
            .ShouldBeLessThanOrEqualTo(1);
        seeds.Count(seed => IsCalled(_ => 900, 18, seed)).ShouldBeGreaterThanOrEqualTo(54);
    }

    /// <summary>
    /// A time constant of 40 h beside 500 mg/kg that are stirred up within 3 h: risen above the first sample, and not yet falling by much. A fall that is not
    /// excluded is no stall.
    /// </summary>
    [Fact]
    public void A_slow_fall_of_water_that_was_stirred_up_is_no_stall()
    {
        double Stirred(double hour) =>
            500 * Math.Exp(-0.025 * hour) + 500 * (Math.Exp(-0.025 * hour) - Math.Exp(-0.33 * hour));

        var called = 0;
        for (var seed = 7100; seed < 7140; seed++)
        {
            called += Enumerable
                .Range(6, 19)
                .Any(i => CleanupMonitor.Of(Options(), Titrations(Stirred, 2 * i, seed)).Status().IsStalled)
                ? 1
                : 0;
        }

        called.ShouldBeLessThanOrEqualTo(1);
    }

    /// <summary>3000 mg/kg that leave at 60 mg/kg an hour: free for 43 h, and never a stall.</summary>
    [Fact]
    public void Free_water_that_leaves_slowly_is_no_stall()
    {
        for (var hour = 2.0; hour <= 42; hour += 4)
        {
            After(hour, at => 3000 - 60 * at).ShouldBe(CleanupPhase.FreeWaterLeaving);
        }
    }

    /// <summary>A sensor at saturation sees no fall: after a day that is said, unless titrations beside it tell of one.</summary>
    [Fact]
    public void A_sensor_at_saturation_is_a_stall_after_a_day_unless_titrations_tell_of_a_fall()
    {
        var pinned = Enumerable.Range(0, 60).Select(i => LiveRuns.Sensor(i / 2.0, 5000, 60)).ToList();

        var early = CleanupMonitor.Of(Options(), pinned.Take(40)).Status();
        early.Phase.ShouldBe(CleanupPhase.FreeWaterLeaving);
        early.ToString().ShouldContain("cannot see whether water leaves: titrate");
        CleanupMonitor.Of(Options(), pinned.Take(11)).Status().ToString().ShouldNotContain("titrate");
        var status = CleanupMonitor.Of(Options(), pinned).Status();
        status.Phase.ShouldBe(CleanupPhase.Stalled);
        status.StallSign.ShouldBe(StallSign.AtSaturation);

        // It does not know that it never falls: no date, and why.
        status.Arrival.ShouldBeOfType<Arrival<DateTimeOffset>.NotDetermined>();
        status.ToString().ShouldContain("titrate");

        var beside = CleanupMonitor.Of(Options(), pinned.Concat(Titrations(hour => 2500 - 60 * hour, 29))).Status();
        beside.FollowsSensor.ShouldBeFalse();
        beside.Phase.ShouldBe(CleanupPhase.FreeWaterLeaving);
    }

    /// <summary>Cold oil warms from 20 to 60 °C in 10 h, its sensor near saturation all the while: what it reads rises with what the oil holds.</summary>
    [Fact]
    public void A_sensor_that_rises_with_the_oil_that_warms_is_no_stall()
    {
        var random = new Random(5);
        var monitor = new CleanupMonitor(Options());
        for (var hour = 0.0; hour <= 14; hour += 0.5)
        {
            var celsius = 60 - 40 * Math.Exp(-hour / 4);
            var saturation = Invented.Curve.SaturationAt(LiveRuns.Celsius(celsius)).Content.PartsPerMillion;
            monitor.Take(LiveRuns.Sensor(hour, (0.97 + 0.01 * Runs.Normal(random)) * saturation, celsius));
            var status = monitor.Status();
            status.Phase.ShouldNotBe(
                CleanupPhase.Stalled,
                $"{hour} h: {status}, {status.Curve.Status} {string.Join(", ", status.StallEvidence)}"
            );
        }
    }
}
