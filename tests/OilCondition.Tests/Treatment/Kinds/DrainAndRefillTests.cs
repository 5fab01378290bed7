using OilCondition.Cleanliness;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Kinds;

/// <summary>An oil change against dilution worked by hand.</summary>
public class DrainAndRefillTests
{
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
        row.Water.ShouldBeExpected();
        row.NewOil.Liters.ShouldBe(3600, 1e-6);
        row.RunTime!.Value.TotalHours.ShouldBe(2.0, 1e-9);
        row.Electricity.KilowattHours.ShouldBe(4, 1e-9);
        change.Assess(Sump.Job(1000, 40)).WhyNotWater.ShouldBe(WhyNot.FloorAboveTarget);
        change.Assess(Sump.Job(1000, 150)).NewOil.Liters.ShouldBe(1800, 1e-6);

        // 20/18/15 at its upper limits, 10 000 at 4 µm(c), to 18: 2500; new oil at 17, 1300: 1300 + 0.1 × 8700 = 2170.
        var dirty = change.Assess(Sump.Job(1000, 150, targetCode: "18/16/13"));
        dirty.Particles.ShouldBeExpected();
        dirty.NewOil.Liters.ShouldBe(1800, 1e-6);
        change.Assess(Sump.Job(1000, 150, targetCode: "16/14/11")).WhyNotParticles.ShouldBe(WhyNot.FloorAboveTarget);
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

        Row(150, 0).RunTime!.Value.TotalHours.ShouldBe(1, 1e-9);
        Row(150, 20).RunTime!.Value.TotalHours.ShouldBe(2, 1e-9);
        Row(157, 20).RunTime!.Value.TotalHours.ShouldBe(1, 1e-9);
        Row(156, 20).RunTime!.Value.TotalHours.ShouldBe(2, 1e-9);
        Row(60, 0).Water.ShouldBeExpected();
        Row(60, 20).WhyNotWater.ShouldBe(WhyNot.IngressTooHigh);

        // 2500 at 4 µm(c) is 18; 1300 + 0.1 × 8700 = 2170, and 1.2e7 per minute × 60 min / 2e6 mL = 360 more: 2530. Two changes: 1387 + 720.
        var dirty = change.Assess(
            Sump.Job(1000, 150, Sump.Tank(ingression: new ParticleIngression(1.2e7, 0, 0)), targetCode: "18/16/13")
        );
        dirty.Particles.Hours().ShouldBe(2, 1e-9);

        // 80 at 14 µm(c) is 13; 40 + 0.1 × 280 = 68, and 5e5 per minute make it 83.
        var coarse = change.Assess(
            Sump.Job(1000, 150, Sump.Tank(ingression: new ParticleIngression(5e5, 5e5, 5e5)), targetCode: "18/16/13")
        );
        coarse.Particles.Hours().ShouldBe(2, 1e-9);
    }
}
