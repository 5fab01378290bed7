using OilCondition.Limits;
using OilCondition.Statistics;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Advice;

/// <summary>What an engineer would be told to do about each measurand: the table is written by hand (common practice, no source).</summary>
public class RecommendationTests
{
    private static readonly Source AnySource = Source.CommonPractice("invented");

    private static readonly Machine WithoutCurve = new(
        "M1",
        "invented machine",
        new Oil("invented oil", new Dictionary<Measurand, Reading>()),
        Volume.FromLiters(1000),
        Temperature.FromDegreesCelsius(60),
        Temperature.FromDegreesCelsius(20)
    );

    private static ConditionAssessment Beyond(Measurand measurand, LimitSide side)
    {
        // The alarm at three tenths of the plausible range from the side, the reading at two.
        var range = measurand.HighestPlausible - measurand.LowestPlausible;
        double At(double tenths) =>
            side == LimitSide.Lower
                ? measurand.LowestPlausible + tenths / 10 * range
                : measurand.HighestPlausible - tenths / 10 * range;
        var band = new LimitBand(null, At(3));
        var limit = new Limit(
            measurand,
            LimitKind.Absolute,
            side == LimitSide.Lower ? null : band,
            side == LimitSide.Lower ? band : null,
            AnySource
        );
        return ConditionAssessor.Assess(
            OilHistory.Create(WithoutCurve, [Invented.Sample(1, 390, (measurand, new Reading(At(2))))], [], []),
            new LimitSet("test", [limit]),
            new AssessmentOptions(Invented.Start.AddDays(400))
        );
    }

    private static string Actions(ConditionAssessment assessment) =>
        string.Join(" ", assessment.Recommendations.Select(one => one.Action));

    [Theory]
    [InlineData("water-content", "VacuumDehydrate")]
    [InlineData("relative-saturation", "VacuumDehydrate")]
    [InlineData("oil-temperature", "InvestigateCause")]
    [InlineData("oil-hours", "PlanOilChange")]
    [InlineData("particles-4um", "FilterInKidneyLoop FindDirtIngress")]
    [InlineData("particles-6um", "FilterInKidneyLoop FindDirtIngress")]
    [InlineData("particles-14um", "FilterInKidneyLoop FindDirtIngress")]
    [InlineData("viscosity-40c", "CheckOilIdentity")]
    [InlineData("viscosity-100c", "CheckOilIdentity")]
    [InlineData("viscosity-index", "CheckOilIdentity")]
    [InlineData("density-15c", "CheckOilIdentity")]
    [InlineData("acid-number", "PlanOilChange")]
    [InlineData("base-number", "PlanOilChange")]
    [InlineData("rpvot", "PlanOilChange")]
    [InlineData("antioxidant", "PlanOilChange")]
    [InlineData("membrane-patch-colour", "RemoveVarnish")]
    [InlineData("oxidation", "PlanOilChange")]
    [InlineData("flash-point", "CheckOilIdentity")]
    [InlineData("interfacial-tension", "PlanOilChange")]
    [InlineData("breakdown-voltage", "VacuumDehydrate")]
    [InlineData("iron", "FindWear")]
    [InlineData("copper", "FindWear")]
    [InlineData("tin", "FindWear")]
    [InlineData("lead", "FindWear")]
    [InlineData("chromium", "FindWear")]
    [InlineData("aluminium", "FindWear")]
    [InlineData("nickel", "FindWear")]
    [InlineData("silver", "FindWear")]
    [InlineData("titanium", "FindWear")]
    [InlineData("vanadium", "FindWear")]
    [InlineData("manganese", "FindWear")]
    [InlineData("cadmium", "FindWear")]
    [InlineData("antimony", "FindWear")]
    [InlineData("silicon", "FilterInKidneyLoop FindDirtIngress")]
    [InlineData("zinc", "CheckOilIdentity")]
    [InlineData("phosphorus", "CheckOilIdentity")]
    [InlineData("calcium", "CheckOilIdentity")]
    [InlineData("magnesium", "CheckOilIdentity")]
    [InlineData("barium", "CheckOilIdentity")]
    [InlineData("molybdenum", "CheckOilIdentity")]
    [InlineData("boron", "CheckOilIdentity")]
    [InlineData("sulfur", "CheckOilIdentity")]
    [InlineData("sodium", "InvestigateCause")]
    [InlineData("potassium", "InvestigateCause")]
    [InlineData("lithium", "InvestigateCause")]
    public void Past_its_alarm_each_measurand_gets_what_an_engineer_would_do(string id, string expected)
    {
        MeasurandCatalog.BuiltIn.TryFind(id, out var measurand).ShouldBeTrue();
        var assessment = Beyond(measurand, measurand.Worse);

        assessment.Worst.ShouldBe(Severity.Alarm);
        Actions(assessment).ShouldBe(expected);
        assessment.Recommendations.ShouldAllBe(one => one.Cautions.Count > 0);
    }

    [Fact]
    public void The_table_above_has_every_built_in_measurand() =>
        typeof(RecommendationTests)
            .GetMethod(nameof(Past_its_alarm_each_measurand_gets_what_an_engineer_would_do))!
            .GetCustomAttributes(typeof(InlineDataAttribute), false)
            .Length.ShouldBe(Measurands.All.Count);

    [Theory]
    [InlineData(MeasurandTopic.Water, "VacuumDehydrate", "water")]
    [InlineData(MeasurandTopic.Particles, "FilterInKidneyLoop FindDirtIngress", "dirt")]
    [InlineData(MeasurandTopic.Ageing, "PlanOilChange", "oil-ageing")]
    [InlineData(MeasurandTopic.Varnish, "RemoveVarnish", "varnish")]
    [InlineData(MeasurandTopic.OilIdentity, "CheckOilIdentity", "oil-identity/upper")]
    [InlineData(MeasurandTopic.Wear, "FindWear", "wear")]
    [InlineData(MeasurandTopic.Other, "InvestigateCause", "other/ours/upper")]
    public void A_measurand_of_the_user_is_treated_by_its_topic(MeasurandTopic topic, string expected, string key)
    {
        var ours = new Measurand("ours", "ours", "u", LimitSide.Upper, NaturalScale.Linear, 0, 100, topic: topic);
        var assessment = Beyond(ours, LimitSide.Upper);

        Actions(assessment).ShouldBe(expected);
        assessment.Alerts.Single().Key.ShouldBe("M1/undated/" + key);
    }

    [Theory]
    [InlineData("antioxidant", LimitSide.Upper)]
    [InlineData("base-number", LimitSide.Upper)]
    [InlineData("water-content", LimitSide.Lower)]
    [InlineData("iron", LimitSide.Lower)]
    public void Beyond_a_limit_on_the_side_where_it_gets_better_no_remedy_is_named(string id, LimitSide side)
    {
        MeasurandCatalog.BuiltIn.TryFind(id, out var measurand).ShouldBeTrue();

        Actions(Beyond(measurand, side)).ShouldBe("InvestigateCause");
    }

    [Fact]
    public void No_starting_limit_lies_on_the_side_where_its_measurand_gets_better()
    {
        foreach (var limit in Enum.GetValues<StarterEquipment>().SelectMany(one => LimitSet.Starter(one).Limits))
        {
            (limit.Upper is null || limit.Measurand.IsWorse(LimitSide.Upper)).ShouldBeTrue(limit.ToString());
            (limit.Lower is null || limit.Measurand.IsWorse(LimitSide.Lower)).ShouldBeTrue(limit.ToString());
        }
    }

    [Theory]
    [InlineData(LimitSide.Upper, 1, 1)]
    [InlineData(LimitSide.Upper, -1, 0)]
    [InlineData(LimitSide.Lower, 1, 0)]
    [InlineData(LimitSide.Lower, -1, 1)]
    [InlineData(LimitSide.Both, 1, 1)]
    [InlineData(LimitSide.Both, -1, 1)]
    public void What_comes_back_after_a_treatment_comes_back_the_worse_way(LimitSide worse, int way, int expected)
    {
        var ours = new Measurand("ours", "ours", "u", worse, NaturalScale.Linear, 0, 1000);
        var run = new TreatmentRun(
            Invented.Start.AddDays(11),
            Invented.Start.AddDays(12),
            TreatmentKind.FineFiltration,
            ours,
            500
        );
        var samples = Enumerable
            .Range(0, 12)
            .Select(i => Invented.Sample(i, 10 + 30 * i, (ours, new Reading(500 + way * (10 + 8 * i + i % 2)))));
        var assessment = ConditionAssessor.Assess(
            Invented.History(samples, run),
            new LimitSet("test", [new Limit(ours, LimitKind.Absolute, new LimitBand(null, 1000), null, AnySource)]),
            new AssessmentOptions(Invented.Start.AddDays(350))
        );

        assessment.Findings.OfType<ReturnFinding>().Count().ShouldBe(expected);
    }
}
