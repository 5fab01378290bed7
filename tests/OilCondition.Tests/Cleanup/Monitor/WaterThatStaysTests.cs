using OilCondition.Cleanup;
using OilCondition.Tests.Sampling;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Cleanup.Monitor;

/// <summary>Water that does not leave at all: titrations that rise or stand above saturation, a sensor at saturation. 400 mg/kg saturate the oil at 60 °C.</summary>
public class WaterThatStaysTests
{
    private static CleanupMonitorOptions Options(PlannedPerformance? planned = null) =>
        CleanupMonitorOptions.ReferredTo(
            Invented.Start,
            new TreatmentTarget(LiveRuns.Ppm(100)),
            Invented.Curve,
            TimeSpan.FromHours(4),
            LiveRuns.Celsius(20),
            TimeSpan.FromHours(24),
            planned: planned
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

    private static CleanupStatus WithPlan(params (double Hour, double Ppm)[] titrations) =>
        CleanupMonitor.Of(Options(LiveRuns.Planned()), titrations.Select(one => Titration(one.Hour, one.Ppm))).Status();

    private static CleanupPhase After(double hours, Func<double, double> ppm) =>
        CleanupMonitor.Of(Options(), Titrations(ppm, hours)).Status().Phase;

    /// <summary>From 420 to 700 within hours, where a leak of that size balances the unit: mixed after 6 h, set against the first sample at 12 h.</summary>
    [Fact]
    public void A_rise_to_a_level_above_saturation_is_a_stall_within_half_a_day()
    {
        double Leak(double hour) => Runs.Exponential(hour, 420, 700, 0.4);

        After(10, Leak).ShouldBe(CleanupPhase.FreeWater);
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
    [InlineData(10, CleanupPhase.FreeWater)]
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
            After(hour, at => 3000 - 60 * at).ShouldBe(CleanupPhase.FreeWater);
        }
    }

    /// <summary>A sensor at saturation sees no fall: after a day that is said, unless titrations beside it tell of one.</summary>
    [Fact]
    public void A_sensor_at_saturation_is_a_stall_after_a_day_unless_titrations_tell_of_a_fall()
    {
        var pinned = Enumerable.Range(0, 60).Select(i => LiveRuns.Sensor(i / 2.0, 5000, 60)).ToList();

        var early = CleanupMonitor.Of(Options(), pinned.Take(40)).Status();
        early.Phase.ShouldBe(CleanupPhase.FreeWater);
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
        beside.Phase.ShouldBe(CleanupPhase.FreeWater);
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

    /// <summary>
    /// Planned: 0.6 turnovers and 0.42 1/h, so mixed after 1.7 h and a time constant of 2.4 h. The samples at 2, 4 and 6 h tell; those up to 4 h do not. Of 700 mg/kg the plan
    /// takes 0.42 (700 − 20) mg/kg an hour.
    /// </summary>
    [Fact]
    public void With_its_plan_a_run_whose_water_stays_is_a_stall_within_six_hours()
    {
        (double Hour, double Ppm)[] stands = [(0, 700), (2, 705), (4, 695), (6, 700)];

        WithPlan(stands[..3]).Phase.ShouldBe(CleanupPhase.FreeWater);
        var status = WithPlan(stands);
        status.Phase.ShouldBe(CleanupPhase.Stalled);
        status.StallSign.ShouldBe(StallSign.BehindThePlan);
        status.Arrival.ShouldBeOfType<Arrival<DateTimeOffset>.Never>();
        status.StallEvidence.Single(one => one.Name == "planned fall per hour").Value!.Value.ShouldBe(0.42 * 680, 0.5);
    }

    /// <summary>Titrated each eight hours, several time constants: the second sample of mixed oil tells, unless one of the two lies below what was there.</summary>
    [Fact]
    public void Two_samples_a_time_constant_apart_are_enough_beside_a_plan()
    {
        WithPlan((0, 500), (8, 700)).Phase.ShouldBe(CleanupPhase.FreeWater);
        WithPlan((0, 500), (8, 700), (16, 720)).StallSign.ShouldBe(StallSign.BehindThePlan);

        // It has fallen by more than two samples differ, and then by nothing: the third tells.
        WithPlan((0, 900), (8, 640), (16, 700)).IsStalled.ShouldBeFalse();
        WithPlan((0, 900), (8, 640), (16, 700), (24, 690)).IsStalled.ShouldBeTrue();
    }

    /// <summary>
    /// From 900 to 20 mg/kg at a third, and at a fifth, of what was planned: slow, and no stall, in 60 runs each with a scatter of 3 %.
    /// </summary>
    [Theory]
    [InlineData(0.14)]
    [InlineData(0.084)]
    public void A_run_that_falls_slower_than_planned_is_no_stall(double rate)
    {
        var called = 0;
        for (var seed = 7300; seed < 7360; seed++)
        {
            var random = new Random(seed);
            var monitor = new CleanupMonitor(Options(LiveRuns.Planned()));
            for (var hour = 0.0; hour <= 40; hour += 2)
            {
                monitor.Take(Titration(hour, Runs.Exponential(hour, 900, 20, rate) * (1 + 0.03 * Runs.Normal(random))));
                if (monitor.Status().IsStalled)
                {
                    called++;
                    break;
                }
            }
        }

        called.ShouldBeLessThanOrEqualTo(1);
    }

    /// <summary>
    /// A sensor at saturation, 400 mg/kg, beside a plan that takes out 0.42 (400 − 20) = 160 mg/kg an hour. Of 1000 mg/kg 700 with the error of a titration are free: gone
    /// after 4.9 h, and after a quarter of the day it is said. Of 6000 it takes 39 h, and a day is no stall.
    /// </summary>
    [Theory]
    [InlineData(1000, 5.5, false)]
    [InlineData(1000, 6.5, true)]
    [InlineData(6000, 30, false)]
    [InlineData(6000, 50, true)]
    public void A_sensor_at_saturation_is_a_stall_once_its_free_water_would_have_left(
        double before,
        double hours,
        bool expected
    )
    {
        var pinned = Enumerable.Range(1, (int)(2 * hours)).Select(i => LiveRuns.Sensor(i / 2.0, 5000, 60));
        var status = CleanupMonitor.Of(Options(LiveRuns.Planned()), pinned.Prepend(Titration(0, before))).Status();

        status.IsStalled.ShouldBe(expected);
        if (expected)
        {
            status.StallSign.ShouldBe(StallSign.AtSaturation);
            status.StallEvidence.Single(one => one.Name == "content before").Value.ShouldBe(before);
        }
    }

    /// <summary>What rises is not said to leave: 280 to 458 mg/kg is more than two samples differ, 280 to 330 is not.</summary>
    [Fact]
    public void Samples_that_rise_are_said_to_rise()
    {
        static string Said(double latest) =>
            CleanupMonitor
                .Of(Options(), [Titration(0, 280), Titration(4, 350), Titration(8, latest)])
                .Status()
                .ToString();

        Said(458).ShouldContain("risen from 280 to 458 mg/kg: water comes in, or the circulation stirs up");
        Said(410).ShouldContain("risen");
        CleanupMonitor
            .Of(Options(), [Titration(0, 400), Titration(4, 470)])
            .Status()
            .ToString()
            .ShouldNotContain("risen");
    }

    /// <summary>A unit that would need 2·10⁹ h for a turnover: within the ranges of a plan, and no moment is that far away.</summary>
    [Fact]
    public void A_plan_that_hardly_moves_the_oil_is_waited_for_and_no_fault()
    {
        var idle = new PlannedPerformance(
            new CleanupLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerHour(1e-6)),
            LiveRuns.Oil870,
            Ratio.FromPercent(50),
            LiveRuns.Ppm(20)
        );

        var status = CleanupMonitor.Of(Options(idle), Titrations(_ => 600, 24)).Status();

        status.Phase.ShouldBe(CleanupPhase.FreeWater);
        status.Options.StallAfter.TotalHours.ShouldBe(8760);
    }

    /// <summary>The waiting time is no shorter than three planned time constants, 3/k: 75 h at 0.04 1/h.</summary>
    [Fact]
    public void The_waiting_time_is_no_shorter_than_three_planned_time_constants()
    {
        Options().StallAfter.TotalHours.ShouldBe(24);
        Options(LiveRuns.Planned()).StallAfter.TotalHours.ShouldBe(24);
        Options(LiveRuns.Planned(eta: 0.04 / 0.6)).StallAfter.TotalHours.ShouldBe(75, 1e-6);
    }
}
