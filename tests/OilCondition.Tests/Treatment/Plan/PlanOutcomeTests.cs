using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Tests.Properties;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Plan;

/// <summary>What a plan says when it does not get there, how it is ordered, and what it refuses.</summary>
public class PlanOutcomeTests
{
    private static readonly Reservoir Warm = Sump.Tank(start: 65, ambient: 20, loss: 20);

    /// <summary>22 inHg at sea level is 26.8 kPa absolute: water boils at 66.6 °C, above the oil.</summary>
    [Fact]
    public void Too_shallow_a_vacuum_without_sweep_removes_nothing()
    {
        var plan = PurificationPlan.Create(Sump.Job(900, 400), Sump.Unit(pascal: 26_824), Sump.Coarse);
        plan.WhyNot.ShouldBe(WhyNot.NothingEvaporates);
        plan.End.Evaporates.ShouldBeFalse();
        plan.Last.Water.Total.PartsPerMillion.ShouldBe(900, 1e-6);
        plan.Last.Limit.ShouldBe(RemovalLimit.TooColdOrShallow);
        plan.Arrival.ShouldBeOfType<Arrival<TimeSpan>.Never>();
    }

    [Fact]
    public void A_floor_above_the_target_is_named_with_the_floor()
    {
        var plan = PurificationPlan.Create(Sump.Job(900, 200), Sump.Unit(pascal: 20_051), Sump.Coarse);
        plan.WhyNot.ShouldBe(WhyNot.FloorAboveTarget);
        // WTR-094 of water.csv: 242.58 mg/kg at 65 °C and 24 inHg.
        plan.End.WaterFloor.PartsPerMillion.ShouldBe(242.58, 0.03);
        plan.Last.Water.Total.PartsPerMillion.ShouldBe(242.58, 0.2);
    }

    /// <summary>Ingress of 100 g/h: the level lies about r/(η ρ Q) = 0.1/(0.7 × 1.2 m³/h × 840 kg/m³ in the warm pump) = 141.7 mg/kg above the floor.</summary>
    [Fact]
    public void Ingress_holds_the_level_above_the_floor()
    {
        var job = Sump.Job(900, 150, Sump.Tank(ingressGramPerHour: 100));
        var plan = PurificationPlan.Create(job, Sump.Unit(), Sump.Coarse);
        plan.WhyNot.ShouldBe(WhyNot.IngressTooHigh);
        plan.End.WaterFloor.PartsPerMillion.ShouldBe(78.7, 0.1);
        var above = plan.End.WaterLevel!.Value.PartsPerMillion - plan.End.WaterFloor.PartsPerMillion;
        above.ShouldBe(141.7, 0.6);
        plan.Last.Water.Total.PartsPerMillion.ShouldBe(plan.End.WaterLevel!.Value.PartsPerMillion, 0.2);
    }

    [Fact]
    public void Ingress_beyond_the_capacity_has_no_level()
    {
        var job = Sump.Job(900, 150, Sump.Tank(ingressGramPerHour: 100_000), horizonHours: 2);
        var plan = PurificationPlan.Create(job, Sump.Unit());
        plan.WhyNot.ShouldBe(WhyNot.IngressTooHigh);
        plan.End.WaterLevel.ShouldBeNull();
        plan.Last.Water.Total.PartsPerMillion.ShouldBeGreaterThan(900);
    }

    [Fact]
    public void A_pump_that_cannot_start_stops_the_plan()
    {
        var job = Sump.Job(900, 150, Sump.Tank(start: 5, ambient: 5), Sump.Oil(line: Sump.Vg460));
        var plan = PurificationPlan.Create(job, Sump.Unit(startViscosity: 2000));
        plan.WhyNot.ShouldBe(WhyNot.PumpCannotStart);
        plan.States.Count.ShouldBe(1);
        PurificationPlan
            .Create(
                Sump.Job(900, 150, Sump.Tank(start: 30, ambient: 5), Sump.Oil(line: Sump.Vg460)),
                Sump.Unit(startViscosity: 2000)
            )
            .Arrival.ShouldBeExpected();
    }

    [Fact]
    public void The_horizon_ends_a_plan_that_would_get_there()
    {
        var plan = PurificationPlan.Create(Sump.Job(900, 100, horizonHours: 3), Sump.Unit());
        plan.WhyNot.ShouldBe(WhyNot.TakesTooLong);
        plan.Last.Time.TotalHours.ShouldBe(3, 1e-9);
    }

    [Fact]
    public void Parts_of_a_target_are_told_apart()
    {
        var there = PurificationPlan.Create(Sump.Job(90, 100), Sump.Unit());
        there.Arrival.ShouldBeAlready();
        there.Particles.ShouldBeNull();

        var dirty = PurificationPlan.Create(Sump.Job(90, 100, targetCode: "16/14/11"), Sump.Unit(filter: Sump.Filter));
        dirty.Water.ShouldBeAlready();
        dirty.Arrival.ShouldBeExpected();
        dirty.Arrival.Time().ShouldBe(dirty.Particles.Time());

        // No more particles come in than the target allows, or they do.
        var ingression = new ParticleIngression(2e8, 8e7, 4e6);
        var job = Sump.Job(500, 100, Sump.Tank(ingression: ingression), targetCode: "15/13/10");
        var dusty = PurificationPlan.Create(job, Sump.Unit(filter: Sump.Filter), Sump.Coarse);
        dusty.Water.ShouldBeExpected();
        dusty.WhyNot.ShouldBe(WhyNot.IngressTooHigh);
    }

    /// <summary>Dry enough at the start, but while the filter works more water comes in than the cold unit takes out.</summary>
    [Fact]
    public void A_part_that_is_lost_again_is_not_met()
    {
        var job = Sump.Job(90, 100, Sump.Tank(ingressGramPerHour: 100), targetCode: "16/14/11");
        var plan = PurificationPlan.Create(job, Sump.Unit(filter: Sump.Filter));
        plan.Particles.ShouldBeExpected();
        plan.Last.Water.Total.PartsPerMillion.ShouldBeGreaterThan(110);
        plan.WhyNotWater.ShouldBe(WhyNot.IngressTooHigh);
        plan.WhyNot.ShouldBe(WhyNot.IngressTooHigh);
    }

    /// <summary>
    /// The same gauge reading is a deeper vacuum at altitude: 24 inHg at 500 m is 954.608 − 812.733 = 141.875 hPa (ISO 2533 table), and the floor
    /// 302.94 × 14 187/25 042 = 171.6 mg/kg, against 242.6 at sea level.
    /// </summary>
    [Fact]
    public void A_gauge_reads_deeper_at_altitude()
    {
        var vacuum = GaugeVacuum.FromReading(
            Pressure.FromInchesOfMercury(24),
            StandardAtmosphere.PressureAt(Length.FromMeters(500))
        );
        var chamber = new VacuumChamber(vacuum.AbsolutePressure);
        PurificationPlan
            .Create(Sump.Job(900, 299_000), Sump.Unit(chamber: chamber))
            .End.WaterFloor.PartsPerMillion.ShouldBe(171.6, 0.1);
    }

    /// <summary>A target of 30 % at 20 °C is 0.3 × 52.876 mg/kg (water.csv, set M2).</summary>
    [Fact]
    public void A_target_can_be_a_relative_saturation_at_a_temperature() =>
        TreatmentTarget
            .DryAt(Sump.Mineral, Sump.Celsius(20), Ratio.FromPercent(30))
            .Water!.Value.PartsPerMillion.ShouldBe(15.863, 0.001);

    [Theory]
    [InlineData(60, 150, 60, PurificationPlan.TemperatureLimit.Oil)]
    [InlineData(150, 55, 55, PurificationPlan.TemperatureLimit.Seals)]
    [InlineData(80, 80, 65, PurificationPlan.TemperatureLimit.None)]
    public void The_lowest_limit_holds_the_temperature(
        double oil,
        double seals,
        double celsius,
        PurificationPlan.TemperatureLimit cap
    )
    {
        var job = Sump.Job(900, 400, Sump.Tank(highest: seals), Sump.Oil(highest: oil));
        var plan = PurificationPlan.Create(job, Sump.Unit());
        plan.HeldDownBy.ShouldBe(cap);
        plan.ProcessTemperature.DegreesCelsius.ShouldBe(celsius, 1e-9);
        plan.States.Max(state => state.ProcessTemperature.DegreesCelsius).ShouldBe(celsius, 1e-6);
        plan.Cautions.ShouldContain(Caution.FlashPoint);
    }

    [Fact]
    public void A_curve_used_outside_its_range_is_flagged()
    {
        PurificationPlan
            .Create(Sump.Job(900, 600, oil: Sump.Oil(Sump.Turbine)), Sump.Unit())
            .IsExtrapolated.ShouldBeFalse();
        PurificationPlan
            .Create(Sump.Job(900, 600, Sump.Tank(start: 15), Sump.Oil(Sump.Turbine)), Sump.Unit())
            .IsExtrapolated.ShouldBeTrue();
    }

    /// <summary>Where the heater holds the temperature; with too small a heater more flow is colder oil and a higher floor: the last lines.</summary>
    [Fact]
    public void More_flow_is_never_slower_while_the_heater_holds_the_temperature()
    {
        Gen.Select(
                Gen.Double[5, 60],
                Gen.Double[1.01, 3],
                Gen.Double[150, 5000],
                Gen.Double[2000, 12_000],
                Gen.Double[0, 2]
            )
            .Holds(
                (flow, more, ppm, pascal, air) =>
                {
                    var job = Sump.Job(ppm, 140, Warm);
                    double Hours(double litres) =>
                        PurificationPlan
                            .Create(
                                job,
                                Sump.Unit(litres, kilowatt: 500, pascal: pascal, airKilogramPerHour: air),
                                Sump.Coarse
                            )
                            .Arrival.TryEstimate(out var time)
                            ? time.TotalHours
                            : 0;
                    Hours(flow * more).ShouldBeLessThanOrEqualTo(Hours(flow) * (1 + 1e-6));
                },
                iter: 15
            );

        PurificationPlan Weak(double flow) =>
            PurificationPlan.Create(Sump.Job(900, 299_000), Sump.Unit(flow, kilowatt: 1.5));
        Weak(60).End.WaterFloor.ShouldBeGreaterThan(Weak(20).End.WaterFloor);
        Weak(60).HeaterHolds.ShouldBeFalse();
        PurificationPlan.Create(Sump.Job(900, 299_000), Sump.Unit()).HeaterHolds.ShouldBeTrue();
    }

    /// <summary>From cold, with heaters of every size: where more flow is slower, the heater was at its limit, and the plan says so.</summary>
    [Fact]
    public void Where_more_flow_is_slower_the_heater_is_at_its_limit()
    {
        Gen.Select(Gen.Double[5, 60], Gen.Double[1.2, 3], Gen.Double[1, 8], Gen.Double[20, 60], Gen.Double[3000, 9000])
            .Holds(
                (flow, more, kilowatt, start, pascal) =>
                {
                    var job = Sump.Job(900, 140, Sump.Tank(start: start));
                    PurificationPlan Plan(double litres) =>
                        PurificationPlan.Create(
                            job,
                            Sump.Unit(litres, kilowatt: kilowatt, pascal: pascal),
                            TimeSpan.FromHours(1)
                        );
                    var (less, fast) = (Plan(flow), Plan(flow * more));
                    var isSlower =
                        less.Arrival is Arrival<TimeSpan>.Expected slow
                        && !(
                            fast.Arrival is Arrival<TimeSpan>.Expected quick
                            && quick.Estimate.TotalHours <= slow.Estimate.TotalHours * (1 + 1e-6)
                        );
                    (!isSlower || fast.HeaterLimitedUntil.HasValue).ShouldBeTrue();
                    (fast.HeaterLimitedUntil ?? TimeSpan.Zero).TotalHours.ShouldBeLessThanOrEqualTo(
                        fast.Last.Time.TotalHours
                    );
                },
                iter: 25
            );

        // 1 kW for 2000 L, near the boiling point of the chamber: three times the flow is an hour more.
        PurificationPlan Weak(double flow) =>
            PurificationPlan.Create(
                Sump.Job(900, 140, Sump.Tank(start: 40)),
                Sump.Unit(flow, kilowatt: 1, pascal: 8500),
                TimeSpan.FromHours(1)
            );
        Weak(60).Arrival.Hours().ShouldBeGreaterThan(Weak(20).Arrival.Hours() + 1);
        Weak(60).HeaterLimitedUntil!.Value.TotalHours.ShouldBeGreaterThan(20);

        // A cold start: at its limit until the process is within a tenth of a kelvin of the temperature at which it then stays.
        var warming = PurificationPlan.Create(
            Sump.Job(900, 140, Sump.Tank(start: 20)),
            Sump.Unit(kilowatt: 12),
            TimeSpan.FromMinutes(15)
        );
        warming.HeaterHolds.ShouldBeTrue();
        var set = warming.States.Max(state => state.ProcessTemperature.DegreesCelsius);
        var after = warming.States.Where(state => state.Time > warming.HeaterLimitedUntil).ToList();
        after.ShouldAllBe(state => state.ProcessTemperature.DegreesCelsius >= set - 0.1);
        after.Count.ShouldBeLessThan(warming.States.Count - 3);
        warming.States[^(after.Count + 1)].ProcessTemperature.DegreesCelsius.ShouldBeInRange(set - 10, set - 0.1);

        // Warm, lagged, a large heater: never at its limit.
        PurificationPlan.Create(Sump.Job(900, 140, Warm), Sump.Unit(kilowatt: 500)).HeaterLimitedUntil.ShouldBeNull();
    }

    [Fact]
    public void More_vacuum_heat_or_dry_sweep_is_never_a_higher_floor() =>
        Gen.Select(
                Gen.Double[35, 90],
                Gen.Double[0, 10],
                Gen.Double[500, 60_000],
                Gen.Double[0.1, 1],
                Gen.Double[0.05, 5]
            )
            .Holds(
                (celsius, warmer, pascal, share, air) =>
                {
                    double Floor(double t, double p, SweepAir sweep) =>
                        PurificationPlan
                            .Create(
                                Sump.Job(900, 299_000),
                                Sump.Unit(
                                    kilowatt: 100,
                                    celsius: t,
                                    chamber: new VacuumChamber(Pressure.FromPascals(p), sweep)
                                )
                            )
                            .End.WaterFloor.PartsPerMillion;
                    var humid = SweepAir.FromAir(
                        MassFlow.FromKilogramsPerHour(air),
                        HumidAir.FromRelativeHumidity(Sump.Celsius(20), RelativeHumidity.FromPercent(50)),
                        StandardAtmosphere.SeaLevel
                    );
                    Floor(celsius, pascal * share, humid)
                        .ShouldBeLessThanOrEqualTo(Floor(celsius, pascal, humid) + 1e-9);
                    Floor(celsius, pascal, humid)
                        .ShouldBeLessThanOrEqualTo(Floor(celsius, pascal, SweepAir.None) + 1e-9);
                    Floor(celsius, pascal, humid).ShouldBeGreaterThan(0);

                    // Warmer oil under the same vapour: p_sat rises faster than S, as long as the vapour is below saturation.
                    if (pascal < WaterVapour.SaturationPressure(Sump.Celsius(celsius)).Pascals)
                    {
                        Floor(celsius + warmer, pascal, humid)
                            .ShouldBeLessThanOrEqualTo(Floor(celsius, pascal, humid) + 1e-9);
                    }
                },
                iter: 100
            );

    [Fact]
    public void More_ingress_is_never_cleaner() =>
        Gen.Select(Gen.Double[0, 200], Gen.Double[0, 200], Gen.Double[100, 3000])
            .Holds(
                (gram, more, ppm) =>
                {
                    PurificationPlan Plan(double ingress) =>
                        PurificationPlan.Create(
                            Sump.Job(ppm, 1, Sump.Tank(ingressGramPerHour: ingress), horizonHours: 10),
                            Sump.Unit(),
                            TimeSpan.FromHours(10)
                        );
                    var (clean, wet) = (Plan(gram), Plan(gram + more));
                    wet.Last.Water.Total.PartsPerMillion.ShouldBeGreaterThanOrEqualTo(
                        clean.Last.Water.Total.PartsPerMillion - 1e-6
                    );
                    (wet.End.WaterLevel ?? wet.End.WaterFloor).PartsPerMillion.ShouldBeGreaterThanOrEqualTo(
                        (clean.End.WaterLevel ?? clean.End.WaterFloor).PartsPerMillion - 1e-6
                    );
                },
                iter: 25
            );

    /// <summary>Whatever a user describes within the ranges: a plan comes out, finite, balanced, and with the content where its outcome says.</summary>
    [Fact]
    public void Any_task_gives_a_plan() =>
        Gen.Select(
                Gen.Select(Gen.Double[-40, 120], Gen.Double[-40, 60], Gen.Double[0, 2000], Gen.Double[0, 5000]),
                Gen.Select(Gen.Double[0, 300_000], Gen.Double[0, 3000], Gen.Double[10, 110_000], Gen.Double[0, 20]),
                Gen.Select(Gen.Double[0.01, 500], Gen.Double[0, 100], Gen.Double[0, 150], Gen.Double[0.01, 1])
            )
            .Holds(
                (tank, water, unit) =>
                {
                    var (start, ambient, loss, ingress) = tank;
                    var (ppm, target, pascal, air) = water;
                    var (flow, kilowatt, celsius, eta) = unit;
                    var plan = PurificationPlan.Create(
                        Sump.Job(
                            ppm,
                            target,
                            Sump.Tank(start: start, ambient: ambient, loss: loss, ingressGramPerHour: ingress),
                            Sump.Oil(line: Sump.Vg320),
                            horizonHours: 100
                        ),
                        Sump.Unit(flow, kilowatt, celsius, pascal, air, eta),
                        TimeSpan.FromHours(50)
                    );
                    var all = plan.Last.Evaporated.Kilograms + ingress / 1000 * plan.Last.Time.TotalHours + 1e-3;
                    plan.WaterImbalance.Kilograms.ShouldBeLessThan(1e-7 * Math.Abs(all) + 1e-9);
                    plan.End.WaterFloor.PartsPerMillion.ShouldBeGreaterThanOrEqualTo(0);
                    if (plan.Arrival is Arrival<TimeSpan>.Expected)
                    {
                        plan.Last.Water.Total.PartsPerMillion.ShouldBe(target, 1e-3);
                    }
                    else if (plan.Arrival is not Arrival<TimeSpan>.Already)
                    {
                        plan.Last.Water.Total.PartsPerMillion.ShouldBeGreaterThan(target);
                    }
                },
                iter: 100
            );

    [Fact]
    public void Bad_input_is_named()
    {
        Should.Throw<ArgumentException>(() => new TreatmentTarget()).ParamName.ShouldBe("water");
        Refused(() => Sump.Tank(litres: 0), "oilVolume");
        Refused(() => Sump.Tank(ingressGramPerHour: -1), "waterIngress");
        Refused(() => Sump.Tank(loss: -1), "lossWattPerKelvin");
        Refused(() => Sump.Unit(eta: 0), "removalPerPass");
        Refused(() => Sump.Unit(celsius: 151), "processTemperature");
        Refused(() => Sump.Unit(startViscosity: 100), "startViscosity");
        Refused(() => Sump.Unit(pascal: 1), "absolutePressure");
        Refused(() => new ParticleLevels(100, 200, 10), "at6PerMillilitre");
        Refused(() => new ParticleIngression(100, 50, 60), "at14PerMinute");
        Refused(() => new FilterRatings(new FilterBeta(200), new FilterBeta(75), new FilterBeta(1000)), "at6");
        Refused(() => new Contamination(Sump.Ppm(100), Ratio.FromPercent(120), Levels()), "emulsifiedShare");
        Refused(() => PurificationPlan.Create(Sump.Job(900, 150), Sump.Unit(), TimeSpan.FromSeconds(1)), "interval");
        Refused(() => Sump.Job(900, 150, horizonHours: 0), "horizon");
        Refused(
            () =>
                new VacuumChamber(
                    Pressure.FromPascals(5000),
                    SweepAir.Dry(MassFlow.FromKilogramsPerHour(50)),
                    VolumeFlow.FromCubicMetersPerHour(10)
                ),
            "pumpCapacity"
        );
        Should.Throw<ArgumentException>(() => ParticleLevels.FromCode(CleanlinessCode.Parse("-/16/13")));
    }

    private static ParticleLevels Levels() => new(1000, 300, 40);

    private static void Refused(Func<object> call, string name) =>
        Should.Throw<ArgumentOutOfRangeException>(call).ParamName.ShouldBe(name);
}
