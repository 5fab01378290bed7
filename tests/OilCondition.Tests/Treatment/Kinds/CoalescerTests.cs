using OilCondition.Cleanup;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Kinds;

/// <summary>A coalescer against the loop of the Cleanup room, and what stops a loop.</summary>
public class CoalescerTests
{
    /// <summary>A second route: the loop of the same room, with the level that ingress adds.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(30)]
    public void A_coalescer_falls_as_a_loop_to_saturation(double ingress)
    {
        var job = Sump.Job(1000, 100, Sump.Tank(ingressGramPerHour: ingress));
        var row = new Coalescer(Kit.Loop(), Ratio.FromPercent(60), 3).Assess(job);
        var loop = new CleanupLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(40));
        var eta = Ratio.FromPercent(60);
        var perHour = ingress * 1e3 / job.OilMass.Kilograms;
        var level = loop.LevelWithIngress(52.876, perHour, eta);
        loop.TryTimeTo(1000, level, 100, eta, out var time).ShouldBeTrue();
        row.RunTime!.Value.TotalHours.ShouldBe(time.TotalHours, 1e-4);
        row.Elements.ShouldBe(3);
        var kilograms = job.OilMass.Kilograms * 900e-6 + ingress * 1e-3 * row.RunTime!.Value.TotalHours;
        row.WaterRemoved.Liters.ShouldBe(kilograms / 0.9982, 1e-6);
        row.WaterFloor.PartsPerMillion.ShouldBe(52.876, 0.001);
    }

    [Fact]
    public void A_coalescer_is_stopped_by_an_emulsion_and_by_detergents()
    {
        var coalescer = new Coalescer(Kit.Loop(), Ratio.FromPercent(60), 3);
        var row = coalescer.Assess(Sump.Job(1000, 100, emulsified: 0.2));
        row.WhyNotWater.ShouldBe(WhyNot.EmulsionStays);
        // 52.876 + 0.2 × 947.124
        row.WaterFloor.PartsPerMillion.ShouldBe(242.30, 0.01);
        row.Elements.ShouldBe(0);
        var engine = new TreatedOil(
            Sump.Oil().Properties,
            Sump.Mineral,
            Sump.Vg46,
            Sump.Celsius(90),
            hasDetergents: true
        );
        coalescer.Assess(Sump.Job(1000, 100, oil: engine)).WhyNotWater.ShouldBe(WhyNot.DetergentsInOil);
    }

    [Fact]
    public void Loops_are_stopped_by_heat_and_cold()
    {
        WhyNot? Outcome(SideLoop loop, TreatmentJob job) =>
            new Coalescer(loop, Ratio.FromPercent(60), 1).Assess(job).WhyNotWater;
        Outcome(Kit.Loop(celsius: 80, kilowatt: 18), Sump.Job(1000, 600, oil: Sump.Oil(highest: 70)))
            .ShouldBe(WhyNot.TooHot);

        // A weak heater stops no separator: what is free at 25 °C is taken out at 25 °C. Where time runs out it is the reason.
        Outcome(Kit.Loop(celsius: 60, kilowatt: 1), Sump.Job(1000, 600)).ShouldBeNull();
        Outcome(Kit.Loop(celsius: 60, kilowatt: 1), Sump.Job(1000, 600, horizonHours: 0.5))
            .ShouldBe(WhyNot.HeaterTooWeak);
        Outcome(Kit.Loop(), Sump.Job(1000, 60, horizonHours: 1)).ShouldBe(WhyNot.TakesTooLong);
        Outcome(Kit.Loop(), Sump.Job(1000, 100, Sump.Tank(ingressGramPerHour: 500))).ShouldBe(WhyNot.IngressTooHigh);
    }
}
