using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.Tests.Properties;
using OilCondition.Thermal;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment;

/// <summary>Each treatment against a figure worked by hand, the room below it, or a second route.</summary>
public class TreatmentTests
{
    private static readonly FilterRatings Filter = Sump.Filter;

    private static SideLoop Loop(
        double litrePerMinute = 40,
        double? celsius = null,
        double kilowatt = 0,
        double motor = 0
    ) =>
        new(
            new PumpViscosityLimit(
                VolumeFlow.FromLitersPerMinute(litrePerMinute),
                KinematicViscosity.FromCentistokes(700)
            ),
            celsius is { } warm ? Sump.Celsius(warm) : null,
            Power.FromKilowatts(kilowatt),
            Power.FromKilowatts(motor)
        );

    private static Length Micrometres(double value) => Length.FromMicrometers(value);

    private static HumidAir DryAir(double dewPoint = -40) =>
        HumidAir.FromDewPoint(Sump.Celsius(20), Sump.Celsius(dewPoint));

    /// <summary>
    /// By hand, 100 µm in VG 46 at 40 °C: oil 854.22 kg/m³ (heat.csv, Table 54D), water 992.2 kg/m³ (steam tables), so
    /// v = 9.80665 × 1e-8 × 138.0 / (18 × 854.22 × 46e-6) = 1.913e-5 m/s, 69 mm an hour.
    /// </summary>
    [Fact]
    public void A_drop_sinks_as_stokes_says()
    {
        var drop = DropletSettling.In(Sump.Oil(), Sump.Celsius(40), Micrometres(100));
        drop.DensityDifference.KilogramsPerCubicMeter.ShouldBe(138.0, 0.2);
        drop.Velocity.MetersPerSecond.ShouldBe(1.913e-5, 0.004e-5);
        drop.Reynolds.ShouldBe(1.913e-5 * 1e-4 / 46e-6, 1e-7);
        drop.IsOutsideRange.ShouldBeFalse();
        DropletSettling
            .In(Sump.Oil(), Sump.Celsius(40), Micrometres(200))
            .Velocity.MetersPerSecond.ShouldBe(7.652e-5, 0.02e-5);
        DropletSettling.In(Sump.Oil(), Sump.Celsius(40), Micrometres(2000)).IsOutsideRange.ShouldBeTrue();
    }

    /// <summary>Down from 1000 to 150 mg/kg with 122.2 dissolved at 40 °C (water.csv): 850/877.8 of 1.2 m at 69 mm/h is 16.9 h.</summary>
    [Fact]
    public void Settling_takes_the_share_of_the_height()
    {
        var row = new SettlingAndDraining(Length.FromMeters(1.2), Micrometres(100), Sump.Celsius(40)).Assess(
            Sump.Job(1000, 150)
        );
        row.Water.Outcome.ShouldBe(TreatmentOutcome.Reached);
        row.RunTime.TotalHours.ShouldBe(850 / 877.8 * 1.2 / (1.913e-5 * 3600), 0.04);
        row.WaterFloor.PartsPerMillion.ShouldBe(122.2, 0.05);
        // 2000 L × 854.2 kg/m³ × 850 mg/kg = 1.452 kg.
        row.WaterRemoved.Liters.ShouldBe(1.452 / 0.9982, 0.002);
        row.Forecast.ShouldBe(row.Water);
        row.Cautions.ShouldContain(Caution.SpillsAndWaste);
    }

    [Fact]
    public void Water_does_not_sink_in_an_oil_that_is_heavier()
    {
        var oil = new TreatedOil(
            OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(1150)),
            Sump.Mineral,
            Sump.Vg46,
            Sump.Celsius(90)
        );
        var job = Sump.Job(1000, 150, oil: oil);
        var settling = new SettlingAndDraining(Length.FromMeters(1), Micrometres(100));
        settling.Assess(job).Water.Outcome.ShouldBe(TreatmentOutcome.OilNotLighterThanWater);
        Spinner().Assess(job).Water.Outcome.ShouldBe(TreatmentOutcome.OilNotLighterThanWater);
    }

    /// <summary>A second route: the loop of the same room, with the level that ingress adds.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(30)]
    public void A_coalescer_falls_as_a_loop_to_saturation(double ingress)
    {
        var job = Sump.Job(1000, 100, Sump.Tank(ingressGramPerHour: ingress));
        var row = new Coalescer(Loop(), Ratio.FromPercent(60), 3).Assess(job);
        var loop = new CleanupLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(40));
        var eta = Ratio.FromPercent(60);
        var perHour = ingress * 1e3 / job.OilMassAt(Sump.Celsius(20)).Kilograms;
        var level = loop.LevelWithIngress(52.876, perHour, eta);
        loop.TryTimeTo(1000, level, 100, eta, out var time).ShouldBeTrue();
        row.RunTime.TotalHours.ShouldBe(time.TotalHours, 1e-4);
        row.Elements.ShouldBe(3);
        var kilograms = job.OilMassAt(Sump.Celsius(20)).Kilograms * 900e-6 + ingress * 1e-3 * row.RunTime.TotalHours;
        row.WaterRemoved.Liters.ShouldBe(kilograms / 0.9982, 1e-6);
        row.WaterFloor.PartsPerMillion.ShouldBe(52.876, 0.001);
    }

    [Fact]
    public void A_coalescer_is_stopped_by_an_emulsion_and_by_detergents()
    {
        var coalescer = new Coalescer(Loop(), Ratio.FromPercent(60), 3);
        var row = coalescer.Assess(Sump.Job(1000, 100, emulsified: 0.2));
        row.Water.Outcome.ShouldBe(TreatmentOutcome.EmulsionAboveTarget);
        // 52.876 + 0.2 × 947.124
        row.WaterFloor.PartsPerMillion.ShouldBe(242.30, 0.01);
        row.Elements.ShouldBe(0);
        var engine = new TreatedOil(
            Sump.Oil().Properties,
            Sump.Mineral,
            Sump.Vg46,
            Sump.Celsius(90),
            hasDetergents: true
        );
        coalescer.Assess(Sump.Job(1000, 100, oil: engine)).Water.Outcome.ShouldBe(TreatmentOutcome.DetergentsHoldDrops);
    }

    private static Centrifuge Spinner(double squareMetres = 2000) =>
        new(Loop(celsius: 50, kilowatt: 18), Area.FromSquareMeters(squareMetres), Micrometres(20), Micrometres(3));

    /// <summary>Drops and emulsion fall each at its own rate; the content at the stated time is put together again here.</summary>
    [Fact]
    public void A_centrifuge_reaches_an_emulsion_in_part()
    {
        var job = Sump.Job(2000, 200, emulsified: 0.25);
        var spinner = Spinner();
        var oil = Sump.Oil();
        var big = spinner.RemovalPerPass(job, Micrometres(20)).DecimalFractions;
        var small = spinner.RemovalPerPass(job, Micrometres(3)).DecimalFractions;
        big.ShouldBe(1);
        var fine = DropletSettling.In(oil, Sump.Celsius(50), Micrometres(3)).Velocity.MetersPerSecond;
        small.ShouldBe(fine * 2000 / (40e-3 / 60), 1e-9);
        small.ShouldBeInRange(0.01, 0.5);

        var row = spinner.Assess(job);
        var tank = HeatedTank.FromOil(
            job.OilMassAt(Sump.Celsius(35)),
            oil.Properties.At(Sump.Celsius(35)).HeatCapacity,
            40
        );
        var warm = tank.TimeTo(Sump.Celsius(50), Sump.Celsius(20), Power.FromKilowatts(18), Sump.Celsius(20))
            .ShouldBeOfType<Arrival<TimeSpan>.Expected>()
            .Estimate.TotalHours;
        var hours = row.RunTime.TotalHours - warm;
        var dissolved = Sump.Mineral.SaturationAt(Sump.Celsius(50)).Content.PartsPerMillion;
        var free = 2000 - dissolved;
        (dissolved + 0.75 * free * Math.Exp(-1.2 * hours) + 0.25 * free * Math.Exp(-1.2 * small * hours)).ShouldBe(
            200,
            0.01
        );
        // Warming, then 40 W/K × 30 K of losses.
        row.Heat.KilowattHours.ShouldBe(18 * warm + 1.2 * hours, 1e-6);
    }

    /// <summary>2000 L of 865.5 kg/m³ at 20 °C... from 1000 to 100 mg/kg: 1.56 L of water; elements of 0.4 L: four.</summary>
    [Fact]
    public void Elements_are_counted_by_the_water_that_they_take()
    {
        var row = new WaterAbsorbingElements(Loop(motor: 1.5), Ratio.FromPercent(50), Volume.FromLiters(0.4)).Assess(
            Sump.Job(1000, 100, emulsified: 1)
        );
        row.Water.Outcome.ShouldBe(TreatmentOutcome.Reached);
        row.WaterRemoved.Liters.ShouldBe(2 * 866.8 * 900e-6 / 0.9982, 0.003);
        row.Elements.ShouldBe(4);
        row.RunTime.TotalHours.ShouldBe(Math.Log(947.124 / 47.124) / 0.6, 1e-4);
        row.Electricity.KilowattHours.ShouldBe(1.5 * row.RunTime.TotalHours, 1e-9);
    }

    /// <summary>
    /// A second route: the balance of the purge summed in small steps of content, with the humidity ratio of the Water room's air.
    /// </summary>
    [Theory]
    [InlineData(2000, 100, 0, 60)]
    [InlineData(250, 30, 5, 60)]
    [InlineData(120, 40, 0, 40)]
    public void A_purge_takes_as_long_as_its_balance_says(double from, double to, double gram, double celsius)
    {
        var tank = Sump.Tank(start: celsius, ingressGramPerHour: gram);
        var job = Sump.Job(from, to, tank);
        var purge = new HeadSpacePurge(
            MassFlow.FromKilogramsPerHour(20),
            DryAir(),
            StandardAtmosphere.SeaLevel,
            Ratio.FromPercent(70)
        );
        var saturation = Sump.Mineral.SaturationAt(Sump.Celsius(celsius)).Content.PartsPerMillion;
        var dry = DryAir().HumidityRatioAt(StandardAtmosphere.SeaLevel).DecimalFractions;
        double hours = 0;
        const int Steps = 20_000;
        var width = (from - to) / Steps;
        for (var i = 0; i < Steps; i++)
        {
            var activity = Math.Min(1, (from - (i + 0.5) * width) / saturation);
            var leaving = HumidAir
                .FromRelativeHumidity(Sump.Celsius(celsius), RelativeHumidity.FromPercent(100 * activity))
                .HumidityRatioAt(StandardAtmosphere.SeaLevel)
                .DecimalFractions;
            hours +=
                job.OilMassAt(Sump.Celsius(celsius)).Kilograms * width * 1e-6 / (14 * (leaving - dry) - gram * 1e-3);
        }

        var row = purge.Assess(job);
        row.Water.Outcome.ShouldBe(TreatmentOutcome.Reached);
        row.RunTime.TotalHours.ShouldBe(hours, 2e-4 * hours);
    }

    [Fact]
    public void A_purge_with_humid_air_has_a_floor_and_with_ingress_a_level()
    {
        var humid = HumidAir.FromRelativeHumidity(Sump.Celsius(25), RelativeHumidity.FromPercent(60));
        HeadSpacePurge Purge(HumidAir air) =>
            new(MassFlow.FromKilogramsPerHour(20), air, StandardAtmosphere.SeaLevel, Ratio.FromPercent(70));
        var job = Sump.Job(1000, 20, Sump.Tank(start: 60));
        var row = Purge(humid).Assess(job);
        row.Water.Outcome.ShouldBe(TreatmentOutcome.FloorAboveTarget);
        // WTR-091 of water.csv.
        row.WaterFloor.PartsPerMillion.ShouldBe(24.354, 0.01);
        Purge(DryAir())
            .Assess(Sump.Job(1000, 20, Sump.Tank(start: 60, ingressGramPerHour: 3000)))
            .Water.Outcome.ShouldBe(TreatmentOutcome.IngressAboveTarget);
    }

    /// <summary>A tenth stays: 1000 mg/kg and new oil of 50: 145 after one change, 59.5 after two; 2 × 0.9 × 2000 L of oil.</summary>
    [Fact]
    public void A_change_dilutes_what_stays()
    {
        var change = new DrainAndRefill(
            Ratio.FromPercent(10),
            Sump.Ppm(50),
            ParticleLevels.FromCode(CleanlinessCode.Parse("17/15/12")),
            VolumeFlow.FromLitersPerMinute(60),
            Power.FromKilowatts(2)
        );
        change.After(1000, 50, 1).ShouldBe(145, 1e-9);
        change.After(1000, 50, 2).ShouldBe(59.5, 1e-9);

        var row = change.Assess(Sump.Job(1000, 100));
        row.Water.Outcome.ShouldBe(TreatmentOutcome.Reached);
        row.NewOil.Liters.ShouldBe(3600, 1e-6);
        row.RunTime.TotalHours.ShouldBe(2.0, 1e-9);
        row.Electricity.KilowattHours.ShouldBe(4, 1e-9);
        change.Assess(Sump.Job(1000, 40)).Water.Outcome.ShouldBe(TreatmentOutcome.FloorAboveTarget);
        change.Assess(Sump.Job(1000, 150)).NewOil.Liters.ShouldBe(1800, 1e-6);

        // 20/18/15 at its upper limits, 10 000 at 4 µm(c), to 18: 2500; new oil at 17, 1300: 1300 + 0.1 × 8700 = 2170.
        var dirty = change.Assess(Sump.Job(1000, 150, targetCode: "18/16/13"));
        dirty.Particles.Outcome.ShouldBe(TreatmentOutcome.Reached);
        dirty.NewOil.Liters.ShouldBe(1800, 1e-6);
        change
            .Assess(Sump.Job(1000, 150, targetCode: "16/14/11"))
            .Particles.Outcome.ShouldBe(TreatmentOutcome.FloorAboveTarget);
    }

    /// <summary>
    /// As above, but with 20 g/h. An hour of work brings 20 g into 1733 kg (2000 L at 866.6 kg/m³, 20 °C), 11.5 mg/kg: 156.5 after one change, 59.5 + 23.1 after two.
    /// </summary>
    [Fact]
    public void What_comes_in_while_oil_is_changed_stays()
    {
        var change = new DrainAndRefill(
            Ratio.FromPercent(10),
            Sump.Ppm(50),
            ParticleLevels.FromCode(CleanlinessCode.Parse("17/15/12")),
            VolumeFlow.FromLitersPerMinute(60)
        );
        TreatmentAssessment Row(double target, double gram) =>
            change.Assess(Sump.Job(1000, target, Sump.Tank(ingressGramPerHour: gram)));

        Row(150, 0).RunTime.TotalHours.ShouldBe(1, 1e-9);
        Row(150, 20).RunTime.TotalHours.ShouldBe(2, 1e-9);
        Row(157, 20).RunTime.TotalHours.ShouldBe(1, 1e-9);
        Row(156, 20).RunTime.TotalHours.ShouldBe(2, 1e-9);
        Row(60, 0).Water.Outcome.ShouldBe(TreatmentOutcome.Reached);
        Row(60, 20).Water.Outcome.ShouldBe(TreatmentOutcome.IngressAboveTarget);

        // 2500 at 4 µm(c) is 18; 1300 + 0.1 × 8700 = 2170, and 1.2e7 per minute × 60 min / 2e6 mL = 360 more: 2530. Two changes: 1387 + 720.
        var dirty = change.Assess(
            Sump.Job(1000, 150, Sump.Tank(ingression: new ParticleIngression(1.2e7, 0, 0)), targetCode: "18/16/13")
        );
        dirty.Particles.Time.TotalHours.ShouldBe(2, 1e-9);

        // 80 at 14 µm(c) is 13; 40 + 0.1 × 280 = 68, and 5e5 per minute make it 83.
        var coarse = change.Assess(
            Sump.Job(1000, 150, Sump.Tank(ingression: new ParticleIngression(5e5, 5e5, 5e5)), targetCode: "18/16/13")
        );
        coarse.Particles.Time.TotalHours.ShouldBe(2, 1e-9);
    }

    private static readonly Density Quartz = Density.FromKilogramsPerCubicMeter(2650);

    /// <summary>
    /// Stokes by hand, VG 46 at 40 °C: 46 mm²/s, 853.8 kg/m³. At 4 µm 9.80665 × 16e-12 × 1796.2/(18 × 853.8 × 46e-6) = 3.987e-7 m/s, through 1.2 m in 836 h; from
    /// 10 000 to 2500 per mL three quarters of it, 627 h.
    /// </summary>
    [Fact]
    public void Particles_settle_by_their_density()
    {
        TreatmentAssessment Row(Density? density, string code, ParticleIngression? ingression = null) =>
            new SettlingAndDraining(Length.FromMeters(1.2), Micrometres(100), Sump.Celsius(40), density).Assess(
                Sump.Job(300, 200, Sump.Tank(ingression: ingression), targetCode: code)
            );

        Row(Quartz, "18/-/-").Particles.Time.TotalHours.ShouldBe(627, 1);
        Row(Quartz, "18/-/-").RunTime.ShouldBe(Row(Quartz, "18/-/-").Particles.Time);

        // At 14 µm (14/4)² = 12.25 times as fast: from 320 to 80 per mL.
        Row(Quartz, "-/-/13").Particles.Time.TotalHours.ShouldBe(627 / 12.25, 0.1);

        // At 6 µm (6/4)² = 2.25 times as fast: from 2500 to 640 per mL, of 836 h for the whole height at 4 µm.
        Row(Quartz, "-/16/-").Particles.Time.TotalHours.ShouldBe(836 / 2.25 * (1 - 640 / 2500.0), 0.4);

        // The slowest rules: 18 at 4 µm(c).
        Row(Quartz, "18/18/13").Particles.Time.TotalHours.ShouldBe(627, 1);
        Row(null, "18/-/-").Particles.Outcome.ShouldBe(TreatmentOutcome.ParticleDensityNotStated);
        Row(null, "20/18/15").Particles.Outcome.ShouldBe(TreatmentOutcome.AlreadyThere);
        Row(Density.FromKilogramsPerCubicMeter(800), "18/-/-")
            .Particles.Outcome.ShouldBe(TreatmentOutcome.ParticlesDoNotSink);

        // 836 h × 60 min × R / 2e6 mL: 2500 per mL stay up at R = 99 700 a minute; at half of that (10 000 − 2500)/(10 000/836 − 1.4953) = 716.6 h.
        Row(Quartz, "18/-/-", new ParticleIngression(1e5, 0, 0))
            .Particles.Outcome.ShouldBe(TreatmentOutcome.IngressAboveTarget);
        Row(Quartz, "18/-/-", new ParticleIngression(49_843, 0, 0)).Particles.Time.TotalHours.ShouldBe(716.6, 2);
    }

    /// <summary>The same velocity v on Σ: η = v Σ/Q as of drops, and from there the kidney loop with β = 1/(1 − η).</summary>
    [Fact]
    public void A_centrifuge_takes_particles_by_their_density()
    {
        var loop = Loop(celsius: 40, kilowatt: 18);
        TreatmentAssessment Row(Density? density, double squareMetres, ParticleIngression? ingression = null) =>
            new Centrifuge(loop, Area.FromSquareMeters(squareMetres), Micrometres(30), Micrometres(3), density).Assess(
                Sump.Job(1000, 600, Sump.Tank(start: 40, ambient: 40, ingression: ingression), targetCode: "17/-/-")
            );

        // 40 L/min = 6.667e-4 m³/s; 3.987e-7 × 500/6.667e-4 = 0.299.
        const double Share = 3.987e-7 * 500 / (0.04 / 60);
        var kidney = new KidneyLoop(
            Volume.FromLiters(2000),
            VolumeFlow.FromLitersPerMinute(40),
            new FilterBeta(1 / (1 - Share)),
            1e6
        );
        var row = Row(Quartz, 500, new ParticleIngression(1e6, 0, 0));
        kidney.TimeTo(10_000, 1300).TryEstimate(out var byKidney).ShouldBeTrue();
        row.Particles.Time.TotalHours.ShouldBe(byKidney.TotalHours, 0.01);
        row.RunTime.ShouldBe(row.Particles.Time > row.Water.Time ? row.Particles.Time : row.Water.Time);
        row.Treatment.Reaches.HasFlag(ContaminationForms.Particles).ShouldBeTrue();

        // Cold oil is warmed first: 2000 L through 30 K at 18 kW take about 1.5 h, and what the tank loses on the way.
        var cold = new Centrifuge(loop, Area.FromSquareMeters(500), Micrometres(30), Micrometres(3), Quartz).Assess(
            Sump.Job(1000, 600, Sump.Tank(start: 10, ambient: 10), targetCode: "17/-/-")
        );
        (cold.Particles.Time - Row(Quartz, 500).Particles.Time).TotalHours.ShouldBeInRange(1.4, 2.5);

        // All of it in one pass: V/Q ln(10 000/1300) = 0.8333 × 2.0402 h.
        Row(Quartz, 1e5).Particles.Time.TotalHours.ShouldBe(0.83333 * Math.Log(10_000 / 1300.0), 1e-4);
        Row(Quartz, 500, new ParticleIngression(2e7, 0, 0))
            .Particles.Outcome.ShouldBe(TreatmentOutcome.IngressAboveTarget);
        Row(null, 500).Particles.Outcome.ShouldBe(TreatmentOutcome.ParticleDensityNotStated);
        Row(null, 500).Treatment.Reaches.HasFlag(ContaminationForms.Particles).ShouldBeFalse();
        Refused(
            () =>
                new SettlingAndDraining(
                    Length.FromMeters(1),
                    Micrometres(100),
                    particleDensity: Density.FromKilogramsPerCubicMeter(2.65)
                ),
            "particleDensity"
        );
    }

    [Fact]
    public void Filtration_leaves_water_alone()
    {
        var row = new FineFiltration(Loop(), Filter, 2).Assess(Sump.Job(1000, 100, targetCode: "16/14/11"));
        row.Water.Outcome.ShouldBe(TreatmentOutcome.NotReachedByTreatment);
        row.MeetsTarget.ShouldBeFalse();
        var slowest = new[] { (Filter.At4, 10_000.0, 640.0), (Filter.At6, 2500, 160), (Filter.At14, 320, 20) }.Max(
            size =>
                new KidneyLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(40), size.Item1, 0)
                    .TimeTo(size.Item2, size.Item3)
                    .ShouldBeOfType<Arrival<TimeSpan>.Expected>()
                    .Estimate.TotalHours
        );
        row.Particles.Time.TotalHours.ShouldBe(slowest, 1e-9);
        row.Elements.ShouldBe(2);
    }

    [Fact]
    public void Loops_are_stopped_by_heat_and_cold()
    {
        TreatmentOutcome Outcome(SideLoop loop, TreatmentJob job) =>
            new Coalescer(loop, Ratio.FromPercent(60), 1).Assess(job).Water.Outcome;
        Outcome(Loop(celsius: 80, kilowatt: 18), Sump.Job(1000, 600, oil: Sump.Oil(highest: 70)))
            .ShouldBe(TreatmentOutcome.TooHotForOilOrSeals);
        Outcome(Loop(celsius: 60, kilowatt: 1), Sump.Job(1000, 600)).ShouldBe(TreatmentOutcome.HeaterTooWeak);
        Outcome(Loop(), Sump.Job(1000, 60, horizonHours: 1)).ShouldBe(TreatmentOutcome.BeyondHorizon);
        Outcome(Loop(), Sump.Job(1000, 100, Sump.Tank(ingressGramPerHour: 500)))
            .ShouldBe(TreatmentOutcome.IngressAboveTarget);
    }

    /// <summary>Nothing that removes only free or emulsified water goes below saturation, however it is run.</summary>
    [Fact]
    public void Separators_never_go_below_saturation() =>
        Gen.Select(
                Gen.Double[10, 70],
                Gen.Double[20, 20_000],
                Gen.Double[1, 2000],
                Gen.Double[0, 1],
                Gen.Double[0.05, 1]
            )
            .Holds(
                (celsius, ppm, target, emulsified, eta) =>
                {
                    var job = Sump.Job(
                        ppm,
                        target,
                        Sump.Tank(start: celsius, ambient: celsius),
                        emulsified: emulsified
                    );
                    var saturation = Sump.Mineral.SaturationAt(Sump.Celsius(celsius)).Content.PartsPerMillion;
                    ITreatment[] separators =
                    [
                        new SettlingAndDraining(Length.FromMeters(1), Micrometres(100)),
                        new Coalescer(Loop(), Ratio.FromDecimalFractions(eta), 1),
                        new WaterAbsorbingElements(Loop(), Ratio.FromDecimalFractions(eta), Volume.FromLiters(1)),
                        new Centrifuge(Loop(), Area.FromSquareMeters(2000), Micrometres(30), Micrometres(3)),
                    ];
                    foreach (var separator in separators)
                    {
                        var row = separator.Assess(job);
                        row.WaterFloor.PartsPerMillion.ShouldBeGreaterThanOrEqualTo(Math.Min(ppm, saturation) - 1e-6);
                        if (row.Water.Outcome == TreatmentOutcome.Reached)
                        {
                            target.ShouldBeGreaterThan(saturation);
                        }

                        if (target < Math.Min(ppm, saturation))
                        {
                            row.Water.Outcome.ShouldBe(TreatmentOutcome.FloorAboveTarget);
                        }
                    }
                },
                iter: 200
            );

    [Fact]
    public void Bad_input_is_named()
    {
        Refused(() => new SettlingAndDraining(Length.Zero, Micrometres(100)), "height");
        Refused(() => new SettlingAndDraining(Length.FromMeters(1), Length.Zero), "dropletDiameter");
        Refused(() => Spinner(0), "equivalentArea");
        Refused(() => new Coalescer(Loop(), Ratio.FromPercent(110), 1), "removalPerPass");
        Refused(() => new WaterAbsorbingElements(Loop(), Ratio.FromPercent(50), Volume.Zero), "capacityOfElement");
        Refused(() => new FineFiltration(Loop(), Filter, -1), "elements");
        Refused(() => Loop(celsius: 200), "workingTemperature");
        Refused(() => new TreatmentPrices(perHour: -1), "perHour");
        Refused(() => TargetForecast.ReachedAfter(TimeSpan.FromHours(-1)), "time");
        Should
            .Throw<ArgumentException>(() => TargetForecast.Of(TreatmentOutcome.Reached))
            .ParamName.ShouldBe("outcome");
        var air = DryAir();
        Refused(
            () =>
                new HeadSpacePurge(
                    MassFlow.FromKilogramsPerHour(1),
                    air,
                    StandardAtmosphere.SeaLevel,
                    Ratio.FromPercent(101)
                ),
            "approach"
        );
        Refused(
            () =>
                new DrainAndRefill(
                    Ratio.FromPercent(100),
                    Sump.Ppm(50),
                    new(1, 1, 1),
                    VolumeFlow.FromLitersPerMinute(1)
                ),
            "heel"
        );
    }

    private static void Refused(Func<object> call, string name) =>
        Should.Throw<ArgumentOutOfRangeException>(call).ParamName.ShouldBe(name);
}
