using CsCheck;
using OilCondition.Cleanup;
using OilCondition.Tests.Properties;
using OilCondition.Tests.Treatment;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Cleanup.Stall;

/// <summary>Why a run stalls. Shares are worked by hand from the balance of the tank.</summary>
public class StallDiagnosisTests
{
    private static RunConditions Conditions(double floor = 20, double? whenWarm = null, double celsius = 65) =>
        new(LiveRuns.Celsius(celsius), LiveRuns.Celsius(65), LiveRuns.Ppm(floor), LiveRuns.Ppm(whenWarm ?? floor));

    private static StallDiagnosis Of(
        CleanupCurve curve,
        double target,
        PlannedPerformance? planned = null,
        RunConditions? conditions = null
    ) => StallDiagnosis.Of(curve, LiveRuns.Ppm(target), planned ?? LiveRuns.Planned(), conditions ?? Conditions());

    [Fact]
    public void Reached_and_shown_is_done()
    {
        var diagnosis = Of(LiveRuns.Curve(0.7, 20, 0), 60);

        diagnosis.Verdict.ShouldBe(StallVerdict.Done);
        diagnosis.Causes.ShouldBeEmpty();
    }

    [Fact]
    public void Falling_as_planned_to_a_target_within_reach_is_not_stalled() =>
        Of(LiveRuns.Curve(0.7, 20, 0, hours: 7, count: 29), 30).Verdict.ShouldBe(StallVerdict.NotStalled);

    [Fact]
    public void A_floor_that_equals_the_physical_one_is_vacuum_or_sweep_air()
    {
        var diagnosis = Of(LiveRuns.Curve(0.7, 70, 0), 50, LiveRuns.Planned(floor: 70), Conditions(70));

        diagnosis.Verdict.ShouldBe(StallVerdict.Stalled);
        diagnosis.Causes[0].Kind.ShouldBe(StallCauseKind.VacuumOrSweepAir);
        diagnosis.Causes[0].Share.DecimalFractions.ShouldBe(1, 0.01);
        diagnosis.Causes[0].CheckCodes[0].ShouldBe(StallCheck.ChamberPressure);
    }

    /// <summary>Planned 20, observed 70, of which the cold explains all: floors 20 and 70.</summary>
    [Fact]
    public void Cold_oil_has_its_share_of_what_the_level_lies_above_the_plan()
    {
        var diagnosis = Of(LiveRuns.Curve(0.7, 70, 0), 50, conditions: Conditions(70, 20, celsius: 40));

        diagnosis.Causes.Select(one => one.Kind).ShouldBe([StallCauseKind.OilTooCold]);
        diagnosis.Causes[0].Share.DecimalFractions.ShouldBe(1, 0.01);
        diagnosis.IsCauseTold.ShouldBeTrue();
        diagnosis.Causes[0].Evidence.Single(one => one.Name == "process temperature").Value!.Value.ShouldBe(40, 1e-9);
    }

    /// <summary>Planned 20; 45 with the vacuum as it is in warm oil, 70 as it runs: half and half.</summary>
    [Fact]
    public void Vacuum_and_cold_share_what_their_gauges_explain()
    {
        var diagnosis = Of(LiveRuns.Curve(0.7, 70, 0), 50, conditions: Conditions(70, 45, celsius: 40));

        diagnosis
            .Causes.Select(one => one.Kind)
            .ShouldBe([StallCauseKind.PoorVacuum, StallCauseKind.OilTooCold], ignoreOrder: true);
        diagnosis.Causes[0].Share.DecimalFractions.ShouldBe(0.5, 0.01);
        diagnosis.Causes[1].Share.DecimalFractions.ShouldBe(0.5, 0.01);
    }

    /// <summary>100 g/h into 1740 kg is 57.47 mg/kg an hour, at 0.42 1/h 136.8 above the floor of 20, which is all that the plan does not know.</summary>
    [Fact]
    public void Ingress_lifts_the_level_over_the_physical_floor()
    {
        var diagnosis = Of(LiveRuns.Curve(0.7, 20, 100), 60);

        diagnosis.Verdict.ShouldBe(StallVerdict.Stalled);
        diagnosis.Causes.Select(one => one.Kind).ShouldBe([StallCauseKind.WaterIngress]);
        diagnosis.Causes[0].Share.DecimalFractions.ShouldBe(1, 0.005);
        diagnosis.Causes[0].Evidence.Single(one => one.Name == "water that comes in").Value!.Value.ShouldBe(100, 2);
        diagnosis.WaterIngress!.Estimate!.Value.GramsPerHour.ShouldBe(100, 2);
        diagnosis.WaterIngress.Lower!.Value.GramsPerHour.ShouldBeInRange(85, 100);
        diagnosis.WaterIngress.Upper!.Value.GramsPerHour.ShouldBeInRange(100, 115);
        diagnosis.Causes[0].CheckCodes[0].ShouldBe(StallCheck.WaterSources);
    }

    /// <summary>
    /// The same ingress of 20 g/h that the plan knew, at a quarter of the rate: level 20 + 11.494/0.105 = 129.47 beside a planned 20 + 11.494/0.42 = 47.37. All of the
    /// difference is the missing rate's.
    /// </summary>
    [Fact]
    public void A_missing_rate_lifts_the_level_too_and_is_told_from_ingress()
    {
        var diagnosis = Of(
            LiveRuns.Curve(0.175, 20, 20, hours: 60, count: 121),
            100,
            LiveRuns.Planned(gramPerHour: 20)
        );

        diagnosis.Verdict.ShouldBe(StallVerdict.Stalled);
        diagnosis.Causes.Select(one => one.Kind).ShouldBe([StallCauseKind.BypassOrShortCircuit]);
        diagnosis.Causes[0].Share.DecimalFractions.ShouldBe(1, 0.01);
        diagnosis.IsCauseTold.ShouldBeTrue();
    }

    /// <summary>
    /// 60 g/h where 20 were planned, at a quarter of the rate: 20 + 34.483/0.105 = 348.4, of which 129.5 would be there with the planned ingress. Above the planned
    /// 47.4 the missing rate has 82.1/301 = 0.273 and the water 218.9/301 = 0.727.
    /// </summary>
    [Fact]
    public void A_missing_rate_and_ingress_share_what_each_explains()
    {
        var diagnosis = Of(
            LiveRuns.Curve(0.175, 20, 60, start: 1500, hours: 60, count: 121),
            100,
            LiveRuns.Planned(gramPerHour: 20)
        );

        diagnosis.Causes[0].Kind.ShouldBe(StallCauseKind.WaterIngress);
        diagnosis.Causes[0].Share.DecimalFractions.ShouldBe(0.727, 0.01);
        diagnosis.Causes[1].Kind.ShouldBe(StallCauseKind.BypassOrShortCircuit);
        diagnosis.Causes[1].Share.DecimalFractions.ShouldBe(0.273, 0.01);
    }

    [Fact]
    public void Half_the_rate_to_a_target_within_reach_is_slow()
    {
        var diagnosis = Of(LiveRuns.Curve(0.35, 20, 0, hours: 14, count: 57), 50);

        diagnosis.Verdict.ShouldBe(StallVerdict.Slow);
        diagnosis.Causes.Single().Kind.ShouldBe(StallCauseKind.BypassOrShortCircuit);
        diagnosis.Causes[0].Share.DecimalFractions.ShouldBe(0.5, 0.02);
    }

    /// <summary>Slow is below nine tenths of the planned rate: 0.6/0.7 = 0.857 is, 0.65/0.7 = 0.929 is not.</summary>
    [Theory]
    [InlineData(0.6, StallVerdict.Slow)]
    [InlineData(0.65, StallVerdict.NotStalled)]
    public void Slow_is_below_nine_tenths_of_the_plan(double eta, StallVerdict expected) =>
        Of(LiveRuns.Curve(eta, 20, 0, hours: 7, count: 29), 30).Verdict.ShouldBe(expected);

    /// <summary>At 0.15 instead of 0.42 1/h one and a half time constants of the fall are over in 10 h, which are 4.2 planned ones: slow, not flat.</summary>
    [Fact]
    public void A_fall_by_more_than_one_time_constant_is_not_flat() =>
        Of(LiveRuns.Curve(0.25, 20, 0, hours: 10, count: 41), 100).Verdict.ShouldBe(StallVerdict.Slow);

    /// <summary>Three planned time constants are 3/0.42 = 7.1 h.</summary>
    [Theory]
    [InlineData(6.5, StallVerdict.NotDetermined)]
    [InlineData(7.5, StallVerdict.Stalled)]
    public void A_flat_log_is_stalled_after_three_planned_time_constants(double hours, StallVerdict expected)
    {
        var at = Runs.Evenly(49, hours);
        var random = new Random(7);

        Of(CleanupCurve.Fit(Runs.Moments(at), [.. at.Select(_ => 90 + Runs.Normal(random))]), 60)
            .Verdict.ShouldBe(expected);
    }

    [Fact]
    public void A_sensor_that_never_left_saturation()
    {
        var at = Runs.Evenly(30, 14.5);
        var curve = CleanupCurve.Fit(Runs.Moments(at), [.. at.Select(_ => new Reading(300, Qualifier.GreaterThan))]);

        var diagnosis = Of(curve, 100);

        diagnosis.Verdict.ShouldBe(StallVerdict.SensorAtSaturation);
        diagnosis.CheckCodes[0].ShouldBe(StallCheck.TitrationBesideSensor);
    }

    /// <summary>A level reached before the first reading has no rate: more water and less flow look alike, and both are named with what would tell.</summary>
    [Fact]
    public void A_flat_log_is_stalled_and_says_that_two_causes_look_the_same()
    {
        var at = Runs.Evenly(49, 24);
        var random = new Random(7);
        var curve = CleanupCurve.Fit(Runs.Moments(at), [.. at.Select(_ => 90 + Runs.Normal(random))]);

        var diagnosis = Of(curve, 60, LiveRuns.Planned(gramPerHour: 10));

        diagnosis.Verdict.ShouldBe(StallVerdict.Stalled);
        diagnosis
            .Causes.Select(one => one.Kind)
            .ShouldBe([StallCauseKind.WaterIngress, StallCauseKind.BypassOrShortCircuit], ignoreOrder: true);
        diagnosis.IsCauseTold.ShouldBeFalse();
        diagnosis.ToTellApart.ShouldContain("oil flow as measured");
        diagnosis.ToString().ShouldContain("cannot be told from these readings");
    }

    [Fact]
    public void Three_readings_tell_nothing() =>
        Of(LiveRuns.Curve(0.7, 20, 0, count: 3), 60).Verdict.ShouldBe(StallVerdict.NotDetermined);

    [Fact]
    public void An_early_log_is_not_determined() =>
        Of(LiveRuns.Curve(0.7, 20, 0, hours: 1, count: 6, scatter: 10), 60)
            .Verdict.ShouldBe(StallVerdict.NotDetermined);

    /// <summary>Floor of a unit without sweep air: S(T) p / p_sat(T), here by the curve's and the vapour's own functions.</summary>
    [Fact]
    public void Conditions_of_a_plan_are_the_physical_floor_at_the_gauges()
    {
        var plan = PurificationPlan.Create(Sump.Job(400, 100), Sump.Unit());

        var now = RunConditions.Of(plan, Sump.Celsius(50), Pressure.FromPascals(6510));

        double Floor(double celsius) =>
            Sump.Mineral.SaturationAt(Sump.Celsius(celsius)).Content.PartsPerMillion
            * 6510
            / OilCondition.Water.WaterVapour.SaturationPressure(Sump.Celsius(celsius)).Pascals;
        now.Floor.PartsPerMillion.ShouldBe(Floor(50), 1e-6);
        now.FloorWhenWarm.PartsPerMillion.ShouldBe(Floor(65), 1e-6);
        now.Floor.ShouldBeGreaterThan(now.FloorWhenWarm);
    }

    /// <summary>However a level comes about, the shares are in order, and those that are told make up the whole of what lies above the plan.</summary>
    [Fact]
    public void Shares_are_ranked_and_make_up_what_lies_above_the_plan() =>
        Gen.Select(Gen.Double[0.1, 0.9], Gen.Double[10, 80], Gen.Double[20, 200], Gen.Double[5, 80])
            .Holds(
                (eta, floor, gram, warm) =>
                {
                    var curve = LiveRuns.Curve(eta, floor, gram, hours: 8 / (0.6 * eta), scatter: 0.05);
                    var diagnosis = Of(curve, 1, LiveRuns.Planned(floor: 5), Conditions(floor, Math.Min(floor, warm)));
                    double[] shares = [.. diagnosis.Causes.Select(one => one.Share.DecimalFractions)];
                    shares.ShouldBe(shares.OrderByDescending(one => one));
                    shares.Sum().ShouldBeInRange(0.75, 1.1);
                },
                iter: 40
            );

    [Fact]
    public void The_sentences_name_cause_evidence_and_caution()
    {
        var text = Of(LiveRuns.Curve(0.7, 20, 100), 60).ToText();

        text.ShouldContain("Stalled");
        text.ShouldContain("water comes in: 100 %");
        text.ShouldContain("cooler, shaft seals, breather");
        text.ShouldContain("licensed practice");
    }

    [Fact]
    public void Every_diagnosis_carries_the_cautions_of_hot_oil_vacuum_and_electricity()
    {
        var cautions = Of(LiveRuns.Curve(0.7, 20, 0), 60).Cautions;

        cautions.ShouldContain(Caution.HotOil);
        cautions.ShouldContain(Caution.Vacuum);
        cautions.ShouldContain(Caution.ElectricalIsolation);
        cautions.ShouldContain(Caution.LocalCodes);
    }
}
