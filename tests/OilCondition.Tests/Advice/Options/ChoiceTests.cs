using UnitsNet;

namespace OilCondition.Tests.Advice.Options;

/// <summary>Which way is taken: against a closed form by hand, and by the stated rule.</summary>
public class ChoiceTests
{
    private const string DirtLimits = """
        { "measurand": "particles-4um", "kind": "absolute", "upper": { "alert": 2500, "alarm": 20000 }, "source": { "kind": "user-data", "text": "invented" } },
        { "measurand": "particles-6um", "kind": "absolute", "upper": { "alert": 640, "alarm": 5000 }, "source": { "kind": "user-data", "text": "invented" } },
        { "measurand": "particles-14um", "kind": "absolute", "upper": { "alert": 80, "alarm": 640 }, "source": { "kind": "user-data", "text": "invented" } }
        """;

    private static readonly DecisionOptions Exactly = new(errors: InventedYard.NoErrors);

    /// <summary>
    /// By hand: t = V/(Q e) ln(N0/N) = 1000/(10 × 0.8) ln(8000/1300) = 227.1 min, the size of 4 µm(c) rules (ISO 4406, Table 1: number 17 ends at 1300 per mL). The loop
    /// costs 10 × 3.785 + 180 = 217.85. An oil change of 950 L takes 2 × 950/50 = 38 min: 6.33 + 950 p. They are equal at p = 0.2226 a litre.
    /// </summary>
    [Theory]
    [InlineData("0.220", "DRUMS", 215.33)]
    [InlineData("0.225", "LOOP", 217.85)]
    public void Of_two_ways_the_cheaper_one_is_taken(string pricePerLitre, string expected, double cost)
    {
        var decision = Dirty(
                $"\"perHour\": 10, \"perKilowattHour\": 0, \"perElement\": 180, \"perLitreOfNewOil\": {pricePerLitre}, \"perLitreOfWaste\": 0"
            )
            .Decision(Exactly);

        decision.ByCost.ShouldBeTrue();
        decision.Choice!.Id.ShouldBe(expected);
        decision.Choice.Cost!.P50!.Value.ShouldBe(cost, 0.02);
        decision.Choice.Verdict.ShouldBe(OptionVerdict.Meets);
        decision.Target.Code!.ToString().ShouldBe("17/15/12");
    }

    [Fact]
    public void Hours_and_dates_are_those_of_the_balance()
    {
        var option = Dirty("").Decision(Exactly).Options.Single(one => one.Id == "LOOP");

        var hours = 1000 / (10 * 0.8) * Math.Log(8000.0 / 1300) / 60;
        option.Assessment!.Band!.TimeP50!.Value.TotalHours.ShouldBe(hours, 1e-3);
        (option.DoneP90!.Value - InventedYard.AsOf).TotalHours.ShouldBe(hours, 1e-3);
        option.Bound!.Value.TotalHours.ShouldBe(hours, 1e-3);
    }

    [Fact]
    public void Without_a_price_of_something_that_is_used_the_hours_decide()
    {
        // An oil change binds 4 h of connecting and 0.63 h, the loop 3.79 h.
        var decision = Dirty(
                "\"perHour\": 10, \"perKilowattHour\": 0, \"perElement\": 180, \"perLitreOfNewOil\": 0.001"
            )
            .Decision(Exactly);

        decision.ByCost.ShouldBeFalse();
        decision.Choice!.Id.ShouldBe("LOOP");
        decision.Options.Single(one => one.Id == "DRUMS").Cost!.WithoutPrice.ShouldBe(["waste"]);
    }

    [Fact]
    public void Without_prices_it_is_said_what_each_way_uses()
    {
        var text = Dirty("").Decision(Exactly).ToString();

        text.ShouldContain("uses 1 element");
        text.ShouldContain("uses 950 L of new oil");
        Dirty("\"perHour\": 10").Decision(Exactly).ToString().ShouldNotContain("uses 1 element");
    }

    [Fact]
    public void A_rule_of_the_plant_takes_its_place()
    {
        var decision = Dirty("").Decision(new DecisionOptions(errors: InventedYard.NoErrors, rule: new LastById()));

        decision.Choice!.Verdict.ShouldBe(OptionVerdict.Waits);
        decision.Options[0].Id.ShouldBe("wait");
        decision.ToString().ShouldContain("the last by name");
    }

    [Fact]
    public void The_order_of_the_equipment_does_not_matter()
    {
        var one = Dirty("", $"{InventedYard.Loop}, {InventedYard.Drums}, {InventedYard.Vacuum}").Decision();
        var other = Dirty("", $"{InventedYard.Vacuum}, {InventedYard.Drums}, {InventedYard.Loop}").Decision();

        other.Options.Select(option => option.Id).ShouldBe(one.Options.Select(option => option.Id));
    }

    [Fact]
    public void What_is_hired_costs_each_day_begun_and_its_mobilisation_and_comes_after_its_lead_time()
    {
        var hired = InventedYard.Loop.Replace(
            "\"connectHours\": 0",
            "\"connectHours\": 11, \"leadDays\": 6, \"hire\": { \"dayRate\": 400, \"mobilisation\": 900 }",
            StringComparison.Ordinal
        );
        var option = Dirty("\"perHour\": 0, \"perKilowattHour\": 0, \"perElement\": 0", hired)
            .Decision(Exactly)
            .Options[0];

        // 11 + 3.79 + 11 h = 25.8 h: two days begun.
        option.Cost!.P50!.Value.ShouldBe(2 * 400 + 900, 1e-6);
        option.Begins.ShouldBe(InventedYard.AsOf.AddDays(6));
        (option.DoneP50!.Value - option.Begins!.Value).TotalHours.ShouldBe(11 + 3.785, 0.01);
    }

    [Fact]
    public void Water_and_dirt_are_also_treated_one_after_the_other()
    {
        var yard = new InventedYard
        {
            Limits = InventedYard.Absolute("water-content", 200, 500) + "," + DirtLimits,
            Equipment = $"{InventedYard.Loop}, {InventedYard.Vacuum}",
            Readings =
            [
                .. InventedYard.Counts(8000, 1200, 100),
                .. InventedYard.Monthly(Measurands.WaterContent, 300, 300, 300, 300, 300, 300),
            ],
        };

        var decision = yard.Decision(Exactly);

        decision.Topics.ShouldBe([ProblemTopic.Water, ProblemTopic.Dirt]);
        decision.Choice!.Id.ShouldBe("VDU+LOOP");
        decision.Choice.Equipment.ShouldBe(["VDU", "LOOP"]);
        decision.Options.Single(one => one.Id == "VDU").Verdict.ShouldBe(OptionVerdict.DoesNotReach);
        decision.Options.Single(one => one.Id == "LOOP").WhyNot.ShouldBe(OilCondition.Treatment.WhyNot.NotTouched);
    }

    [Fact]
    public void New_oil_that_is_dirtier_than_what_is_to_be_kept_is_ruled_out()
    {
        var dirty = InventedYard.Drums.Replace("\"at4\": 100", "\"at4\": 9000", StringComparison.Ordinal);
        var yard = new InventedYard
        {
            Limits = InventedYard.Absolute("water-content", 200, 500) + "," + DirtLimits,
            Equipment = dirty,
            Readings =
            [
                .. InventedYard.Counts(800, 200, 20),
                .. InventedYard.Monthly(Measurands.WaterContent, 300, 300, 300, 300, 300, 300),
            ],
        };

        var decision = yard.Decision(Exactly);

        decision.Topics.ShouldBe([ProblemTopic.Water]);
        decision.Target.IsCodeToBeReached.ShouldBeFalse();
        decision.Target.Code!.At4.ToString().ShouldBe("18");
        decision.Options.Single(one => one.Id == "DRUMS").Verdict.ShouldBe(OptionVerdict.DoesNotReach);
    }

    [Fact]
    public void Where_nothing_stands_in_the_yard_the_task_is_sized()
    {
        var decision = Dirty("", "").Decision(Exactly);

        decision.Choice!.Verdict.ShouldBe(OptionVerdict.Waits);
        decision.Sizing.ShouldContain(one => one.StartsWith("flow of a loop with β 200", StringComparison.Ordinal));
        decision.ToString().ShouldContain("Such a task needs: to be done within");
    }

    private static InventedYard Dirty(string prices, string? equipment = null) =>
        new()
        {
            Limits = DirtLimits,
            Equipment = equipment ?? $"{InventedYard.Loop}, {InventedYard.Drums}",
            Prices = prices,
            Readings = [.. InventedYard.Counts(8000, 1200, 100)],
        };

    private sealed class LastById : ChoiceRule
    {
        public override string Statement => "the last by name";

        public override IReadOnlyList<TreatmentOption> Rank(IReadOnlyList<TreatmentOption> options) =>
            [.. options.OrderByDescending(one => one.Id, StringComparer.Ordinal)];
    }
}
