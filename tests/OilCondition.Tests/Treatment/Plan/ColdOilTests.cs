using OilCondition.Treatment;
using OilCondition.Viscosity;

namespace OilCondition.Tests.Treatment.Plan;

/// <summary>What cold thick oil costs: a plan beside the same plan with a light oil. The station is invented.</summary>
public class ColdOilTests
{
    /// <summary>Start at 5 °C: the flow is full flow × 700/ν, and the heater gives no more than that flow carries away.</summary>
    [Fact]
    public void Cold_heavy_oil_costs_hours()
    {
        (PurificationPlan Heavy, PurificationPlan Light) Start(ViscosityTemperatureLine line)
        {
            var job = Sump.Job(900, 120, Sump.Tank(start: 5, ambient: 5), Sump.Oil(line: line));
            return (
                PurificationPlan.Create(job, Sump.Unit()),
                PurificationPlan.Create(job.With(oil: Sump.Oil(line: Sump.Vg46)), Sump.Unit())
            );
        }

        static double Lost((PurificationPlan Heavy, PurificationPlan Light) pair) =>
            pair.Heavy.Arrival.Hours() - pair.Light.Arrival.Hours();
        var (vg320, vg460) = (Start(Sump.Vg320), Start(Sump.Vg460));

        var first = vg460.Heavy.States[0];
        var viscosity = Sump.Vg460.ViscosityAt(Sump.Celsius(5)).Viscosity.Centistokes;
        first.Flow.LitersPerMinute.ShouldBe(20 * 700 / viscosity, 1e-9);
        viscosity.ShouldBeInRange(4000, 12_000);
        ((double)first.HeaterPower.Kilowatts).ShouldBeInRange(1, 5);
        first.ProcessTemperature.DegreesCelsius.ShouldBe(65, 1e-6);
        ((double)vg460.Light.States[0].HeaterPower.Kilowatts).ShouldBe(18, 1e-6);

        Lost(vg460).ShouldBeGreaterThan(Lost(vg320));
        Lost(vg320).ShouldBeGreaterThan(1);
        vg460.Heavy.FullFlow.ShouldBeExpected();
        vg460.Heavy.FullFlow.Time().ShouldBeGreaterThan(vg320.Heavy.FullFlow.Time());
        vg460.Light.FullFlow.ShouldBeAlready();
        vg460.Heavy.IsViscosityExtrapolated.ShouldBeTrue();
        vg460.Light.IsViscosityExtrapolated.ShouldBeFalse();
        var full = Sump.Unit().Pump.ColdestAtFullFlow(Sump.Vg460).Temperature.DegreesCelsius;
        var around = vg460
            .Heavy.States.Where(state => Math.Abs((state.Time - vg460.Heavy.FullFlow.Time()).TotalHours) <= 1)
            .ToList();
        around.First().TankTemperature.DegreesCelsius.ShouldBeLessThan(full);
        around.Last().TankTemperature.DegreesCelsius.ShouldBeGreaterThan(full);
        Lost(Start(Sump.Vg46)).ShouldBe(0, 1e-9);
    }

    /// <summary>Losses can hold thick oil at a cold balance, where the little flow carries no more heat than the tank loses.</summary>
    [Fact]
    public void A_tank_that_loses_too_much_stays_cold()
    {
        var tank = Sump.Tank(start: 5, ambient: 5, loss: 800);
        var stuck = PurificationPlan.Create(Sump.Job(900, 120, tank, Sump.Oil(line: Sump.Vg460)), Sump.Unit());
        var light = PurificationPlan.Create(Sump.Job(900, 120, tank), Sump.Unit());
        stuck.End.TankTemperature.DegreesCelsius.ShouldBeLessThan(light.End.TankTemperature.DegreesCelsius - 5);
        stuck.Last.TankTemperature.DegreesCelsius.ShouldBe(stuck.End.TankTemperature.DegreesCelsius, 0.2);
    }
}
