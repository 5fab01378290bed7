using OilCondition.Limits;
using OilCondition.Statistics;

namespace OilCondition.Tests.Limits;

public class LimitSetTests
{
    private const string Source = """ "source": { "kind": "common-practice", "text": "invented" } """;

    [Fact]
    public void A_limit_set_is_read_with_units_and_sources()
    {
        var set = LimitSet.Parse(
            $$"""
            { "name": "test", "limits": [
              { "measurand": "water-content", "kind": "absolute", "unit": "%", "upper": { "alert": 0.02, "alarm": 0.05 }, {{Source}} },
              { "measurand": "particles-4um", "kind": "absolute", "unit": "iso-4406", "upper": { "alert": 18 }, {{Source}} } ] }
            """
        );

        set.Limits[0].Upper!.Alert!.Value.ShouldBe(200, 1e-9);
        set.Limits[0].Source.ToString().ShouldBe("common practice, no source: invented");
        set.Limits[1].Upper!.Alert.ShouldBe(2500); // upper limit of scale number 18, ISO 4406 table 1
        set.Limits[1].Upper!.Alarm.ShouldBeNull();
    }

    [Theory]
    [InlineData(
        """ "measurand": "watr-content", "kind": "absolute" """,
        "$.limits[0].measurand: 'watr-content' is not a known measurand; did you mean 'water-content'?"
    )]
    [InlineData(
        """ "measurand": "water-content", "kind": "absolut" """,
        "$.limits[0].kind: 'absolut'; allowed: absolute, change-from-new"
    )]
    [InlineData(
        """ "measurand": "water-content", "kind": "absolute", "unit": "°F" """,
        "cannot be converted to mg/kg (water-content)"
    )]
    [InlineData(
        """ "measurand": "water-content", "kind": "absolute", "uper": {} """,
        "$.limits[0].uper: unknown; allowed:"
    )]
    public void A_fault_is_named_with_its_place(string head, string expected)
    {
        var json = $$"""{ "name": "test", "limits": [ { {{head}}, "upper": { "alert": 200 }, {{Source}} } ] }""";

        Should.Throw<FormatException>(() => LimitSet.Parse(json)).Message.ShouldContain(expected);
    }

    [Theory]
    [InlineData(
        """ "measurand": "water-content", "kind": "absolute", "confirmations": 2.5 """,
        "$.limits[0].confirmations: 2.5; allowed: a whole number from 1 to 10"
    )]
    [InlineData(""" "measurand": "water-content", "kind": "rate-of-change" """, "a span belongs to a rate of change")]
    [InlineData(""" "measurand": "water-content", "kind": "rate-of-change", "perDays": -3 """, "per is -72 h")]
    [InlineData(
        """ "measurand": "particles-4um", "kind": "rate-of-change", "perDays": 30, "unit": "iso-4406" """,
        "cannot be converted to per mL"
    )]
    [InlineData(
        """ "measurand": "particles-4um", "kind": "absolute", "unit": "iso-4406", "deadBand": 1 """,
        "$.limits[0].deadBand: 'iso-4406' is no unit of a distance in per mL"
    )]
    [InlineData(
        """ "measurand": "water-content", "kind": "absolute", "deadBand": "wide" """,
        "$.limits[0].deadBand: a number is expected"
    )]
    public void A_fault_of_the_newer_fields_is_named_with_its_place(string head, string expected) =>
        A_fault_is_named_with_its_place(head, expected);

    [Theory]
    [InlineData("\"kind\": \"absolute\", \"unit\": \"%\"", 20)] // 0.002 % are 20 mg/kg, by definition
    [InlineData("\"kind\": \"absolute\"", 0.002)]
    [InlineData("\"kind\": \"percent-change-from-new\", \"unit\": \"%\"", 0.002)]
    public void A_dead_band_is_in_the_unit_of_the_limit(string head, double expected)
    {
        var json =
            $$"""{ "name": "test", "limits": [ { "measurand": "water-content", {{head}}, "deadBand": 0.002, "upper": { "alert": 0.02 }, {{Source}} } ] }""";

        LimitSet.Parse(json).Limits.Single().DeadBand.ShouldBe(expected, 1e-9);
    }

    [Fact]
    public void Rates_per_different_spans_are_different_limits()
    {
        string Rate(string span) =>
            $$"""{ "measurand": "iron", "kind": "rate-of-change", {{span}}, "upper": { "alert": 5 }, {{Source}} }""";
        string Set(string one, string other) =>
            $$"""{ "name": "test", "limits": [ {{Rate(one)}}, {{Rate(other)}} ] }""";

        LimitSet.Parse(Set("\"perDays\": 30", "\"perOilHours\": 1000")).Limits.Count.ShouldBe(2);
        Should.Throw<FormatException>(() => LimitSet.Parse(Set("\"perDays\": 30", "\"perDays\": 30")));
    }

    [Fact]
    public void Dead_band_confirmations_and_rate_are_read()
    {
        var limit = LimitSet
            .Parse(
                $$"""
                { "name": "test", "limits": [ { "measurand": "iron", "kind": "rate-of-change", "perOilHours": 1000,
                  "upper": { "alert": 5 }, "deadBand": 1, "confirmations": 2, "note": "invented", {{Source}} } ] }
                """
            )
            .Limits.Single();

        limit.Kind.ShouldBe(LimitKind.RateOfChange);
        limit.OverOilHours.ShouldBeTrue();
        limit.Per!.Value.TotalHours.ShouldBe(1000);
        limit.DeadBand.ShouldBe(1);
        limit.Confirmations.ShouldBe(2);
    }

    [Fact]
    public void Alert_and_alarm_may_stand_in_two_limits_but_no_figure_twice()
    {
        string Json(string second) =>
            $$"""
                { "name": "test", "limits": [
                  { "measurand": "iron", "kind": "absolute", "upper": { "alert": 20 }, {{Source}} },
                  { "measurand": "iron", "kind": "absolute", "upper": { {{second}} }, {{Source}} } ] }
                """;

        LimitSet.Parse(Json("\"alarm\": 40")).Limits.Count.ShouldBe(2);
        Should
            .Throw<FormatException>(() => LimitSet.Parse(Json("\"alert\": 40")))
            .Message.ShouldContain("the upper alert of iron (Absolute) is given more than once");
    }

    [Fact]
    public void All_faults_are_named_together()
    {
        var error = Should.Throw<FormatException>(() =>
            LimitSet.Parse(
                """{ "name": "x", "limits": [ { "measurand": "rust", "kind": "often" }, { "measurand": "iron", "kind": "absolute", "upper": { "alert": -3 } } ] }"""
            )
        );

        error.Message.ShouldContain("'rust'");
        error.Message.ShouldContain("'often'");
        error.Message.ShouldContain("iron is -3 mg/kg; allowed: 0 to 50000 mg/kg");
        error.Message.ShouldContain("no limit without its source");
    }

    [Theory]
    [InlineData("")]
    [InlineData("Machine;Sample\n1;2")]
    [InlineData("[]")]
    public void Text_of_another_kind_gives_one_clear_message(string text) =>
        Should.Throw<FormatException>(() => LimitSet.Parse(text)).Message.ShouldStartWith("The limit set");

    [Fact]
    public void A_measurand_of_the_users_own_can_be_limited()
    {
        var own = new Measurand(
            "filter-dp",
            "pressure drop of the filter",
            "bar",
            LimitSide.Upper,
            NaturalScale.Linear,
            0,
            50
        );
        var json =
            $$"""{ "name": "test", "limits": [ { "measurand": "filter-dp", "kind": "absolute", "upper": { "alert": 2 }, {{Source}} } ] }""";

        LimitSet.Parse(json, MeasurandCatalog.BuiltIn.With(own)).Limits.Single().Measurand.ShouldBe(own);
        Should.Throw<FormatException>(() => LimitSet.Parse(json));
    }
}
