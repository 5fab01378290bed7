using OilCondition.Cleanliness;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Kinds;

/// <summary>Every row warms its oil by the same pump, heater and tank. The station is invented.</summary>
public class OneCircuitTests
{
    private static PumpViscosityLimit Pump { get; } =
        new(VolumeFlow.FromLitersPerMinute(20), KinematicViscosity.FromCentistokes(700));

    private static SideLoop Loop(double celsius = 50, double kilowatt = 18, double start = 2e7) =>
        new(
            Pump,
            Sump.Celsius(celsius),
            Power.FromKilowatts(kilowatt),
            startViscosity: KinematicViscosity.FromCentistokes(start)
        );

    /// <summary>
    /// A second route: the balances of heat and of free water in small Runge-Kutta steps, written here from the pump's law, Cragoe's heat and the two limits of
    /// the heater, 11 K a pass and the thermostat. VG 460 from 5 °C, in which a heater of 18 kW would lift what the pump holds by 250 K.
    /// </summary>
    [Theory]
    [InlineData(5, 5, 300)]
    [InlineData(40, 10, 260)]
    public void A_cold_loop_warms_as_its_balance_says(double start, double ambient, double target)
    {
        var job = Sump.Job(900, target, Sump.Tank(start: start, ambient: ambient), Sump.Oil(line: Sump.Vg460));
        var heat = job.Oil.Properties.At(Sump.Celsius((start + 50) / 2)).HeatCapacity.JoulesPerKilogramKelvin;
        var mass = job.OilMass.Kilograms;
        double Pumped(double celsius)
        {
            var viscosity = Sump.Vg460.ViscosityAt(Sump.Celsius(celsius)).Viscosity.Centistokes;
            return 0.02
                / 60
                * Math.Min(1, 700 / viscosity)
                * job.Oil.Properties.At(Sump.Celsius(celsius)).Density.KilogramsPerCubicMeter;
        }

        double Rise(double celsius) =>
            Math.Min(18_000 / (Pumped(celsius) * heat), Math.Min(11, Math.Max(0, 50 - celsius)));
        (double T, double C) Slope(double celsius, double content) =>
            (
                (Pumped(celsius) * heat * Rise(celsius) - 40 * (celsius - ambient)) / (mass * heat),
                -0.6
                    * Pumped(celsius)
                    / mass
                    * Math.Max(0, content - Math.Pow(10, 7.42 - 1670 / (celsius + Rise(celsius) + 273.15)))
            );
        var (time, oil, ppm, kilowattHours) = (0.0, start, 900.0, 0.0);
        const double Step = 60;
        while (ppm > target)
        {
            var a = Slope(oil, ppm);
            var b = Slope(oil + a.T * Step / 2, ppm + a.C * Step / 2);
            var c = Slope(oil + b.T * Step / 2, ppm + b.C * Step / 2);
            var d = Slope(oil + c.T * Step, ppm + c.C * Step);
            kilowattHours += Pumped(oil) * heat * Rise(oil) * Step / 3.6e6;
            oil += (a.T + 2 * b.T + 2 * c.T + d.T) * Step / 6;
            ppm += (a.C + 2 * b.C + 2 * c.C + d.C) * Step / 6;
            time += Step;
            time.ShouldBeLessThan(720 * 3600);
        }

        var row = new Coalescer(Loop(), Ratio.FromPercent(60), 1).Assess(job);
        row.Water.Hours().ShouldBe(time / 3600, 2e-3 * time / 3600 + Step / 3600);
        row.Heat.KilowattHours.ShouldBe(kilowattHours, 1e-2 * kilowattHours + 0.3);
    }

    /// <summary>The plan of the same pump, heater and setting, in a vacuum too shallow to dry: what it shows of the tank is what the loop's heat says.</summary>
    [Fact]
    public void The_plan_of_the_same_pump_warms_alike()
    {
        var job = Sump.Job(
            900,
            300,
            Sump.Tank(start: 5, ambient: 5),
            Sump.Oil(line: Sump.Vg460),
            targetCode: "18/16/13"
        );
        var row = new FineFiltration(Loop(), Sump.Filter, 1).Assess(job);
        var unit = new PurificationUnit(
            Pump,
            Power.FromKilowatts(18),
            Sump.Celsius(50),
            new VacuumChamber(Pressure.FromPascals(100_000)),
            Ratio.FromPercent(70),
            Sump.Filter,
            startViscosity: KinematicViscosity.FromCentistokes(2e7)
        );
        var plan = PurificationPlan.Create(job, unit);
        row.Particles.Hours().ShouldBe(plan.Particles.Hours(), 1e-5 * plan.Particles.Hours());
        plan.States.ShouldAllBe(state => (state.ProcessTemperature - state.TankTemperature).Kelvins <= 11 + 1e-9);
        var only = PurificationPlan.Create(
            job.With(target: new TreatmentTarget(code: CleanlinessCode.Parse("18/16/13"))),
            unit
        );
        row.Heat.KilowattHours.ShouldBe(only.Last.HeaterEnergy.KilowattHours, 1e-4);
    }

    /// <summary>At −20 °C VG 460 is beyond every pump; at 5 °C beyond 5000 mm²/s. Each row says so.</summary>
    [Theory]
    [InlineData(-20)]
    [InlineData(5)]
    public void A_pump_without_a_stated_limit_does_not_start_in_tar(double celsius)
    {
        var job = Sump.Job(
            900,
            300,
            Sump.Tank(start: celsius, ambient: celsius),
            Sump.Oil(line: Sump.Vg460),
            targetCode: "18/16/13"
        );
        Sump.Vg460.ViscosityAt(Sump.Celsius(celsius)).Viscosity.Centistokes.ShouldBeGreaterThan(5000);
        var loop = new SideLoop(Pump, Sump.Celsius(50), Power.FromKilowatts(18));
        new Coalescer(loop, Ratio.FromPercent(60), 1).Assess(job).WhyNotWater.ShouldBe(WhyNot.PumpCannotStart);
        new FineFiltration(loop, Sump.Filter, 1).Assess(job).WhyNotParticles.ShouldBe(WhyNot.PumpCannotStart);
        var plan = PurificationPlan.Create(job, Sump.PlainUnit());
        plan.WhyNot.ShouldBe(WhyNot.PumpCannotStart);
        plan.FullFlow.ShouldBeOfType<Arrival<TimeSpan>.Never>();
        loop.StartViscosity.Centistokes.ShouldBe(5000, 1e-6);

        // A pump that holds its flow at more than that starts there as well.
        new SideLoop(
            new PumpViscosityLimit(VolumeFlow.FromLitersPerMinute(20), KinematicViscosity.FromCentistokes(9000))
        ).StartViscosity.Centistokes.ShouldBe(9000, 1e-6);
    }

    /// <summary>18 kW in 20 L/min would lift the oil by 32 K: the heater turns down to 11 K, 0.3333 L/s × 0.866 kg/L × 1.95 kJ/(kg K) × 11 K = 6.2 kW.</summary>
    [Fact]
    public void The_heater_turns_down_to_keep_the_rise()
    {
        var plan = PurificationPlan.Create(Sump.Job(900, 150), Sump.PlainUnit());
        var first = plan.States[0];
        (first.ProcessTemperature - first.TankTemperature).Kelvins.ShouldBe(11, 1e-9);
        ((double)first.HeaterPower.Kilowatts).ShouldBe(6.2, 0.1);
        plan.HeldToRiseUntil.ShouldNotBeNull();
        plan.HeldToRiseUntil!.Value.ShouldBeLessThan(plan.Last.Time);
        PurificationPlan.Create(Sump.Job(900, 150), Sump.PlainUnit(kilowatt: 5)).HeldToRiseUntil.ShouldBeNull();
    }

    /// <summary>Neither pumped at its pour point nor heated to within 30 K of its flash point.</summary>
    [Fact]
    public void Pour_point_and_flash_point_are_outcomes_of_their_own()
    {
        TreatedOil Oil(double? pour, double? flash) =>
            new(
                Sump.Oil().Properties,
                Sump.Mineral,
                Sump.Vg46,
                Sump.Celsius(150),
                pourPoint: pour is { } cold ? Sump.Celsius(cold) : null,
                flashPoint: flash is { } hot ? Sump.Celsius(hot) : null
            );
        WhyNot?[] Rows(TreatedOil oil, double start)
        {
            var job = Sump.Job(900, 300, Sump.Tank(start: start, ambient: 20), oil);
            return
            [
                new Coalescer(Loop(), Ratio.FromPercent(60), 1).Assess(job).WhyNotWater,
                PurificationPlan.Create(job, Sump.Unit(celsius: 50)).WhyNotWater,
            ];
        }

        Rows(Oil(-12, 200), -10).ShouldAllBe(row => row == null);
        Rows(Oil(-9, 200), -10).ShouldAllBe(row => row == WhyNot.BelowPourPoint);
        Rows(Oil(null, 81), 20).ShouldAllBe(row => row == null);
        Rows(Oil(null, 79), 20).ShouldAllBe(row => row == WhyNot.NearFlashPoint);
    }
}
