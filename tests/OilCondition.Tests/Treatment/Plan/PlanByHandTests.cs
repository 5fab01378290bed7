using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Plan;

/// <summary>Rise per pass, floor and turnovers of a plan by hand.</summary>
public class PlanByHandTests
{
    /// <summary>
    /// Power over heat flow: 12 kW / (0.633 L/s × 0.85 kg/L × 1.96 kJ/(kg K)) = 11.4 K.
    /// </summary>
    [Fact]
    public void A_pass_lifts_the_oil_by_power_over_heat_flow()
    {
        var state = PurificationPlan.Create(Sump.Job(60, 50), Sump.Unit(litrePerMinute: 38, kilowatt: 12)).States[0];
        var rise = (state.ProcessTemperature - state.TankTemperature).Kelvins;
        rise.ShouldBe(11.3, 0.2);
    }

    /// <summary>
    /// The floor is the saturation times p/p_sat: 100 mg/kg is reached under 6.51 kPa without sweep, and 50 only with dry air or a deeper vacuum; 20.05 kPa alone
    /// reaches neither.
    /// </summary>
    [Theory]
    [InlineData(6510, 0, 100, null)]
    [InlineData(6510, 0, 50, WhyNot.FloorAboveTarget)]
    [InlineData(6510, 1, 50, null)]
    [InlineData(20_051, 0, 100, WhyNot.FloorAboveTarget)]
    [InlineData(20_051, 1, 30, null)]
    public void A_floor_decides_what_is_reached(double pascal, double air, double ppm, WhyNot? whyNot) =>
        PurificationPlan
            .Create(Sump.Job(500, ppm), Sump.Unit(pascal: pascal, airKilogramPerHour: air), Sump.Coarse)
            .WhyNot.ShouldBe(whyNot);

    /// <summary>
    /// 99 % of the excess takes ln 100/η = 4.605/η turnovers (water.csv): 4.6 at η = 1, 6.6 at 0.7, and 9.2 at 0.5.
    /// </summary>
    [Theory]
    [InlineData(1, 4.605)]
    [InlineData(0.7, 6.579)]
    [InlineData(0.5, 9.210)]
    public void Turnovers_are_the_logarithm_over_the_removal_per_pass(double eta, double turnovers)
    {
        var tank = Sump.Tank(start: 65, ambient: 65, loss: 0);
        var floor = Math.Pow(10, 7.42 - 1670 / 338.15) * 100 / 25_042;
        var plan = PurificationPlan.Create(
            Sump.Job(200, floor + 0.01 * (200 - floor), tank),
            Sump.Unit(pascal: 100, eta: eta)
        );
        plan.Last.Turnovers.ShouldBe(turnovers, 2e-3);
        plan.Last.VolumePassed.Liters.ShouldBe(2000 * turnovers, 5);
    }
}
