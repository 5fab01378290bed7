using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Plan;

/// <summary>Common practice, no source: what the trade says of purifiers, beside what the plan's physics gives.</summary>
public class PlanCommonPracticeTests
{
    /// <summary>
    /// Common practice: an in-line heater of 12 kW lifts 38 L/min by about 20 °F a pass. By hand: 12 kW / (0.633 L/s × 0.85 kg/L × 1.96 kJ/(kg K)) = 11.4 K.
    /// </summary>
    [Fact]
    public void A_pass_lifts_the_oil_by_about_20_fahrenheit()
    {
        var state = PurificationPlan.Create(Sump.Job(60, 50), Sump.Unit(litrePerMinute: 38, kilowatt: 12)).States[0];
        var rise = (state.ProcessTemperature - state.TankTemperature).Kelvins;
        rise.ShouldBe(11.3, 0.2);
        (rise * 1.8).ShouldBe(20, 1);
    }

    /// <summary>
    /// Common practice: 100 mg/kg and below is routine, 20 to 50 good practice. The plan reaches 100 under 28 inHg (6.51 kPa) without sweep, and 50
    /// only with dry air or a deeper vacuum; 24 inHg alone reaches neither.
    /// </summary>
    [Theory]
    [InlineData(6510, 0, 100, null)]
    [InlineData(6510, 0, 50, WhyNot.FloorAboveTarget)]
    [InlineData(6510, 1, 50, null)]
    [InlineData(20_051, 0, 100, WhyNot.FloorAboveTarget)]
    [InlineData(20_051, 1, 30, null)]
    public void A_hundred_is_routine_and_fifty_needs_dry_air(double pascal, double air, double ppm, WhyNot? whyNot) =>
        PurificationPlan
            .Create(Sump.Job(500, ppm), Sump.Unit(pascal: pascal, airKilogramPerHour: air), Sump.Coarse)
            .WhyNot.ShouldBe(whyNot);

    /// <summary>
    /// Common practice: five to seven turnovers. 99 % of the excess takes ln 100/η = 4.605/η turnovers (water.csv): 4.6 at η = 1, 6.6 at 0.7, and 9.2 at
    /// 0.5, where the rule is too short.
    /// </summary>
    [Theory]
    [InlineData(1, 4.605)]
    [InlineData(0.7, 6.579)]
    [InlineData(0.5, 9.210)]
    public void Five_to_seven_turnovers_hold_from_seventy_per_cent_on(double eta, double turnovers)
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
