using OilCondition.Treatment;

namespace OilCondition.Tests.Treatment.Plan;

/// <summary>What sets the time of a plan. The station is invented.</summary>
public class PlanSensitivityTests
{
    [Fact]
    public void The_setting_that_is_worth_most_stands_on_top()
    {
        var job = Sump.Job(900, 150, Sump.Tank(start: 60, ingressGramPerHour: 40));
        var table = PlanSensitivity.Of(job, Sump.Unit(pascal: 10_000));
        table
            .Rows.Select(row => row.Setting)
            .ShouldBe(
                Enum.GetValues<PlanSensitivity.Setting>().Where(one => one != PlanSensitivity.Setting.SweepAir),
                ignoreOrder: true
            );
        PlanSensitivity.Effect Row(PlanSensitivity.Setting setting) => table.Rows.Single(row => row.Setting == setting);

        // 303 × 10 000/25 042 = 121 mg/kg: the target lies close above the floor, so that the floor sets the time.
        table.Plan.End.WaterFloor.PartsPerMillion.ShouldBe(121, 0.5);
        Row(PlanSensitivity.Setting.Vacuum).Plan.End.WaterFloor.PartsPerMillion.ShouldBe(90.7, 0.5);
        Row(PlanSensitivity.Setting.Vacuum).FloorDrop.PartsPerMillion.ShouldBe(30.2, 0.5);
        Row(PlanSensitivity.Setting.Flow).FloorDrop.PartsPerMillion.ShouldBe(0, 1e-6);
        Row(PlanSensitivity.Setting.WaterIngress).FloorDrop.PartsPerMillion.ShouldBe(0, 1e-6);
        Row(PlanSensitivity.Setting.WaterIngress).LevelDrop!.Value.PartsPerMillion.ShouldBeGreaterThan(10);
        table.Plan.WhyNot.ShouldBe(WhyNot.IngressTooHigh);
        table.Rows[0].MakesReachable.ShouldBeTrue();
        Row(PlanSensitivity.Setting.HeaterPower).MakesReachable.ShouldBeFalse();
        Row(PlanSensitivity.Setting.Vacuum).TimeSaved.ShouldBeNull();
        Row(PlanSensitivity.Setting.Vacuum).Step.ShouldBe("100 to 75 hPa");
        Row(PlanSensitivity.Setting.ProcessTemperature).Step.ShouldBe("65 to 70 °C");
        Row(PlanSensitivity.Setting.WaterIngress).Step.ShouldBe("40 to 30 g/h");
    }

    /// <summary>Warmer is thinner, and drier: where no limit holds it down, a higher setting of the thermostat never costs time.</summary>
    [Fact]
    public void A_warmer_setting_keeps_the_film_of_the_unit()
    {
        var table = PlanSensitivity.Of(
            Sump.Job(900, 120, Sump.Tank(start: 35, ambient: 15), Sump.Oil(line: Sump.Vg320)),
            Sump.PlainUnit(kilowatt: 6)
        );
        table
            .Rows.Single(row => row.Setting == PlanSensitivity.Setting.ProcessTemperature)
            .TimeSaved!.Value.ShouldBeGreaterThanOrEqualTo(TimeSpan.Zero);
    }

    /// <summary>A quarter more of the air that is there; 5 K and a quarter of the pressure move p/p_sat alike, 0.75 and 25.0/31.2 kPa (steam tables).</summary>
    [Fact]
    public void Each_row_is_a_step_of_what_is_there()
    {
        var table = PlanSensitivity.Of(Sump.Job(900, 100), Sump.Unit(airKilogramPerHour: 0.2));
        var air = table.Rows.Single(row => row.Setting == PlanSensitivity.Setting.SweepAir);
        air.Step.ShouldBe("0.2 to 0.25 kg/h");
        air.Plan.Unit.Chamber.Sweep.DryAir.KilogramsPerHour.ShouldBe(0.25, 1e-12);
        air.TimeSaved!.Value.ShouldBeGreaterThanOrEqualTo(TimeSpan.Zero);
        (25_042 / 31_201.0).ShouldBe(0.75, 0.06);
    }

    [Fact]
    public void A_limit_of_the_oil_holds_the_temperature_down()
    {
        var table = PlanSensitivity.Of(Sump.Job(900, 150, oil: Sump.Oil(highest: 65)), Sump.Unit());
        var warmer = table.Rows.Single(row => row.Setting == PlanSensitivity.Setting.ProcessTemperature);
        warmer.IsHeldDown.ShouldBeTrue();
        warmer.TimeSaved!.Value.TotalHours.ShouldBe(0, 1e-9);
        table.Rows.ShouldNotContain(row => row.Setting == PlanSensitivity.Setting.WaterIngress);
        table.Rows[0].TimeSaved!.Value.TotalHours.ShouldBeGreaterThan(0.3);
        table.Rows.Where(row => row.TimeSaved.HasValue).Count().ShouldBe(4);

        // No air that no one has connected.
        table.Rows.ShouldNotContain(row => row.Setting == PlanSensitivity.Setting.SweepAir);
    }
}
