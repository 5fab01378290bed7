using OilCondition.Cleanup;
using OilCondition.Tests.Text;
using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Advice.Options;

/// <summary>The same decision in another language and in other units.</summary>
public class DecisionLanguageTests
{
    private const int Seeds = 10;

    private static readonly Lazy<List<TreatmentDecision>> Drawn = new(() =>
        [.. Enumerable.Range(101, Seeds).SelectMany(seed => DecisionPropertyTests.Drawn(seed).Decide())]
    );

    private static readonly string[] English =
    [
        "the",
        "of",
        "and",
        "meets",
        "floor",
        "alarm",
        "alert",
        "until",
        "days",
        "free",
        "water",
        "planned",
        "new",
        "oil",
        "cost",
        "done",
        "by",
        "about",
        "takes",
        "needs",
        "without",
        "target",
        "flow",
        "size",
        "chance",
        "a",
    ];

    [Fact]
    public void German_says_the_same_figures_and_dates()
    {
        var pairs = Drawn.Value.SelectMany(Pairs).ToList();
        foreach (var (english, german) in pairs)
        {
            SaidTwice.HasTheSameFigures(english, german);
        }

        pairs.Count.ShouldBeGreaterThan(150);
    }

    /// <summary>Names come from the station file and stay as they are.</summary>
    [Fact]
    public void German_leaves_nothing_in_English_but_names()
    {
        foreach (var (_, german) in Drawn.Value.SelectMany(Pairs))
        {
            var own = Pattern
                .Of("kidney loop|vacuum unit|new oil|settling|hired unit|bis planned|in planned|\\(planned\\)")
                .Replace(german, "");
            Pattern.Of("[A-Za-z]+").Matches(own).Select(one => one.Value).Intersect(English).ShouldBeEmpty(german);
        }
    }

    [Fact]
    public void In_US_customary_units_no_SI_unit_is_left()
    {
        var us = Sentences.English.In(Sentences.Units.UsCustomary);
        var texts = Drawn.Value.SelectMany(decision => Told(us, decision)).ToList();

        texts.ShouldContain(text => text.Contains(" gal/min", StringComparison.Ordinal));
        texts.ShouldContain(text => text.Contains(" lb", StringComparison.Ordinal));
        texts.ShouldContain(text => text.Contains(" fl oz", StringComparison.Ordinal));
        // Density, heat loss and vacuum keep their SI units.
        texts.ShouldAllBe(text => !Pattern.Of(@"\d (°C|L|mL|L/min|kg|kg/h|mg/kg|mm²/s)(?![/\w])").IsMatch(text));
    }

    /// <summary>1 US gal = 3.785411784 L, 1 US fl oz = 29.57353 mL, 1 lb = 0.45359237 kg: NIST SP 811 (2008), appendix B.8.</summary>
    [Fact]
    public void Quantities_of_a_task_are_converted_as_the_tables_say()
    {
        var us = Sentences.English.In(Sentences.Units.UsCustomary);

        us.Need("loop", 3.785411784 * 12.3, "L/min").ShouldBe("flow of a loop with β 200 12.3 gal/min");
        us.Need("water", 0.45359237 * 7.77, "kg").ShouldBe("water to be removed 7.77 lb");
        us.Need("new-oil", 3.785411784 * 476, "L").ShouldBe("new oil 476 gal");
    }

    [Fact]
    public void What_is_seldom_said_is_said_in_both_languages()
    {
        var machine = InventedYardMachine();
        Words[] seldom =
        [
            say => say.AnAlertStands(),
            say => say.NoWaterFigure(),
            say => say.NoSaturation(),
            say => say.NoViscosity(),
            say => say.NotConnected(machine),
            say => say.NotEnoughPower(Power.FromKilowatts(12), Power.FromKilowatts(4)),
            say => say.NotEnoughElements(3, 1),
            say => say.NotEnoughOil(1000, Volume.FromLiters(400)),
            say => say.NoOutage(),
            say => say.OutageTooShort(TimeSpan.FromHours(40), TimeSpan.FromHours(12)),
            say => say.RenewsTooLittle(),
            say => say.OnlyCleans(),
            say => say.NothingUntil(outage: true),
            say => say.NothingUntil(outage: false),
            say => say.InARow("A", "B"),
            say => say.AnotherUnit("VDU", "M2", Ratio.FromPercent(41), Ratio.FromPercent(50)),
            .. Enum.GetValues<WhyNot>().Select<WhyNot, Words>(reason => say => say.Of(reason)),
        ];

        seldom.Select(words => words(Sentences.English)).ShouldBeUnique();
        seldom.Select(words => words(Sentences.German)).ShouldBeUnique();
        seldom.ShouldAllBe(words => words(Sentences.English) != words(Sentences.German));
        foreach (var german in seldom.Select(words => words(Sentences.German)))
        {
            Pattern
                .Of("[A-Za-z]+")
                .Matches(german)
                .Select(one => one.Value)
                .Intersect(English[..^1])
                .ShouldBeEmpty(german);
        }

        Enum.GetValues<PlanSizing.Setting>()
            .Select(one => "size." + PlainText.Kebab(one))
            .Concat(
                Enum.GetValues<TreatmentDoubts>()
                    .Where(one => one != TreatmentDoubts.None)
                    .Select(one => "doubt." + PlainText.Kebab(one))
            )
            .ShouldBeSubsetOf(Sentences.German.Keys);
    }

    /// <summary>The plant's own sentence for a rule of its own is nobody's to translate.</summary>
    [Fact]
    public void A_rule_of_ones_own_is_told_in_its_own_words()
    {
        Sentences.German.Of(new OwnRule()).ShouldBe("what the shift leader likes");
        Sentences.German.Of(ChoiceRule.CheapestInTime).ShouldStartWith("der günstigste Weg");
        Sentences.English.Of(ChoiceRule.CheapestInTime).ShouldBe(ChoiceRule.CheapestInTime.Statement);
    }

    private static Machine InventedYardMachine() => new InventedYard().Station().Machines[0].Machine;

    private static IEnumerable<(string English, string German)> Pairs(TreatmentDecision decision) =>
        Told(Sentences.English, decision).Zip(Told(Sentences.German, decision));

    /// <summary>All that a decision says, a fact an entry.</summary>
    private static IEnumerable<string> Told(Sentences say, TreatmentDecision decision) =>
        [
            say.Recommendation(decision),
            say.Target(decision),
            say.RiskReason(decision),
            say.Of(decision.DecisionOptions.Rule),
            say.Notice,
            .. say.Lines(decision.Waiting),
            .. say.Sizing(decision),
            .. decision.OneMoreSample is { } sample ? [say.Of(sample)] : Array.Empty<string>(),
            .. decision.Figures.Where(one => one.IsAssumed).Select(one => say.Of(one.Item)),
            .. decision.Options.SelectMany(option => say.Remarks(option).Prepend(say.Of(option))),
        ];

    private sealed class OwnRule : ChoiceRule
    {
        public override string Statement => "what the shift leader likes";

        public override IReadOnlyList<TreatmentOption> Rank(IReadOnlyList<TreatmentOption> options) => options;
    }
}
