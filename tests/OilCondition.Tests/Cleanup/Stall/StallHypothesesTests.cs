using OilCondition.Cleanup;
using OilCondition.Tests.Sampling;
using OilCondition.Tests.Treatment;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Cleanup.Stall;

/// <summary>
/// One thing at a time is amiss with a planned unit: 2000 L, 1200 L/h, removal 0.7 per pass, so 0.42 1/h; 65 °C, 30 hPa. Levels are worked out beside the library's
/// diagnosis, by S(T) p/p_sat(T) + g/(k M).
/// </summary>
public class StallHypothesesTests
{
    private const double Rate = 0.42;
    private const double Kilograms = 1700;
    private const double PlannedGrams = 5;

    private static double Saturation(double celsius) =>
        Sump.Turbine.SaturationAt(Sump.Celsius(celsius)).Content.PartsPerMillion;

    private static double Floor(double celsius, double hectopascal) =>
        Saturation(celsius) * hectopascal / WaterVapour.SaturationPressure(Sump.Celsius(celsius)).Hectopascals;

    private static double Lift(double gramPerHour) => 1000 * gramPerHour / Kilograms / Rate;

    private static PurificationPlan Plan(double airKilogramPerHour = 0, double hectopascal = 30) =>
        PurificationPlan.Create(
            Sump.Job(350, 60, Sump.Tank(start: 40, ingressGramPerHour: PlannedGrams), Sump.Oil(Sump.Turbine)),
            Sump.Unit(pascal: 100 * hectopascal, airKilogramPerHour: airKilogramPerHour)
        );

    /// <summary>A run of 36 h that falls from 0.8 of saturation to a level, with a scatter of 1 %.</summary>
    private sealed record Log(double TargetPpm, IEnumerable<CleanupReading> Readings)
    {
        public CleanupStatus With(PurificationPlan? plan) =>
            CleanupMonitor
                .Of(
                    CleanupMonitorOptions.ReferredTo(
                        Invented.Start,
                        new TreatmentTarget(LiveRuns.Ppm(TargetPpm)),
                        Sump.Turbine,
                        TimeSpan.FromHours(4),
                        Sump.Celsius(20),
                        planned: plan is null ? null : PlannedPerformance.Of(plan)
                    ),
                    Readings
                )
                .Status();
    }

    private static Log Run(
        double level,
        double celsius = 65,
        double rate = Rate,
        double target = 20,
        Func<double, double>? tankCelsius = null
    )
    {
        var random = new Random(11);
        var start = 0.8 * Saturation(tankCelsius?.Invoke(0) ?? celsius);
        return new Log(
            target,
            [
                .. Enumerable
                    .Range(0, 73)
                    .Select(i =>
                    {
                        var ppm = Runs.Exponential(i / 2.0, start, level, rate);
                        var tank = tankCelsius?.Invoke(i / 2.0) ?? celsius;
                        return CleanupReading.Sensor(
                            Runs.At(i / 2.0),
                            Ratio.FromDecimalFractions(ppm * (1 + 0.01 * Runs.Normal(random)) / Saturation(tank)),
                            Sump.Celsius(tank)
                        );
                    }),
            ]
        );
    }

    private static StallDiagnosis Why(
        Log log,
        PurificationPlan plan,
        double celsius = 65,
        double hectopascal = 30,
        MassFlow? sweepAir = null,
        MassFlow? condensate = null,
        bool confirmed = false
    ) =>
        StallDiagnosis.Of(
            log.With(plan),
            RunConditions.Of(
                plan,
                Sump.Celsius(celsius),
                Pressure.FromHectopascals(hectopascal),
                sweepAir,
                condensateFlow: condensate,
                pressureConfirmed: confirmed,
                temperatureConfirmed: confirmed
            )
        );

    private static StallCauseKind[] Kinds(StallDiagnosis why) => [.. why.Causes.Select(one => one.Kind)];

    /// <summary>At 40 °C the floor is four times that at 65 °C, the vacuum as planned: all of it is the cold's.</summary>
    [Fact]
    public void Heater_off_is_too_cold_and_told()
    {
        var why = Why(Run(Floor(40, 30) + Lift(PlannedGrams), 40), Plan(), celsius: 40);

        why.Verdict.ShouldBe(StallVerdict.Stalled);
        Kinds(why).ShouldBe([StallCauseKind.OilTooCold]);
        why.Causes[0].Share.Percent.ShouldBeInRange(90, 100);
        why.IsCauseTold.ShouldBeTrue();
    }

    [Fact]
    public void Too_little_vacuum_by_its_gauge_is_told()
    {
        var why = Why(Run(Floor(65, 90) + Lift(PlannedGrams)), Plan(), hectopascal: 90);

        Kinds(why).ShouldBe([StallCauseKind.PoorVacuum]);
        why.IsCauseTold.ShouldBeTrue();
    }

    /// <summary>30 g/h: water first, with its rate; a gauge that reads wrong would look the same, and what would tell is named.</summary>
    [Fact]
    public void Ingress_comes_first_and_is_not_sure_of_itself()
    {
        var why = Why(Run(Floor(65, 30) + Lift(30)), Plan());

        Kinds(why)[0].ShouldBe(StallCauseKind.WaterIngress);
        Kinds(why).ShouldContain(StallCauseKind.VacuumGaugeWrong);
        why.IsCauseTold.ShouldBeFalse();
        why.ToTellApart.ShouldContain("condensate collected in an hour");
        why.ToTellApart.ShouldContain(one => one.Contains("second gauge"));
        why.WaterIngress!.Lower!.Value.GramsPerHour.ShouldBeInRange(20, 30);
        why.WaterIngress.Upper!.Value.GramsPerHour.ShouldBeInRange(30, 40);
        why.ToText().ShouldContain("cannot be told from these readings");
    }

    /// <summary>Condensate of 30 g/h is what the ingress gives; condensate of the planned 5 g/h says that no more water leaves than planned: a gauge.</summary>
    [Theory]
    [InlineData(29, StallCauseKind.WaterIngress)]
    [InlineData(5, StallCauseKind.VacuumGaugeWrong)]
    public void Condensate_tells_ingress_from_a_gauge(double grams, StallCauseKind expected)
    {
        var why = Why(Run(Floor(65, 30) + Lift(30)), Plan(), condensate: MassFlow.FromGramsPerHour(grams));

        Kinds(why)[0].ShouldBe(expected);
        why.IsCauseTold.ShouldBeTrue();
    }

    [Fact]
    public void A_second_gauge_and_thermometer_leave_the_water()
    {
        var why = Why(Run(Floor(65, 30) + Lift(30)), Plan(), confirmed: true);

        Kinds(why).ShouldBe([StallCauseKind.WaterIngress]);
        why.IsCauseTold.ShouldBeTrue();
    }

    /// <summary>The pressure that would fit is worked back from the level: what was put in, 80 hPa behind a gauge that reads 30.</summary>
    [Fact]
    public void A_stuck_gauge_is_among_those_that_fit_with_the_pressure_that_would_fit()
    {
        var why = Why(Run(Floor(65, 80) + Lift(PlannedGrams)), Plan());

        why.IsCauseTold.ShouldBeFalse();
        var gauge = why.Causes.Single(one => one.Kind == StallCauseKind.VacuumGaugeWrong);
        gauge.Evidence.Single(one => one.Name == "chamber pressure that would fit").Value!.Value.ShouldBe(80, 4);
    }

    /// <summary>Planned with 2 kg/h of dry air and far below; without it S p/p_sat. Sweep air first, at 50 and at 75 hPa.</summary>
    [Theory]
    [InlineData(50)]
    [InlineData(75)]
    public void A_shut_sweep_valve_is_sweep_air(double hectopascal)
    {
        var log = Run(Floor(65, hectopascal) + Lift(PlannedGrams));
        var why = Why(log, Plan(2, hectopascal), hectopascal: hectopascal);

        Kinds(why)[0].ShouldBe(StallCauseKind.SweepAirMissing);
        why.ToTellApart.ShouldContain("flow and dryness of the sweep air");

        // Its own meter at zero tells; at the planned flow it leaves what else fits.
        var read = Why(log, Plan(2, hectopascal), hectopascal: hectopascal, sweepAir: MassFlow.Zero);
        Kinds(read).ShouldBe([StallCauseKind.SweepAirMissing]);
        read.IsCauseTold.ShouldBeTrue();
        Kinds(Why(log, Plan(2, hectopascal), hectopascal: hectopascal, sweepAir: MassFlow.FromKilogramsPerHour(2)))
            .ShouldNotContain(StallCauseKind.SweepAirMissing);
    }

    /// <summary>A gauge that reads 200 hPa beside a level that only 40 can give: not a word of poor vacuum alone.</summary>
    [Fact]
    public void A_level_below_what_the_gauges_allow_is_a_gauge()
    {
        var why = Why(Run(Floor(65, 60) + Lift(PlannedGrams)), Plan(), hectopascal: 200);

        why.Causes.ShouldContain(one => one.Kind == StallCauseKind.VacuumGaugeWrong);
    }

    /// <summary>Nothing is amiss, and the target of 20 lies below what the plan can do: that is said, not a fault.</summary>
    [Fact]
    public void A_target_below_the_plan_is_no_fault()
    {
        var why = Why(Run(Floor(65, 30) + Lift(PlannedGrams)), Plan());

        Kinds(why).ShouldBe([StallCauseKind.VacuumOrSweepAir]);
    }

    /// <summary>
    /// The tank stands at 45 °C for a day and a half, 22 turnovers, beside a chamber that reads 65: one thermometer is wrong. At 45 °C the oil levels off at the floor of that
    /// temperature, which was put in.
    /// </summary>
    [Fact]
    public void A_tank_much_colder_than_the_chamber_is_a_thermometer()
    {
        var log = Run(Floor(45, 30) + Lift(PlannedGrams), 45);
        var why = Why(log, Plan());

        Kinds(why)[0].ShouldBe(StallCauseKind.ThermometerWrong);
        Kinds(why).ShouldContain(StallCauseKind.WaterIngress);
        why.IsCauseTold.ShouldBeFalse();
        why.ToTellApart.ShouldContain(one => one.Contains("second thermometer"));
        why.Causes[0]
            .Evidence.Single(one => one.Name == "process temperature that the tank tells")
            .Value!.Value.ShouldBeInRange(45, 49);
        why.Causes[0]
            .Evidence.Single(one => one.Name == "level with oil as warm as the tank tells")
            .Value!.Value.ShouldBe(log.With(null).Curve.Floor, 0.1 * log.With(null).Curve.Floor);

        // A second thermometer in the chamber reads 65 as well: it is the tank's that is wrong, and the water stays.
        Kinds(Why(log, Plan(), confirmed: true)).ShouldNotContain(StallCauseKind.ThermometerWrong);
    }

    /// <summary>With sweep air the cold hardly lifts the level: it reads as planned, and yet the plan is not the only thing that would look so.</summary>
    [Fact]
    public void A_level_as_planned_beside_a_cold_tank_is_not_sure_of_the_plan()
    {
        var plan = Plan(2, 20);
        var level = PlannedPerformance.Of(plan).Level.PartsPerMillion;
        var why = Why(Run(level, 45, target: 0.7 * level), plan, hectopascal: 20);

        why.IsCauseTold.ShouldBeFalse();
        Kinds(why).ShouldBe([StallCauseKind.VacuumOrSweepAir, StallCauseKind.ThermometerWrong], ignoreOrder: true);
        why.ToTellApart.ShouldContain(one => one.Contains("second thermometer"));

        // In a tank at 62 °C the same level is the plan's, and in one that has been warmer for two hours only.
        Kinds(Why(Run(level, 62, target: 0.7 * level), plan, hectopascal: 20))
            .ShouldBe([StallCauseKind.VacuumOrSweepAir]);
        var warming = Run(level, 45, target: 0.7 * level, tankCelsius: hour => hour < 34 ? 36 : 45);
        Kinds(Why(warming, plan, hectopascal: 20)).ShouldBe([StallCauseKind.VacuumOrSweepAir]);
    }

    /// <summary>
    /// The uncertainty of a level L is √((0.07 L)² + 2²): 3.0 at 32. A level above the plan by two thirds of it may be more than the plan; one that agrees to a tenth is the
    /// plan's.
    /// </summary>
    [Theory]
    [InlineData(0.1, true)]
    [InlineData(0.67, false)]
    public void Only_a_level_that_agrees_is_surely_the_plan(double uncertainties, bool expected)
    {
        var planned = PlannedPerformance.Of(Plan()).Level.PartsPerMillion;
        var level = planned + uncertainties * Math.Sqrt(Math.Pow(0.07 * planned, 2) + 4);
        var why = Why(Run(level), Plan());

        Kinds(why).ShouldContain(StallCauseKind.VacuumOrSweepAir);
        why.IsCauseTold.ShouldBe(expected);
        (why.ToTellApart.Count > 0).ShouldBe(!expected);
    }

    private static Log Titrated(
        Func<double, double> ppm,
        double hours = 24,
        double every = 1,
        int seed = 12,
        double scatter = 0.02
    )
    {
        var random = new Random(seed);
        return new Log(
            60,
            [
                .. Enumerable
                    .Range(0, (int)(hours / every) + 1)
                    .Select(i =>
                        CleanupReading.Titration(
                            Runs.At(i * every),
                            LiveRuns.Ppm(ppm(i * every) * (1 + scatter * Runs.Normal(random))),
                            Sump.Celsius(65)
                        )
                    ),
            ]
        );
    }

    /// <summary>
    /// 600 rising by 10 mg/kg an hour: the mean from hour 6 to 24 is 750, so that g = 1.7 (10 + 0.42 (750 − floor)) g/h. The rise alone, 17 g/h, is more than the planned
    /// 5: water comes in for certain.
    /// </summary>
    [Fact]
    public void A_rise_is_water_that_comes_in_at_the_rate_of_the_balance()
    {
        var why = Why(Titrated(hour => 600 + 10 * hour), Plan());

        var byHand = Kilograms / 1000 * (10 + Rate * (750 - Floor(65, 30)));
        why.Verdict.ShouldBe(StallVerdict.Stalled);
        Kinds(why)[0].ShouldBe(StallCauseKind.WaterIngress);
        why.IsCauseTold.ShouldBeTrue();
        why.WaterIngress!.Estimate!.Value.GramsPerHour.ShouldBe(byHand, 0.06 * byHand);
        why.WaterIngress.Lower!.Value.GramsPerHour.ShouldBeInRange(0.7 * byHand, 0.95 * byHand);
        why.WaterIngress.Upper!.Value.GramsPerHour.ShouldBeInRange(1.05 * byHand, 1.3 * byHand);
    }

    /// <summary>
    /// Four titrations in six hours, scatter 3 %: they stand at 600, above saturation, or rise from 280 by 3 mg/kg an hour. In these hours the plan, 0.42 1/h, takes out nine
    /// tenths of it. Two do not tell, and the cause has its name.
    /// </summary>
    [Theory]
    [InlineData(600, 0)]
    [InlineData(280, 3)]
    public void Six_hours_of_titrations_tell_with_a_plan(double start, double perHour)
    {
        var plan = Plan();
        var told = 0;
        for (var seed = 500; seed < 540; seed++)
        {
            StallDiagnosis After(double hours) =>
                Why(Titrated(hour => start + perHour * hour, hours, 2, seed, 0.03), plan);
            After(2).Verdict.ShouldNotBe(StallVerdict.Stalled);
            var why = After(6);
            told += why.Verdict == StallVerdict.Stalled && Kinds(why)[0] == StallCauseKind.WaterIngress ? 1 : 0;
        }

        told.ShouldBeGreaterThanOrEqualTo(36);
    }

    /// <summary>
    /// Runs that fall as planned, or at six tenths of it, from below or above saturation to half of the target, looked at each two hours: none is said to stand still, in
    /// 60 runs of 18 h.
    /// </summary>
    [Theory]
    [InlineData(1, 300)]
    [InlineData(0.6, 900)]
    public void A_run_that_falls_slower_than_planned_does_not_stand_still(double share, double start)
    {
        var plan = Plan();
        var wrong = 0;
        for (var seed = 600; seed < 660; seed++)
        {
            for (var hours = 2; hours <= 18; hours += 2)
            {
                var log = Titrated(hour => Runs.Exponential(hour, start, 30, share * Rate), hours, 2, seed, 0.04);
                if (Why(log, plan).Verdict == StallVerdict.Stalled)
                {
                    wrong++;
                    break;
                }
            }
        }

        wrong.ShouldBeLessThanOrEqualTo(1);
    }

    /// <summary>
    /// A plan of 25 h for a turnover, and 400 mg/kg that circulation stirs up from the bottom within hours: at 18 h it stands higher than it began. A monitor of its own takes that
    /// for a leak; with the plan nothing is told before one turnover and three readings.
    /// </summary>
    [Fact]
    public void Water_that_is_stirred_up_is_no_leak_before_one_turnover()
    {
        var slow = PurificationPlan.Create(
            Sump.Job(
                600,
                60,
                Sump.Tank(litres: 30_000, start: 40, ingressGramPerHour: PlannedGrams),
                Sump.Oil(Sump.Turbine)
            ),
            Sump.Unit(pascal: 3000)
        );
        double Stirred(double hour) =>
            600 * Math.Exp(-0.028 * hour) + 400 * (Math.Exp(-0.028 * hour) - Math.Exp(-0.33 * hour));

        for (var hours = 6; hours <= 60; hours += 6)
        {
            var why = Why(Titrated(Stirred, hours, 2), slow);
            why.Verdict.ShouldNotBe(StallVerdict.Stalled, $"{hours} h");
            Titrated(Stirred, hours, 2).With(slow).Phase.ShouldNotBe(CleanupPhase.Stalled, $"{hours} h");
            if (hours <= 24)
            {
                why.Evidence.ShouldContain(one => one.Name == "time of one turnover");
            }
        }

        Why(Titrated(hour => 1000 - 400 * Math.Exp(-0.33 * hour), 60, 2), slow).Verdict.ShouldBe(StallVerdict.Stalled);
    }

    /// <summary>600 that stand: a leak that balances the unit, or a unit that takes nothing out. The condensate tells.</summary>
    [Fact]
    public void Standing_above_saturation_is_a_leak_or_an_idle_unit_and_the_condensate_tells()
    {
        var log = Titrated(_ => 600);

        var why = Why(log, Plan());
        Kinds(why)[0].ShouldBe(StallCauseKind.WaterIngress);
        Kinds(why).ShouldContain(StallCauseKind.BypassOrShortCircuit);
        why.IsCauseTold.ShouldBeFalse();
        why.ToTellApart.ShouldContain("condensate collected in an hour");

        var idle = Why(log, Plan(), condensate: MassFlow.Zero);
        Kinds(idle)[0].ShouldBe(StallCauseKind.BypassOrShortCircuit);
        idle.IsCauseTold.ShouldBeTrue();

        var leaking = Why(log, Plan(), condensate: MassFlow.FromGramsPerHour(390));
        Kinds(leaking)[0].ShouldBe(StallCauseKind.WaterIngress);
        leaking.WaterIngress!.Estimate!.Value.GramsPerHour.ShouldBe(390, 25);
    }

    /// <summary>
    /// A sensor at saturation for 30 h, 350 mg/kg before by plan, less than saturation: at least 0.9 of what the unit takes out there, 1.7 · 0.42 (S − floor) g/h.
    /// </summary>
    [Fact]
    public void A_sensor_at_saturation_gives_the_least_that_comes_in()
    {
        var log = new Log(
            60,
            Enumerable
                .Range(0, 61)
                .Select(i => CleanupReading.Sensor(Runs.At(i / 2.0), Ratio.FromPercent(100), Sump.Celsius(65)))
        );

        var why = Why(log, Plan());

        var byHand = 0.9 * Kilograms / 1000 * Rate * (Saturation(65) - Floor(65, 30));
        why.Verdict.ShouldBe(StallVerdict.Stalled);
        Kinds(why)[0].ShouldBe(StallCauseKind.WaterIngress);
        why.WaterIngress!.Lower!.Value.GramsPerHour.ShouldBe(byHand, 0.06 * byHand);
        why.WaterIngress.Upper.ShouldBeNull();
        why.WaterIngress.Estimate.ShouldBeNull();
    }

    /// <summary>
    /// Monitor and diagnosis never contradict each other: of drawn runs that fall, stand, rise or level off, titrated or by sensor, one says 'stalled' where the other does. All
    /// four are drawn often enough to be seen.
    /// </summary>
    [Fact]
    public void Monitor_and_diagnosis_say_the_same_of_a_stall()
    {
        var plan = Plan();
        var random = new Random(7700);
        var (stalled, not) = (0, 0);
        for (var run = 0; run < 120; run++)
        {
            var start = 100 + 700 * random.NextDouble();
            var level = start * (0.05 + 1.4 * random.NextDouble());
            var rate = Rate * Math.Pow(10, -1.5 * random.NextDouble());
            var hours = 6 + (int)(30 * random.NextDouble());
            double Course(double hour) => Runs.Exponential(hour, start, level, rate);
            var log =
                run % 2 == 0
                    ? Titrated(Course, hours, 2, run, 0.03)
                    : Run(Math.Min(level, 0.95 * Saturation(65)), rate: rate, target: 60);
            var status = log.With(plan);
            var why = Why(log, plan);

            (why.Verdict == StallVerdict.Stalled).ShouldBe(
                status.IsStalled,
                $"run {run}: {status}; {why}; {string.Join("; ", status.StallEvidence)}"
            );
            (status.Phase == CleanupPhase.Stalled).ShouldBe(status.IsStalled);
            (stalled, not) = status.IsStalled ? (stalled + 1, not) : (stalled, not + 1);
        }

        stalled.ShouldBeGreaterThan(30);
        not.ShouldBeGreaterThan(30);
    }

    [Fact]
    public void A_run_that_follows_no_water_or_no_plan_has_no_diagnosis()
    {
        static CleanupStatus Status(TreatmentTarget target, PlannedPerformance? planned) =>
            new CleanupMonitor(
                CleanupMonitorOptions.ReferredTo(
                    Invented.Start,
                    target,
                    Sump.Turbine,
                    TimeSpan.FromHours(4),
                    Sump.Celsius(20),
                    planned: planned
                )
            ).Status();
        static ArgumentException Refused(CleanupStatus status) =>
            Should.Throw<ArgumentException>(() =>
                StallDiagnosis.Of(status, RunConditions.Of(Plan(), Sump.Celsius(65), Pressure.FromHectopascals(30)))
            );

        var code = new TreatmentTarget(code: OilCondition.Cleanliness.CleanlinessCode.Parse("16/14/11"));
        Refused(Status(code, PlannedPerformance.Of(Plan()))).Message.ShouldContain("must follow water");
        var unplanned = Refused(Status(new TreatmentTarget(LiveRuns.Ppm(60)), null));
        unplanned.ParamName.ShouldBe("status");
        unplanned.Message.ShouldContain("without a plan");
    }
}
