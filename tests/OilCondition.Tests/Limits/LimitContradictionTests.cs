using OilCondition.Limits;

namespace OilCondition.Tests.Limits;

/// <summary>Limits that nobody could keep are refused, each with its place; what is merely tight is not.</summary>
public class LimitContradictionTests
{
    private const string Source = "\"source\": { \"kind\": \"user-data\", \"text\": \"t\" }";

    private static string Set(params string[] limits) =>
        "{ \"name\": \"n\", \"limits\": ["
        + string.Join(", ", limits.Select(limit => $"{{ {limit}, {Source} }}".Replace('\'', '"')))
        + "] }";

    private const string Viscosity = "'measurand': 'viscosity-40c', 'kind': 'absolute'";

    [Theory]
    [InlineData(
        Viscosity + ", 'upper': { 'alert': 40 }, 'lower': { 'alert': 50 }",
        "The lower limit of viscosity-40c (50 mm²/s) does not lie below its upper one (40 mm²/s)"
    )]
    [InlineData(
        Viscosity + ", 'upper': { 'alert': 50, 'alarm': 55 }, 'lower': { 'alarm': 50 }",
        "(50 mm²/s) does not lie below its upper one (50 mm²/s)"
    )]
    [InlineData(Viscosity + ", 'upper': { 'alert': 50, 'alarm': 45 }", "has its alarm (45) below its alert (50)")]
    [InlineData(Viscosity + ", 'lower': { 'alert': 40, 'alarm': 45 }", "has its alarm (45) above its alert (40)")]
    [InlineData(
        Viscosity + ", 'upper': { 'alert': 50 }, 'lower': { 'alert': 42 }, 'deadBand': 8.1",
        "The dead band of viscosity-40c is 8.1 mm²/s, wider than the 8 mm²/s in which a reading could come back"
    )]
    [InlineData(
        "'measurand': 'water-content', 'kind': 'absolute', 'upper': { 'alert': 200, 'alarm': 500 }, 'deadBand': 250",
        "The dead band of water-content is 250 mg/kg, wider than the 200 mg/kg"
    )]
    [InlineData(
        "'measurand': 'water-content', 'kind': 'absolute', 'unit': '%', 'upper': { 'alert': 0.02 }, 'deadBand': 0.03",
        "The dead band of water-content is 300 mg/kg"
    )]
    [InlineData(
        "'measurand': 'water-content', 'kind': 'rate-of-change', 'perDays': 30, 'upper': { 'alert': 20 }, 'deadBand': 21",
        "The dead band of water-content is 21 mg/kg per 30 days, wider than the 20 mg/kg per 30 days"
    )]
    [InlineData(
        "'measurand': 'acid-number', 'kind': 'change-from-new', 'upper': { 'alert': 0.2 }, 'deadBand': 0.3",
        "wider than the 0.2 mgKOH/g"
    )]
    public void A_limit_that_contradicts_itself_is_refused(string limit, string expected)
    {
        var message = Should.Throw<FormatException>(() => LimitSet.Parse(Set(limit))).Message;
        message.ShouldContain("$.limits[0]: ");
        message.ShouldContain(expected);
    }

    [Theory]
    [InlineData(
        Viscosity + ", 'upper': { 'alarm': 50 }",
        Viscosity + ", 'upper': { 'alert': 55 }",
        "The upper limit of viscosity-40c has its alarm (50 mm²/s) below its alert (55 mm²/s), together with $.limits[0]."
    )]
    [InlineData(
        Viscosity + ", 'upper': { 'alert': 55 }",
        Viscosity + ", 'upper': { 'alarm': 50 }",
        "has its alarm (50 mm²/s) below its alert (55 mm²/s), together with $.limits[0]."
    )]
    [InlineData(
        Viscosity + ", 'lower': { 'alert': 40 }",
        Viscosity + ", 'lower': { 'alarm': 42 }",
        "has its alarm (42 mm²/s) above its alert (40 mm²/s), together with $.limits[0]."
    )]
    [InlineData(
        Viscosity + ", 'lower': { 'alarm': 42 }",
        Viscosity + ", 'lower': { 'alert': 40 }",
        "has its alarm (42 mm²/s) above its alert (40 mm²/s), together with $.limits[0]."
    )]
    [InlineData(
        Viscosity + ", 'lower': { 'alert': 51 }",
        Viscosity + ", 'upper': { 'alarm': 50 }",
        "does not lie below its upper one (50 mm²/s): no reading would be normal, together with $.limits[0]."
    )]
    [InlineData(
        Viscosity + ", 'upper': { 'alert': 50 }",
        Viscosity + ", 'lower': { 'alarm': 50 }",
        "does not lie below its upper one (50 mm²/s): no reading would be normal, together with $.limits[0]."
    )]
    public void Two_limits_of_one_measurand_and_kind_that_contradict_each_other_are_refused(
        string one,
        string other,
        string expected
    )
    {
        var message = Should.Throw<FormatException>(() => LimitSet.Parse(Set(one, other))).Message;
        message.ShouldContain("$.limits[1]: ");
        message.ShouldContain(expected);
    }

    [Theory]
    [InlineData(Viscosity + ", 'upper': { 'alert': 50, 'alarm': 50 }, 'lower': { 'alert': 42 }, 'deadBand': 8")]
    [InlineData("'measurand': 'oil-temperature', 'kind': 'absolute', 'upper': { 'alert': 5 }, 'deadBand': 10")]
    [InlineData(
        "'measurand': 'acid-number', 'kind': 'percent-change-from-new', 'upper': { 'alert': 50 }, 'deadBand': 60"
    )]
    [InlineData(
        "'measurand': 'water-content', 'kind': 'absolute', 'upper': { 'alert': 200, 'alarm': 500 }, 'deadBand': 200"
    )]
    public void What_can_be_kept_is_read(string limit) => LimitSet.Parse(Set(limit)).Limits.Count.ShouldBe(1);

    [Fact]
    public void Limits_of_other_kinds_spans_or_measurands_do_not_contradict_each_other() =>
        LimitSet
            .Parse(
                Set(
                    "'measurand': 'viscosity-40c', 'kind': 'absolute', 'lower': { 'alert': 50 }",
                    "'measurand': 'viscosity-40c', 'kind': 'change-from-new', 'upper': { 'alert': 3 }",
                    "'measurand': 'viscosity-100c', 'kind': 'absolute', 'upper': { 'alert': 9 }",
                    "'measurand': 'iron', 'kind': 'rate-of-change', 'perDays': 30, 'upper': { 'alert': 9 }",
                    "'measurand': 'iron', 'kind': 'rate-of-change', 'perDays': 7, 'upper': { 'alarm': 5 }"
                )
            )
            .Limits.Count.ShouldBe(5);

    [Fact]
    public void Figures_that_follow_from_an_oil_are_not_refused_for_a_dead_band_that_nobody_could_foresee()
    {
        // 100 % more than 0.02 mgKOH/g is a limit of 0.04; a dead band of 0.05 in the measurand's unit is wider than that.
        var limit = LimitSet
            .Parse(
                Set(
                    "'measurand': 'acid-number', 'kind': 'percent-change-from-new', 'upper': { 'alert': 100 }, 'deadBand': 0.05"
                )
            )
            .Limits.Single();
        var oil = new Oil("o", new Dictionary<Measurand, Reading> { [Measurands.AcidNumber] = new(0.02) });
        limit.TryResolve(oil, out var absolute).ShouldBeTrue();
        absolute!.Upper!.Alert!.Value.ShouldBe(0.04, 1e-12);
    }

    [Fact]
    public void A_limit_made_in_code_is_refused_for_the_same_reasons() =>
        Should
            .Throw<ArgumentException>(() =>
                new Limit(
                    Measurands.Viscosity40,
                    LimitKind.Absolute,
                    new LimitBand(40, null),
                    new LimitBand(50, null),
                    OilCondition.Source.UserData("t")
                )
            )
            .ParamName.ShouldBe("lower");
}
