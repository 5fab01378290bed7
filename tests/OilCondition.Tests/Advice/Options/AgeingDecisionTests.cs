using UnitsNet;

namespace OilCondition.Tests.Advice.Options;

/// <summary>Aged oil is renewed, not cleaned: x_n = x_new + h^n (x − x_new), by hand.</summary>
public class AgeingDecisionTests
{
    private static readonly DecisionOptions Exactly = new(errors: InventedYard.NoErrors);

    /// <summary>
    /// New 0.1, now 0.35, alert 0.28: within 0.8 × 0.18 = 0.144 of new. A heel of 5 % leaves 0.0125 after one change; of 60 % 0.15, 0.09 after two; of 90 %
    /// 0.182 even after three.
    /// </summary>
    [Theory]
    [InlineData(0.05, 950)]
    [InlineData(0.6, 800)]
    public void As_many_changes_as_it_takes(double heel, double litres)
    {
        var decision = Aged(heel).Decision(Exactly);
        var option = decision.Options.Single(one => one.Id == "DRUMS");

        option.Verdict.ShouldBeOneOf(OptionVerdict.Meets, OptionVerdict.MeetsLate);
        option.Assessment!.NewOil.Liters.ShouldBe(litres, 1e-6);
        option.Assessment.Band!.TimeP50!.Value.TotalHours.ShouldBe(2 * litres / 50 / 60, 1e-6);
        decision.Options.Single(one => one.Id == "LOOP").RuledOut.ShouldBe("it cleans the oil, and does not renew it");
    }

    [Fact]
    public void A_heel_that_keeps_it_aged_is_ruled_out()
    {
        Aged(0.9)
            .Decision(Exactly)
            .Options.Single(one => one.Id == "DRUMS")
            .Verdict.ShouldBe(OptionVerdict.DoesNotReach);
    }

    [Fact]
    public void Ageing_and_water_are_two_decisions()
    {
        var yard = Aged(0.05, water: 300);

        var decisions = yard.Decide(Exactly);

        decisions.Select(one => one.Topics.Single()).ShouldBe([ProblemTopic.Water, ProblemTopic.OilAgeing]);
        decisions[1].OneMoreSample.ShouldBeNull();
        decisions[1].ToString().ShouldContain("acid number inside the limits again, with new oil");
    }

    private static InventedYard Aged(double heel, double? water = null) =>
        new()
        {
            Limits =
                InventedYard.Absolute("acid-number", 0.28, 0.4)
                + ","
                + InventedYard.Absolute("water-content", 200, 500),
            Equipment =
                InventedYard.Drums.Replace(
                    "\"heel\": 0.05",
                    FormattableString.Invariant($"\"heel\": {heel}"),
                    StringComparison.Ordinal
                )
                + ","
                + InventedYard.Loop,
            Readings =
            [
                .. InventedYard.Monthly(Measurands.AcidNumber, 0.28, 0.29, 0.31, 0.32, 0.34, 0.35),
                .. water is { } wet ? InventedYard.Monthly(Measurands.WaterContent, wet, wet, wet, wet, wet, wet) : [],
            ],
        };
}
