using CsCheck;
using OilCondition.Tests.Properties;
using OilCondition.Treatment;
using UnitsNet;
using Outcome = OilCondition.Treatment.VacuumPump.LoadOutcome;

namespace OilCondition.Tests.Treatment.Equipment;

public class VacuumPumpTests
{
    private static readonly VolumeFlow Forty = VolumeFlow.FromCubicMetersPerHour(40);

    private static readonly VacuumPump Ring = VacuumPump.LiquidRing(Forty, Sump.Celsius(20));

    private static VacuumPump Sealed(bool ballast = true) =>
        VacuumPump.OilSealed(Forty, Pressure.FromMillibars(30), ballast);

    private static VacuumPump.Load On(VacuumPump pump, double millibar, double vapour, double air) =>
        pump.Carry(
            Pressure.FromMillibars(millibar),
            MassFlow.FromKilogramsPerHour(vapour),
            MassFlow.FromKilogramsPerHour(air),
            Sump.Celsius(20)
        );

    /// <summary>IF97: 2339 Pa at 20 °C, 3170 Pa at 25 °C.</summary>
    [Fact]
    public void A_liquid_ring_stops_at_the_vapour_pressure_of_its_ring_water()
    {
        Ring.LowestPressure.Pascals.ShouldBe(2339, 1);
        Ring.CapacityAt(Pressure.FromMillibars(23)).CubicMetersPerHour.ShouldBe(0);
        On(Ring, 23, 0, 0.1).Outcome.ShouldBe(Outcome.RingWaterBoils);
        On(Ring, 60, 0.3, 0.5).Outcome.ShouldBe(Outcome.Carried);
        Ring.ChamberAt(Pressure.FromMillibars(10)).AbsolutePressure.Pascals.ShouldBe(1.1 * 2339, 1);
        Ring.ChamberAt(Pressure.FromMillibars(60)).AbsolutePressure.Millibars.ShouldBe(60, 1e-9);
    }

    /// <summary>
    /// A pump maker's public example: 0.76 of the capacity at 75 Torr with ring water of 86 °F, stated for 60 °F. The formula gives (100 − 42.5)/(100 − 17.1)
    /// = 0.694, 9 % less: vapour that condenses in the ring is not in it.
    /// </summary>
    [Fact]
    public void Warm_ring_water_costs_capacity()
    {
        var warm = VacuumPump.LiquidRing(Forty, Temperature.FromDegreesFahrenheit(86));
        var share = warm.CapacityAt(Pressure.FromTorrs(75)) / Forty;

        share.ShouldBe(0.76, 0.08);
        share.ShouldBe((9999 - 4247) / (9999 - 1706.0), 0.002);
        VacuumPump
            .LiquidRing(Forty, Sump.Celsius(15))
            .CapacityAt(Pressure.FromMillibars(100))
            .CubicMetersPerHour.ShouldBe(40, 1e-9);
    }

    /// <summary>Handbook form: 217 S p/T = 217 · 40 · 30/293.15 = 888 g/h.</summary>
    [Fact]
    public void An_oil_sealed_pump_bears_vapour_up_to_its_tolerance_with_gas_ballast()
    {
        Sealed().WaterVapourCapacity!.Value.GramsPerHour.ShouldBe(888, 2);
        Sealed(ballast: false).WaterVapourCapacity!.Value.GramsPerHour.ShouldBe(0);
        VacuumPump.Dry(Forty).WaterVapourCapacity.ShouldBeNull();

        // 1 kg/h of vapour is 55.5 mol, 0.5 kg/h of air 17.3 mol: 76 % of the gas is vapour.
        On(Sealed(), 60, 1, 0.5).Outcome.ShouldBe(Outcome.VapourCondenses);
        On(Sealed(), 60, 1, 0.5).VapourPressure.Millibars.ShouldBe(45.8, 0.1);
        On(Sealed(), 30, 0.5, 0.5).Outcome.ShouldBe(Outcome.Carried);
        On(Sealed(ballast: false), 30, 0.1, 0.5).Outcome.ShouldBe(Outcome.NeedsGasBallast);
        On(Sealed(ballast: false), 30, 0, 0.5).Outcome.ShouldBe(Outcome.Carried);
    }

    [Fact]
    public void A_dry_pump_has_neither_limit()
    {
        var dry = VacuumPump.Dry(Forty);

        On(dry, 20, 0.5, 0).Outcome.ShouldBe(Outcome.Carried);
        On(dry, 1, 0.01, 0).Outcome.ShouldBe(Outcome.BelowUltimatePressure);

        // 1 kg/h of vapour at 20 hPa and 20 °C: 55.5 mol/h · 8.314 · 293.15/2000 = 67.6 m³/h.
        On(dry, 20, 1, 0).Outcome.ShouldBe(Outcome.TooMuchGas);
        On(dry, 20, 1, 0).Needed.CubicMetersPerHour.ShouldBe(67.6, 0.1);
    }

    /// <summary>The chamber on a pump behaves as the plan's own chamber does: at the least pressure that it holds with the load, the pump carries it.</summary>
    [Fact]
    public void The_plans_chamber_pressure_is_one_that_the_pump_carries()
    {
        var pump = VacuumPump.Dry(VolumeFlow.FromCubicMetersPerHour(20));
        var unit = Sump.Unit(chamber: pump.ChamberAt(Pressure.FromMillibars(30)), celsius: 70, kilowatt: 40);
        foreach (var state in PurificationPlan.Create(Sump.Job(3000, 100), unit).States)
        {
            pump.Carry(state.ChamberPressure, state.VapourFlow, MassFlow.Zero, state.ReturnTemperature)
                .Outcome.ShouldBe(Outcome.Carried);
        }
    }

    [Fact]
    public void Deeper_vacuum_never_gives_a_liquid_ring_more_capacity_than_its_reference_allows() =>
        Gen.Select(Gen.Double[1, 60], Gen.Double[1, 1000])
            .Holds(
                (celsius, millibar) =>
                {
                    var pump = VacuumPump.LiquidRing(Forty, Sump.Celsius(celsius));
                    var capacity = pump.CapacityAt(Pressure.FromMillibars(millibar)).CubicMetersPerHour;
                    capacity.ShouldBeInRange(0, 60);
                    (capacity > 0).ShouldBe(millibar > pump.LowestPressure.Millibars);
                }
            );

    [Fact]
    public void Bad_input_is_refused_by_name()
    {
        Kit.Refused(() => VacuumPump.LiquidRing(Forty, Sump.Celsius(0)), "ringWater");
        Kit.Refused(() => VacuumPump.Dry(VolumeFlow.Zero), "capacity");
        Kit.Refused(() => VacuumPump.OilSealed(Forty, Pressure.FromMillibars(-1), true), "waterVapourTolerance");
        Kit.Refused(() => VacuumPump.Dry(Forty, Pressure.FromBars(1)), "ultimatePressure");
        Kit.Refused(() => Ring.CapacityAt(Pressure.Zero), "intakePressure");
        Kit.Refused(() => On(Ring, 60, -1, 0), "vapour");
        Kit.Refused(() => On(Ring, 60, 0, -1), "dryAir");
        Ring.ToString().ShouldBe("liquid ring 40 m³/h, ring water at 20 °C, not below 23.4 hPa");
        Sealed().ToString().ShouldStartWith("oil sealed 40 m³/h, bears 30 hPa of vapour, gas ballast open");
        On(Ring, 60, 0, 1).ToString().ShouldStartWith("needs 14 of ");
    }
}
