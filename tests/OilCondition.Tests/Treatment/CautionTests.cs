using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Treatment;

/// <summary>Cautions follow the conditions of the work, and are the same wherever the same work is shown.</summary>
public class CautionTests
{
    private static IReadOnlyList<Caution> Plan(double ppm, double celsius, double pascal, double kilowatt = 18) =>
        PurificationPlan
            .Create(Sump.Job(ppm, 20), Sump.Unit(kilowatt: kilowatt, celsius: celsius, pascal: pascal), Sump.Coarse)
            .Cautions;

    [Fact]
    public void A_deep_hot_vacuum_strips_and_a_shallow_warm_one_does_not()
    {
        Plan(900, 70, 1000).ShouldContain(Caution.LightEndsLost);
        Plan(900, 70, 10_000).ShouldNotContain(Caution.LightEndsLost);
        Plan(900, 50, 1000).ShouldNotContain(Caution.LightEndsLost);
    }

    /// <summary>52.9 mg/kg are dissolved at 20 °C: with 900 there is water to drain, and oil that foams.</summary>
    [Fact]
    public void Free_water_is_drained_first_and_foams()
    {
        Plan(900, 70, 1000).ShouldContain(Caution.DrainWaterFirst);
        Plan(900, 70, 1000).ShouldContain(Caution.FoamOver);
        Plan(50, 70, 1000).ShouldNotContain(Caution.DrainWaterFirst);
        Plan(50, 70, 1000).ShouldNotContain(Caution.FoamOver);
    }

    [Fact]
    public void A_cold_filter_has_no_hot_oil_and_a_heater_cokes()
    {
        var cold = new FineFiltration(Kit.Loop(), Sump.Filter, 1).Assess(Sump.Job(50, 40, targetCode: "16/14/11"));
        cold.Cautions.ShouldNotContain(Caution.HotOil);
        cold.Cautions.ShouldNotContain(Caution.CokingOnHeater);
        cold.Cautions.ShouldContain(Caution.MovingMachinery);
        var warm = new FineFiltration(Kit.Loop(celsius: 60, kilowatt: 6), Sump.Filter, 1).Assess(
            Sump.Job(50, 40, targetCode: "16/14/11")
        );
        warm.Cautions.ShouldContain(Caution.HotOil);
        warm.Cautions.ShouldContain(Caution.CokingOnHeater);
        warm.Cautions.ShouldContain(Caution.FlashPoint);
        Plan(900, 30, 1000, kilowatt: 0).ShouldNotContain(Caution.CokingOnHeater);
        new SettlingAndDraining(Length.FromMeters(1), Kit.Micrometres(100))
            .Assess(Sump.Job(900, 150))
            .Cautions.ShouldNotContain(Caution.MovingMachinery);
    }

    /// <summary>Row and plan of one work say the same; who knows no conditions says all that can be said of the kind.</summary>
    [Fact]
    public void The_same_work_has_the_same_cautions()
    {
        var job = Sump.Job(900, 150);
        var plan = PurificationPlan.Create(job, Sump.Unit());
        new VacuumDehydration(Sump.Unit()).Assess(job).Cautions.ShouldBe(plan.Cautions);
        TreatmentComparison.Of(job, new VacuumDehydration(Sump.Unit())).Rows[0].Cautions.ShouldBe(plan.Cautions);
        plan.Cautions.ShouldBeSubsetOf(CautionsOf.Treatment(TreatmentKind.VacuumDehydration));
        CautionsOf.Treatment(TreatmentKind.VacuumDehydration).ShouldBe(Enum.GetValues<Caution>(), ignoreOrder: true);
        CautionsOf.Vacuum.ShouldBe(CautionsOf.Treatment(TreatmentKind.VacuumDehydration));
    }
}
