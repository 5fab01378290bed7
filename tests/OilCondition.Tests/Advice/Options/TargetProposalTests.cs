using UnitsNet;

namespace OilCondition.Tests.Advice.Options;

/// <summary>What a treatment is to reach: limits, coldest temperature, margin.</summary>
public class TargetProposalTests
{
    /// <summary>log10 S = A − B/T through (20 °C, 100) and (60 °C, 400), worked out here on its own.</summary>
    private static double Saturation(double celsius)
    {
        var (t1, t2, t) = (293.15, 333.15, celsius + 273.15);
        var b = Math.Log(4) / (1 / t1 - 1 / t2);
        return 100 * Math.Exp(b * (1 / t1 - 1 / t));
    }

    [Fact]
    public void Dry_at_the_coldest_temperature_with_a_margin()
    {
        var target = Wet(300).Decision().Target;

        target.Bound.ShouldBe(TargetProposal.WaterBound.Standstill);
        target.Standstill!.Content.PartsPerMillion.ShouldBe(Saturation(10), 0.01);
        target.Water!.Value.PartsPerMillion.ShouldBe(0.8 * Saturation(10), 0.01);
        target.StandstillBreaksLimit.ShouldBeTrue();
    }

    [Fact]
    public void A_limit_below_that_sets_it()
    {
        var target = Wet(300, limit: 50).Decision(new DecisionOptions(margin: Ratio.FromPercent(90))).Target;

        target.Bound.ShouldBe(TargetProposal.WaterBound.Limit);
        target.Water!.Value.PartsPerMillion.ShouldBe(45, 1e-9);
        target.StandstillBreaksLimit.ShouldBeFalse();
    }

    /// <summary>40 % of the saturation at the running 40 °C lies above what 10 °C holds, 15 % below.</summary>
    [Theory]
    [InlineData(40, TargetProposal.WaterBound.Standstill)]
    [InlineData(15, TargetProposal.WaterBound.Limit)]
    public void A_limit_of_relative_saturation_counts_at_running_temperature(
        double percent,
        TargetProposal.WaterBound bound
    )
    {
        var yard = new InventedYard
        {
            Limits =
                InventedYard.Absolute("relative-saturation", percent, 90)
                + ","
                + InventedYard.Absolute("water-content", 400, 500),
            Readings = [.. InventedYard.Monthly(Measurands.WaterContent, 450, 450, 450)],
            Equipment = InventedYard.Vacuum,
        };

        var target = yard.Decision().Target;

        target.LimitMgPerKg!.Value.ShouldBe(percent / 100 * Saturation(40), 0.01);
        target.Bound.ShouldBe(bound);
    }

    /// <summary>The recorded 80 mg/kg where the oil holds 66 at standstill: the treatment would end wet.</summary>
    [Theory]
    [InlineData(80, true)]
    [InlineData(60, false)]
    public void A_recorded_target_that_standstill_would_break_is_said(double recorded, bool isBroken)
    {
        var yard = new InventedYard
        {
            Readings = [.. InventedYard.Monthly(Measurands.WaterContent, 300, 300, 300)],
            Equipment = InventedYard.Vacuum,
            Events =
                $$"""{ "machine": "M1", "kind": "vacuum-dehydration", "at": "2026-02-28T06:00:00Z", "measurand": "water-content", "target": {{recorded}}, "equipment": "VDU" }""",
        };

        var decision = yard.Decision();

        decision.UnderWay.ShouldNotBeNull();
        decision.Options.ShouldBeEmpty();
        decision.Target.StandstillBreaksStated.ShouldBe(isBroken);
        decision.ToString().Contains("Go on to", StringComparison.Ordinal).ShouldBe(isBroken);
    }

    [Fact]
    public void Without_saturation_and_without_a_limit_nothing_is_asked()
    {
        var yard = new InventedYard
        {
            Saturation = "",
            Readings = [.. InventedYard.Monthly(Measurands.WaterContent, 300, 300, 300)],
            Equipment = InventedYard.Vacuum,
        };

        var decision = yard.Decision();

        decision.Missing.ShouldContain("two saturations at two temperatures");
        decision.Choice.ShouldBeNull();
        decision.Options.ShouldBeEmpty();
    }

    private static InventedYard Wet(double water, double limit = 200) =>
        new()
        {
            Limits = InventedYard.Absolute("water-content", limit, 500),
            Readings = [.. InventedYard.Monthly(Measurands.WaterContent, water, water, water)],
            Equipment = InventedYard.Vacuum,
        };
}
