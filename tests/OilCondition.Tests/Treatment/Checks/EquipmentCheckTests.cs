using OilCondition.Thermal;
using OilCondition.Treatment;
using UnitsNet;
using Trip = OilCondition.Treatment.Interlock.Trip;

namespace OilCondition.Tests.Treatment.Checks;

public class EquipmentCheckTests
{
    private static readonly DischargePump Discharge = new(
        VolumeFlow.FromLitersPerMinute(25),
        Length.FromMeters(1.2),
        Length.FromMeters(2),
        Length.FromMillimeters(40),
        Length.FromMeters(0.4),
        isVariableSpeed: true
    );

    private static readonly VacuumPump Dry = VacuumPump.Dry(VolumeFlow.FromCubicMetersPerHour(100));

    /// <summary>VG 460 at 20 °C is near 1900 mm²/s, and 3 kW warm 20 L/min by 5 K; 20 L/min take it below 739.6 mm²/s (by hand in the pump's own tests).</summary>
    [Fact]
    public void A_chamber_floods_while_the_oil_that_leaves_it_is_thick()
    {
        var job = Sump.Job(400, 100, oil: Sump.Oil(Sump.Turbine, Sump.Vg460));
        var plan = PurificationPlan.Create(job, Sump.Unit(kilowatt: 3, viscosity: 3000, pascal: 2000));
        var check = EquipmentCheck.Of(plan, Discharge);

        check.Passes.ShouldBeFalse();
        var until = check.FloodsUntil!.Value;
        foreach (var (state, draw) in plan.States.Zip(check.Draws))
        {
            var isThick = job.Oil.ViscosityLine.ViscosityAt(state.ReturnTemperature).Viscosity.Centistokes > 739.6;
            draw.Floods(state.Flow).ShouldBe(isThick);
            if (isThick)
            {
                state.Time.ShouldBeLessThanOrEqualTo(until);
            }
        }

        check.ToString().ShouldStartWith("discharge: the chamber floods until ");
    }

    [Fact]
    public void A_thin_oil_and_a_large_pump_pass()
    {
        var plan = PurificationPlan.Create(Sump.Job(400, 100), Sump.Unit(pascal: 2000));
        var check = EquipmentCheck.Of(plan, Discharge, Dry);

        check.Passes.ShouldBeTrue();
        check.Draws.Count.ShouldBe(plan.States.Count);
        check.Loads.Count.ShouldBe(plan.States.Count);
        check.Gas!.Before.Percent.ShouldBeInRange(7, 10);
        check.ToString().ShouldStartWith("discharge: draws all that comes; vacuum pump: carries all; oil: air ");
        EquipmentCheck.Of(plan).Loads.ShouldBeEmpty();
    }

    [Fact]
    public void Each_kind_of_vacuum_pump_fails_in_its_own_way()
    {
        var plan = PurificationPlan.Create(Sump.Job(2000, 100), Sump.Unit(pascal: 2000, kilowatt: 40));

        Overload(VacuumPump.LiquidRing(Flow(100), Sump.Celsius(20))).ShouldBe(VacuumPump.LoadOutcome.RingWaterBoils);
        Overload(VacuumPump.OilSealed(Flow(100), Pressure.FromMillibars(10), hasGasBallast: true))
            .ShouldBe(VacuumPump.LoadOutcome.VapourCondenses);
        Overload(VacuumPump.OilSealed(Flow(100), Pressure.FromMillibars(30), hasGasBallast: false))
            .ShouldBe(VacuumPump.LoadOutcome.NeedsGasBallast);
        Overload(VacuumPump.Dry(Flow(5))).ShouldBe(VacuumPump.LoadOutcome.TooMuchGas);

        VacuumPump.LoadOutcome? Overload(VacuumPump pump) =>
            EquipmentCheck.Of(plan, vacuumPump: pump).Overload?.Outcome;
        static VolumeFlow Flow(double perHour) => VolumeFlow.FromCubicMetersPerHour(perHour);
    }

    /// <summary>At 5 °C water condenses down to 8.7 hPa: of 40 hPa 22 % are left as vapour, whatever the oil gives off.</summary>
    [Fact]
    public void A_condenser_before_the_pump_takes_its_vapour()
    {
        var chamber = new VacuumChamber(Pressure.FromPascals(4000)).WithCondenserBeforePump(Sump.Celsius(5));
        var plan = PurificationPlan.Create(Sump.Job(2000, 100), Sump.Unit(chamber: chamber, kilowatt: 40));
        var loads = EquipmentCheck.Of(plan, vacuumPump: Dry).Loads;

        loads.Max(load => load.VapourPressure.Pascals).ShouldBe(872.6, 1);
    }

    [Fact]
    public void An_oil_outside_the_gas_method_is_said_to_be()
    {
        var ester = new TreatedOil(
            OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(970)),
            Sump.Turbine,
            Sump.Vg46,
            Sump.Celsius(100)
        );
        var check = EquipmentCheck.Of(PurificationPlan.Create(Sump.Job(400, 100, oil: ester), Sump.Unit()), Discharge);

        check.Gas.ShouldBeNull();
        check.ToString().ShouldEndWith("gas of the oil not known");
        Should.Throw<ArgumentNullException>(() => EquipmentCheck.Of(null!));
    }

    [Fact]
    public void Interlocks_follow_from_what_the_unit_has()
    {
        var job = Sump.Job(400, 100, oil: Sump.Oil(highest: 80));
        var plain = Interlock.Of(job, Sump.Unit(kilowatt: 0));
        var full = Interlock.Of(
            job,
            Sump.Unit(filter: Sump.Filter),
            VacuumPump.LiquidRing(VolumeFlow.FromCubicMetersPerHour(40), Sump.Celsius(20)),
            Discharge,
            new TankHeater(Power.FromKilowatts(6), Area.FromSquareMeters(1))
        );

        plain.ShouldNotContain(one => one.Kind == Trip.LowFlow || one.Kind == Trip.HighLimitTemperature);
        plain
            .Select(one => one.Kind)
            .ShouldBe([
                Trip.EmergencyStop,
                Trip.HighChamberLevel,
                Trip.LowChamberLevel,
                Trip.Foam,
                Trip.CondensateLevel,
            ]);
        full.Select(one => one.Kind).ShouldBe(Enum.GetValues<Trip>().Where(one => one != Trip.VacuumPumpOil));
        full.Single(one => one.Kind == Trip.HighLimitTemperature).Highest.ShouldBe(Sump.Celsius(80));
        full.Single(one => one.Kind == Trip.ProcessTemperature).Highest.ShouldBe(Sump.Celsius(65));
        full.ShouldAllBe(one => one.Proof.Length > 20 && one.Stops.Length > 5);
        Interlock
            .Of(job, Sump.Unit(), VacuumPump.OilSealed(VolumeFlow.FromCubicMetersPerHour(40), Pressure.Zero, true))
            .ShouldContain(one => one.Kind == Trip.VacuumPumpOil);
        full.Single(one => one.Kind == Trip.HighLimitTemperature)
            .ToString()
            .ShouldStartWith(
                "high limit temperature, at most 80 °C, stops the heater, until it is reset by hand; prove: "
            );
        Should.Throw<ArgumentNullException>(() => Interlock.Of(job, null!));
    }
}
