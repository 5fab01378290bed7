using OilCondition.Cleanliness;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Kinds;

/// <summary>Elements that absorb water or hold back particles.</summary>
public class ElementTests
{
    /// <summary>2000 L of 865.5 kg/m³ at 20 °C... from 1000 to 100 mg/kg: 1.56 L of water; elements of 0.4 L: four.</summary>
    [Fact]
    public void Elements_are_counted_by_the_water_that_they_take()
    {
        var row = new WaterAbsorbingElements(
            Kit.Loop(motor: 1.5),
            Ratio.FromPercent(50),
            Volume.FromLiters(0.4)
        ).Assess(Sump.Job(1000, 100, emulsified: 1));
        row.Water.ShouldBeExpected();
        row.WaterRemoved.Liters.ShouldBe(2 * 866.8 * 900e-6 / 0.9982, 0.003);
        row.Elements.ShouldBe(4);
        row.RunTime!.Value.TotalHours.ShouldBe(Math.Log(947.124 / 47.124) / 0.6, 1e-4);
        row.Electricity.KilowattHours.ShouldBe(1.5 * row.RunTime!.Value.TotalHours, 1e-9);
    }

    [Fact]
    public void Filtration_leaves_water_alone()
    {
        var row = new FineFiltration(Kit.Loop(), Sump.Filter, 2).Assess(Sump.Job(1000, 100, targetCode: "16/14/11"));
        row.WhyNotWater.ShouldBe(WhyNot.NotTouched);
        row.MeetsTarget.ShouldBeFalse();
        var slowest = new[]
        {
            (Sump.Filter.At4, 10_000.0, 640.0),
            (Sump.Filter.At6, 2500, 160),
            (Sump.Filter.At14, 320, 20),
        }.Max(size =>
            new KidneyLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(40), size.Item1, 0)
                .TimeTo(size.Item2, size.Item3)
                .Hours()
        );
        row.Particles.Hours().ShouldBe(slowest, 1e-7);
        row.Elements.ShouldBe(2);
    }
}
