using OilCondition.Cleanliness;
using OilCondition.Thermal;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Plan;

/// <summary>The plan against closed forms, balances and the rooms below it.</summary>
public class PurificationPlanTests
{
    /// <summary>
    /// Closed form, heat-up without water: a first-order tank under constant power. <see cref="HeatedTank"/> is checked against heat.csv.
    /// 6 kW in 100 L/min lifts the oil by 2 K a pass, so that the thermostat at 65 °C does not act within these hours.
    /// </summary>
    [Fact]
    public void Without_water_the_tank_warms_as_first_order()
    {
        var job = new TreatmentJob(
            Sump.Oil(),
            Sump.Tank(litres: 1000, start: 15, ambient: 10, loss: 60),
            new Contamination(Sump.Ppm(0), Ratio.Zero, ParticleLevels.FromCode(CleanlinessCode.Parse("20/18/15"))),
            new TreatmentTarget(code: CleanlinessCode.Parse("16/14/11"))
        );
        var plan = PurificationPlan.Create(job, Sump.Unit(litrePerMinute: 100, kilowatt: 6));

        var mean = Sump.Celsius(40);
        var tank = HeatedTank.FromOil(job.OilMass, job.Oil.Properties.At(mean).HeatCapacity, 60);
        plan.States.Count.ShouldBeGreaterThan(6);
        foreach (var state in plan.States.Take(6))
        {
            var expected = tank.TemperatureAfter(
                Sump.Celsius(15),
                Power.FromKilowatts(6),
                Sump.Celsius(10),
                state.Time
            );
            state.TankTemperature.DegreesCelsius.ShouldBe(expected.DegreesCelsius, 1e-6);
            state.HeaterEnergy.KilowattHours.ShouldBe(6 * state.Time.TotalHours, 1e-6);
        }

        plan.WhyNotParticles.ShouldBe(WhyNot.NotTouched);
    }

    /// <summary>
    /// Closed form: no losses, constant temperature, no sweep. At 65 °C and 100 Pa the floor is 10^(7.42 − 1670/338.15) × 100/25042 = 1.210 mg/kg
    /// (25.042 kPa: steam tables), and k = 0.7 × 20 L/min / 2000 L = 0.42 per hour.
    /// </summary>
    [Fact]
    public void Warm_and_without_sweep_dissolved_water_falls_exponentially()
    {
        var job = Sump.Job(200, 5, Sump.Tank(start: 65, ambient: 65, loss: 0));
        var plan = PurificationPlan.Create(job, Sump.Unit(pascal: 100));
        var floor = Math.Pow(10, 7.42 - 1670 / 338.15) * 100 / 25_042;

        plan.End.WaterFloor.PartsPerMillion.ShouldBe(floor, 1e-4 * floor);
        foreach (var state in plan.States)
        {
            var expected = floor + (200 - floor) * Math.Exp(-0.42 * state.Time.TotalHours);
            state.Water.Total.PartsPerMillion.ShouldBe(expected, 1e-4 * expected);
        }

        plan.Arrival.ShouldBeExpected();
        plan.Arrival.Hours().ShouldBe(Math.Log((200 - floor) / (5 - floor)) / 0.42, 2e-3);
    }

    /// <summary>
    /// The chamber is not isothermal: what evaporates cools the oil, and colder oil holds more against the same vapour. To first order in the excess
    /// the rate is k = (η Q/V) / (1 − η (h_fg/c) dC_eq/dT) with dC_eq/dT = C_eq (B ln 10/T² − d ln p_sat/dT), worked here from the constants.
    /// </summary>
    [Fact]
    public void Cooling_by_evaporation_slows_the_fall_as_the_derivative_says()
    {
        const double Kelvins = 338.15;
        const double Pascal = 6510;
        var saturationPascal = WaterVapour.SaturationPressure(Sump.Celsius(65)).Pascals;
        var slope =
            Math.Log(
                WaterVapour.SaturationPressure(Sump.Celsius(65.01)).Pascals
                    / WaterVapour.SaturationPressure(Sump.Celsius(64.99)).Pascals
            ) / 0.02;
        var floor = Math.Pow(10, 7.42 - 1670 / Kelvins) * Pascal / saturationPascal;
        var perKelvin = floor * 1e-6 * (1670 * Math.Log(10) / (Kelvins * Kelvins) - slope);
        var tank = Sump.Tank(start: 65, ambient: 65, loss: 0);
        var heat = Sump.Oil().Properties.At(Sump.Celsius(65)).HeatCapacity.JoulesPerKilogramKelvin;
        var latent = WaterVapour.LatentHeat(Sump.Celsius(65)).JoulesPerKilogram;
        var rate = 0.42 / (1 - 0.7 * latent / heat * perKelvin);
        rate.ShouldBe(0.4198, 0.0003);

        var plan = PurificationPlan.Create(Sump.Job(floor + 0.1, floor + 0.01, tank), Sump.Unit(pascal: Pascal));
        plan.Arrival.ShouldBeExpected();
        plan.Arrival.Hours().ShouldBe(Math.Log(10) / rate, 1e-4);
    }

    /// <summary>With η = 1 the oil leaves in equilibrium: the isothermal stage of the Water room, at the temperature and pressure at which it leaves.</summary>
    [Theory]
    [InlineData(200, 20_051, 2)]
    [InlineData(900, 20_051, 0.5)]
    [InlineData(5000, 20_051, 1)]
    [InlineData(30_000, 30_000, 3)]
    [InlineData(300, 6510, 0)]
    public void An_ideal_pass_is_the_equilibrium_stage_of_the_water_room(double ppm, double pascal, double air)
    {
        var job = Sump.Job(ppm, 1, Sump.Tank(start: 65, ambient: 65, loss: 0));
        var unit = Sump.Unit(pascal: pascal, airKilogramPerHour: air, eta: 1, kilowatt: 100);
        var state = PurificationPlan.Create(job, unit, Sump.Coarse).States[0];
        var oil = MassFlow.FromKilogramsPerHour(
            state.Flow.CubicMetersPerHour * job.OilMass.Kilograms / job.Reservoir.OilVolume.CubicMeters
        );

        var outlet = new VacuumStage(job.Oil.SaturationCurve, state.ReturnTemperature, state.ChamberPressure).Outlet(
            oil,
            job.Contamination.Water,
            unit.Chamber.Sweep
        );
        state.Evaporation.KilogramsPerHour.ShouldBe(
            outlet.Evaporated.KilogramsPerHour,
            1e-8 * outlet.Evaporated.KilogramsPerHour
        );
        var heat = job.Oil.Properties.At(Sump.Celsius(65)).HeatCapacity.JoulesPerKilogramKelvin;
        var latent = WaterVapour.HeatToEvaporate(state.Evaporation, Sump.Celsius(65)).Watts;
        (state.ProcessTemperature - state.ReturnTemperature).Kelvins.ShouldBe(
            (double)latent / (oil.KilogramsPerSecond * heat),
            1e-9
        );
    }

    /// <summary>A flood: 6 % water at 65 °C over 6510 Pa, where water boils at 37.65 °C. Heat sets the rate, ρ Q c (65 − 37.65)/h_fg.</summary>
    [Fact]
    public void Free_water_flashes_until_the_oil_has_cooled_to_the_boiling_point()
    {
        var job = Sump.Job(60_000, 500, Sump.Tank(start: 65, ambient: 65, loss: 0));
        var state = PurificationPlan.Create(job, Sump.Unit(pascal: 6510), Sump.Coarse).States[0];

        state.Limit.ShouldBe(RemovalLimit.Heat);
        state.ReturnTemperature.DegreesCelsius.ShouldBe(37.65, 0.02);
        var oil = job.Oil.Properties.At(Sump.Celsius(65));
        var watts = 20e-3 / 60 * oil.Density.KilogramsPerCubicMeter * oil.HeatCapacity.JoulesPerKilogramKelvin * 27.35;
        state.Evaporation.KilogramsPerHour.ShouldBe(watts / 2_345_400 * 3600, 0.03);
    }

    /// <summary>A pump of 20 m³/h: pure vapour at p R T, so that the pressure at which it is swallowed is also that at which the oil stops to boil.</summary>
    [Fact]
    public void A_small_vacuum_pump_lets_the_pressure_rise_until_it_swallows_the_vapour()
    {
        var chamber = new VacuumChamber(Pressure.FromPascals(5000), null, VolumeFlow.FromCubicMetersPerHour(20));
        var job = Sump.Job(20_000, 200, Sump.Tank(start: 65, ambient: 65, loss: 0));
        var state = PurificationPlan.Create(job, Sump.Unit(chamber: chamber), Sump.Coarse).States[0];

        state.Limit.ShouldBe(RemovalLimit.VacuumPump);
        state.ChamberPressure.Pascals.ShouldBeGreaterThan(15_000);
        WaterVapour
            .SaturationTemperature(state.ChamberPressure)
            .DegreesCelsius.ShouldBe(state.ReturnTemperature.DegreesCelsius, 1e-6);
        WaterVapour
            .VolumeFlowOf(state.VapourFlow, state.ReturnTemperature, state.ChamberPressure)
            .CubicMetersPerHour.ShouldBe(20, 0.01);
    }

    /// <summary>A condenser before the pump at 15 °C, p_sat = 1705 Pa (steam tables), relieves it; nothing but that is left of the vapour.</summary>
    [Fact]
    public void A_condenser_before_the_pump_relieves_it()
    {
        var job = Sump.Job(20_000, 200, Sump.Tank(start: 65, ambient: 65, loss: 0));
        PurificationPlan Plan(Func<VacuumChamber, VacuumChamber> fitted) =>
            PurificationPlan.Create(
                job,
                Sump.Unit(
                    chamber: fitted(
                        new VacuumChamber(
                            Pressure.FromPascals(5000),
                            SweepAir.Dry(MassFlow.FromKilogramsPerHour(0.5)),
                            VolumeFlow.FromCubicMetersPerHour(20)
                        )
                    )
                ),
                Sump.Coarse
            );

        var bare = Plan(chamber => chamber);
        var relieved = Plan(chamber => chamber.WithCondenserBeforePump(Sump.Celsius(15)));
        relieved.States[0].ChamberPressure.Pascals.ShouldBe(5000, 1e-6);
        bare.States[0].ChamberPressure.Pascals.ShouldBeGreaterThan(15_000);
        relieved.Arrival.Hours().ShouldBeLessThan(bare.Arrival.Hours() - 3);

        // 0.5 kg/h of air at 5000 Pa carries 0.5 × 0.62196 × 1705/(5000 − 1705) = 0.161 kg/h past the condenser.
        var perHour = relieved.Last.Exhausted.Kilograms / relieved.Last.Time.TotalHours;
        perHour.ShouldBeInRange(0.10, 0.162);
        bare.Last.Condensate.Liters.ShouldBe(0);
    }

    /// <summary>
    /// While more vapour comes than the air holds at 15 °C, p_sat = 1705.8 Pa (steam tables), the exhaust carries 0.5 × 0.62196 × 1705.8/(5000 − 1705.8) =
    /// 0.1610 kg/h. A pump of 1 m³/h has to take 17.262 mol/h of air at 15 °C: p = 1705.8 + 17.262 × 8.3145 × 288.15/1 = 43 063 Pa.
    /// </summary>
    [Fact]
    public void What_passes_a_condenser_and_what_the_pump_takes_are_those_of_its_temperature()
    {
        PurificationPlan Plan(double capacity) =>
            PurificationPlan.Create(
                Sump.Job(20_000, 200, Sump.Tank(start: 65, ambient: 65, loss: 0), horizonHours: 2),
                Sump.Unit(
                    chamber: new VacuumChamber(
                        Pressure.FromPascals(5000),
                        SweepAir.Dry(MassFlow.FromKilogramsPerHour(0.5)),
                        VolumeFlow.FromCubicMetersPerHour(capacity)
                    ).WithCondenserBeforePump(Sump.Celsius(15))
                )
            );
        var plan = Plan(20);
        plan.Last.Exhausted.Kilograms.ShouldBe(2 * 0.1610, 0.0004);
        plan.Last.Condensate.Liters.ShouldBe(
            (
                plan.Last.Evaporated.Kilograms
                + 2 * plan.Unit.Chamber.Sweep.Moisture.KilogramsPerHour
                - plan.Last.Exhausted.Kilograms
            ) / 0.9982,
            1e-6
        );
        Plan(1).States[0].ChamberPressure.Pascals.ShouldBe(43_063, 10);
    }

    [Theory]
    [InlineData(2000, 6510, 0, 0)]
    [InlineData(30_000, 6510, 0, 50)]
    [InlineData(900, 20_051, 1, 20)]
    public void Water_and_heat_balance_to_ten_digits(double ppm, double pascal, double air, double ingress)
    {
        var tank = Sump.Tank(start: 5, ambient: 12, ingressGramPerHour: ingress);
        var sweep = SweepAir.FromAir(
            MassFlow.FromKilogramsPerHour(air),
            HumidAir.FromRelativeHumidity(Sump.Celsius(20), RelativeHumidity.FromPercent(30)),
            StandardAtmosphere.SeaLevel
        );
        var chamber = new VacuumChamber(
            Pressure.FromPascals(pascal),
            sweep,
            VolumeFlow.FromCubicMetersPerHour(30)
        ).WithCondenserAfterPump(Sump.Celsius(20), StandardAtmosphere.SeaLevel);
        var job = Sump.Job(ppm, 150, tank, Sump.Oil(line: Sump.Vg320));
        var plan = PurificationPlan.Create(job, Sump.Unit(chamber: chamber));
        plan.Arrival.ShouldBeExpected();

        var last = plan.Last;
        plan.WaterImbalance.Kilograms.ShouldBeLessThan(1e-10 * last.Evaporated.Kilograms);
        plan.HeatImbalance.KilowattHours.ShouldBeLessThan(1e-10 * last.HeaterEnergy.KilowattHours);

        // The same water by hand, from what the states show, and the gas side: what evaporates and what the air brings condenses or leaves.
        var mass = job.OilMass.Kilograms;
        (mass * (ppm - last.Water.Total.PartsPerMillion) * 1e-6 + ingress * 1e-3 * last.Time.TotalHours).ShouldBe(
            last.Evaporated.Kilograms,
            1e-9 * last.Evaporated.Kilograms
        );
        var brought = chamber.Sweep.Moisture.KilogramsPerHour * last.Time.TotalHours;
        (last.Condensate.Liters * 0.9982 + last.Exhausted.Kilograms).ShouldBe(
            last.Evaporated.Kilograms + brought,
            1e-9 * last.Evaporated.Kilograms
        );
        last.Condensate.Liters.ShouldBeGreaterThan(0);
    }

    [Fact]
    public void Particles_fall_as_in_a_kidney_loop()
    {
        var ingression = new ParticleIngression(2e6, 8e5, 4e4);
        var tank = Sump.Tank(start: 65, ambient: 65, loss: 0, ingression: ingression);
        var plan = PurificationPlan.Create(
            Sump.Job(70, 90, tank, targetCode: "15/13/10"),
            Sump.Unit(filter: Sump.Filter)
        );
        plan.Arrival.ShouldBeExpected();

        var loop = new KidneyLoop(
            Volume.FromLiters(2000),
            VolumeFlow.FromLitersPerMinute(20),
            Sump.Filter.At6,
            ingression.At6PerMinute
        );
        foreach (var state in plan.States)
        {
            var expected = loop.CountAfter(2500, state.Time);
            state.Particles.At6PerMillilitre.ShouldBe(expected, 1e-6 * expected);
        }

        plan.End.ParticleLevels!.At6PerMillilitre.ShouldBe(loop.SteadyPerMillilitre, 1e-6);
        var slowest = new[] { (Sump.Filter.At4, 2e6, 10_000.0, 320.0), (Sump.Filter.At6, 8e5, 2500, 80) }.Max(size =>
            new KidneyLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(20), size.Item1, size.Item2)
                .TimeTo(size.Item3, size.Item4)
                .ShouldBeOfType<Arrival<TimeSpan>.Expected>()
                .Estimate.TotalHours
        );
        plan.Particles.Hours().ShouldBe(slowest, 1e-5);
    }

    [Fact]
    public void The_interval_of_the_states_does_not_move_the_answer()
    {
        var job = Sump.Job(3000, 100, Sump.Tank(start: 5, ambient: 5), Sump.Oil(line: Sump.Vg460));
        var hourly = PurificationPlan.Create(job, Sump.Unit());
        var coarse = PurificationPlan.Create(job, Sump.Unit(), Sump.Coarse);
        hourly.Arrival.Hours().ShouldBe(coarse.Arrival.Hours(), 1e-5 * coarse.Arrival.Hours());
        hourly.Last.HeaterEnergy.KilowattHours.ShouldBe(coarse.Last.HeaterEnergy.KilowattHours, 1e-3);
        hourly.Last.Water.Total.PartsPerMillion.ShouldBe(100, 1e-4);
        hourly.States.Count.ShouldBe((int)Math.Ceiling(hourly.Arrival.Hours()) + 1);
    }

    /// <summary>
    /// A film of thicker oil: η = 1 − 0.3^√(v₀/v), by hand for VG 46 that is 45 °C warm in a unit whose 0.7 holds at 65 °C, and for one found at 46 mm²/s. What
    /// evaporates at the start is η ρ Q (200 − C_eq).
    /// </summary>
    [Theory]
    [InlineData(null)]
    [InlineData(46.0)]
    public void Removal_falls_with_the_viscosity_of_the_film(double? found)
    {
        var job = Sump.Job(200, 5, Sump.Tank(start: 45, ambient: 45, loss: 0));
        var unit = new PurificationUnit(
            Sump.Unit().Pump,
            Power.Zero,
            Sump.Celsius(65),
            new VacuumChamber(Pressure.FromPascals(100)),
            Ratio.FromPercent(70),
            removalViscosity: found is { } viscosity ? KinematicViscosity.FromCentistokes(viscosity) : null
        );
        var state = PurificationPlan.Create(job, unit, Sump.Coarse).States[0];
        double At(double celsius) => Sump.Vg46.ViscosityAt(Sump.Celsius(celsius)).Viscosity.Centistokes;
        var eta = 1 - Math.Pow(0.3, Math.Sqrt((found ?? At(65)) / At(45)));
        var floor = Math.Pow(10, 7.42 - 1670 / 318.15) * 100 / WaterVapour.SaturationPressure(Sump.Celsius(45)).Pascals;
        var passing = 1.2 * job.Oil.Properties.At(Sump.Celsius(45)).Density.KilogramsPerCubicMeter;
        state.Evaporation.KilogramsPerHour.ShouldBe(
            eta * passing * (200 - floor) * 1e-6,
            1e-3 * eta * passing * 200e-6
        );
    }

    [Fact]
    public void Motors_are_counted_with_the_energy_and_not_with_the_heat()
    {
        var without = PurificationPlan.Create(Sump.Job(500, 100), Sump.Unit());
        var with = PurificationPlan.Create(Sump.Job(500, 100), Sump.Unit(motorKilowatt: 3));
        with.Arrival.Time().ShouldBe(without.Arrival.Time());
        with.Last.TotalEnergy.KilowattHours.ShouldBe(
            without.Last.TotalEnergy.KilowattHours + 3 * with.Arrival.Hours(),
            1e-6
        );
    }
}
