using CsCheck;
using OilCondition.Cleanliness;
using OilCondition.Tests.Properties;

namespace OilCondition.Tests.Cleanliness;

public class TargetCodeSetTests
{
    private const string Source = """ "source": { "kind": "user-data", "text": "invented" } """;

    [Fact]
    public void The_starter_set_says_that_it_has_no_source_and_that_the_maker_comes_first()
    {
        var set = TargetCodeSet.StarterSet;

        set.Targets.Count.ShouldBe(10);
        set.Targets.ShouldAllBe(target => target.Source.Kind == SourceKind.CommonPractice);
        set.Note.ShouldContain("Common practice, no source");
        set.Note.ShouldContain("maker");
        set.TryFind(" Servo Valve ", out var servo).ShouldBeTrue();
        servo!.Strictest.ToString().ShouldBe("14/12/9"); // usual span in the trade, no source
        servo.Loosest.ToString().ShouldBe("16/14/11");
        set.TryFind("teapot", out var none).ShouldBeFalse();
        none.ShouldBeNull();
    }

    [Fact]
    public void A_plants_own_set_is_read()
    {
        var set = TargetCodeSet.Parse(
            $$"""
            { // invented
              "name": "Harrow Point", "note": "invented", "targets": [
              { "component": "guide vane servo", "strictest": "15/13/10", "loosest": "16/14/11", {{Source}} },
              { "component": "old machine", "strictest": "14/11", "loosest": "-/16/13", {{Source}} }, ] }
            """
        );

        set.Name.ShouldBe("Harrow Point");
        set.Targets.Select(target => target.Strictest.ToString()).ShouldBe(["15/13/10", "-/14/11"]);
        set.Targets[0].Source.ShouldBe(new Source(SourceKind.UserData, "invented"));
    }

    [Theory]
    [InlineData(
        """{ "component": "a", "strictest": "18/16/13", "loosest": "clean", SOURCE }""",
        "$.targets[0].loosest: 'clean' is not a code after ISO 4406"
    )]
    [InlineData(
        """{ "component": "a", "strictest": "18/16/13", "loosest": 18, SOURCE }""",
        "$.targets[0].loosest: a text is expected"
    )]
    [InlineData(
        """{ "component": "a", "strictest": "18/16/13", "loosest": "18/15/13", SOURCE }""",
        "$.targets[0]: strictest is 18/16/13, loosest is 18/15/13; allowed"
    )]
    [InlineData(
        """{ "component": "a", "strictest": "16/13", "loosest": "18/16/13", SOURCE }""",
        "$.targets[0]: strictest is -/16/13"
    )]
    [InlineData(
        """{ "component": "a", "strictest": "14/12/>=7", "loosest": "18/16/13", SOURCE }""",
        "$.targets[0]: strictest is 14/12/≥7; allowed: numbers 0 to 28"
    )]
    [InlineData(
        """{ "component": "a", "strictest": "18/16/13", "loosest": "*/16/13", SOURCE }""",
        "$.targets[0]: loosest is */16/13; allowed"
    )]
    [InlineData(
        """{ "component": "a", "strictest": "18/16/13", "loosest": ">28/16/13", SOURCE }""",
        "$.targets[0]: loosest is >28/16/13; allowed"
    )]
    [InlineData(
        """{ "strictest": "18/16/13", "loosest": "18/16/13", SOURCE }""",
        "$.targets[0].component: a text is expected"
    )]
    [InlineData(
        """{ "component": " ", "strictest": "18/16/13", "loosest": "18/16/13", SOURCE }""",
        "$.targets[0].component: a text is expected"
    )]
    [InlineData(
        """{ "component": "a", "strictest": "18/16/13", "loosest": "18/16/13" }""",
        "$.targets[0].source: an object with 'kind' and 'text' is expected; no target without its source"
    )]
    [InlineData(
        """{ "component": "a", "strictest": "18/16/13", "loosest": "18/16/13", "source": { "kind": "rumour", "text": "x" } }""",
        "$.targets[0].source.kind: 'rumour'; allowed: standard"
    )]
    [InlineData(
        """{ "component": "a", "strictest": "18/16/13", "losest": "18/16/13", SOURCE }""",
        "$.targets[0].losest: unknown; allowed: component, strictest, loosest, source"
    )]
    [InlineData("7", "$.targets[0]: an object is expected")]
    [InlineData(
        """{ "component": "a", "strictest": "18/16/13", "loosest": "18/16/13", SOURCE }, { "component": "A", "strictest": "18/16/13", "loosest": "18/16/13", SOURCE }""",
        "$.targets: 'a' comes more than once"
    )]
    public void A_fault_is_named_with_its_place(string entry, string expected) =>
        Should
            .Throw<FormatException>(() =>
                TargetCodeSet.Parse($$"""{ "name": "x", "targets": [ {{entry.Replace("SOURCE", Source)}} ] }""")
            )
            .Message.ShouldContain(expected);

    [Fact]
    public void All_faults_are_named_together()
    {
        var message = Should
            .Throw<FormatException>(() =>
                TargetCodeSet.Parse("""{ "nme": "x", "targets": [ { "component": "a" }, { "strictest": "dirty" } ] }""")
            )
            .Message;

        message.ShouldStartWith("The set of target codes has faults:");
        message.ShouldContain("$.nme: unknown");
        message.ShouldContain("$.name: a text is expected");
        message.ShouldContain("$.targets[0].strictest: a text");
        message.ShouldContain("$.targets[1].strictest: 'dirty'");
    }

    [Theory]
    [InlineData("")]
    [InlineData("component;code")]
    [InlineData("[]")]
    [InlineData("""{ "name": "x" }""")]
    [InlineData("""{ "name": "x", "targets": [] }""")]
    [InlineData("""{ "name": "x", "targets": {} }""")]
    public void Text_of_another_kind_gives_one_clear_message(string text) =>
        Should
            .Throw<FormatException>(() => TargetCodeSet.Parse(text))
            .Message.ShouldStartWith("The set of target codes");

    [Theory]
    [InlineData("""{ "name": "\uD800", "targets": [] }""")]
    [InlineData("""{ "\uD800": "x", "targets": [] }""")]
    [InlineData("""{ "name": "x", "targets": [ { "component": "\uDC00", "strictest": "18/16/13" } ] }""")]
    public void An_escape_that_is_no_text_is_a_fault_of_the_file(string text)
    {
        Should
            .Throw<FormatException>(() => TargetCodeSet.Parse(text))
            .Message.ShouldStartWith("The set of target codes");
        Should.Throw<FormatException>(() => TargetCodeSet.Parse("{ \"name\": \"\uD800\" }"));
    }

    [Fact]
    public void Any_text_is_a_set_or_a_format_error() =>
        Gen.OneOf(
                Gen.String,
                OddText.Any.Select(odd =>
                    $$"""{ "name": "x", "targets": [ { "component": "{{odd}}", "strictest": "{{odd}}", "loosest": "18/16/13", {{Source}} } ] }"""
                )
            )
            .Holds(
                text =>
                {
                    try
                    {
                        TargetCodeSet.Parse(text).Targets.ShouldNotBeEmpty();
                    }
                    catch (FormatException fault)
                    {
                        fault.Message.ShouldStartWith("The set of target codes");
                    }
                },
                iter: 1000
            );

    [Fact]
    public void A_set_made_in_code_keeps_the_same_rules()
    {
        var code = CleanlinessCode.Parse("18/16/13");
        var source = new Source(SourceKind.UserData, "invented");
        var target = new ComponentTarget("pump", code, code, source);

        new TargetCodeSet("x", [target]).Note.ShouldBeEmpty();
        Should.Throw<ArgumentException>(() => new TargetCodeSet("x", []));
        Should.Throw<ArgumentException>(() => new TargetCodeSet("x", [target, target])).Message.ShouldContain("'pump'");
        Should.Throw<ArgumentException>(() => new ComponentTarget(" ", code, code, source));
        Should.Throw<ArgumentNullException>(() => new ComponentTarget("pump", code, code, null!));
        Should.Throw<ArgumentNullException>(() => TargetCodeSet.Parse(null!));
    }
}
