using System.Globalization;
using OilCondition.LabFiles;
using OilCondition.Text;

namespace OilCondition.Tests.Text;

/// <summary>What holds for every JSON document: names, nulls, moments, format and version.</summary>
public class JsonEntryTests
{
    private const string Limit = """
        { "measurand": "water-content", "kind": "absolute", "upper": { "alert": 200 }, "source": { "kind": "user-data", "text": "t" } }
        """;

    private static string Set(string limit, string root = "") =>
        $$"""{ {{root}} "name": "n", "limits": [ {{limit}} ] }""";

    private static string FaultsOf(string json) => Should.Throw<FormatException>(() => LimitSet.Parse(json)).Message;

    [Theory]
    [InlineData("\"upper\": { \"alert\": 9999 },", "$.limits[0].upper: is there 2 times")]
    [InlineData("\"uppe\\u0072\": { \"alert\": 9999 },", "$.limits[0].upper: is there 2 times")]
    [InlineData("\"unknown\": [ { \"a\": 1, \"a\": 2, \"a\": 3 } ],", "$.limits[0].unknown[0].a: is there 3 times")]
    public void A_name_that_is_there_twice_is_a_fault_with_its_place_however_it_is_spelt(
        string more,
        string expected
    ) =>
        FaultsOf(Set(Limit.Replace("\"kind\": \"absolute\",", "\"kind\": \"absolute\", " + more)))
            .ShouldContain(expected);

    [Fact]
    public void Faults_beside_a_name_that_is_there_twice_are_named_too() =>
        FaultsOf(Set(Limit.Replace("absolute", "absolut"), "\"name\": \"first\",")).Split('\n').Length.ShouldBe(3);

    [Fact]
    public void Every_reader_refuses_a_name_that_is_there_twice()
    {
        const string Twice = """{ "note": "a", "note": "b" }""";
        foreach (
            var read in new Action[]
            {
                () => LimitSet.Parse(Twice),
                () => AlertJournal.Parse(Twice),
                () => ColumnMap.Parse(Twice),
                () => OilCondition.Station.Parse(Twice),
            }
        )
        {
            Should.Throw<FormatException>(read).Message.ShouldContain("$.note: is there 2 times");
        }
    }

    [Fact]
    public void Null_is_left_out_where_a_field_may_be_left_out_and_a_fault_where_it_may_not()
    {
        var limit = Limit.Replace(
            "\"kind\": \"absolute\",",
            "\"kind\": \"absolute\", \"unit\": null, \"lower\": null, \"deadBand\": null, \"confirmations\": null, \"perDays\": null, \"note\": null,"
        );
        var read = LimitSet.Parse(Set(limit, "\"note\": null, \"format\": null, \"version\": null,")).Limits.Single();
        read.Lower.ShouldBeNull();
        read.DeadBand.ShouldBe(0);
        read.Confirmations.ShouldBe(1);
        read.Per.ShouldBeNull();

        FaultsOf("""{ "name": null, "limits": null }""").Split('\n').Length.ShouldBe(3);
        FaultsOf(Set(Limit.Replace("{ \"kind\": \"user-data\", \"text\": \"t\" }", "null")))
            .ShouldContain("$.limits[0].source:");
        FaultsOf(Set("null")).ShouldContain("$.limits[0]: an object is expected.");
        var map = ColumnMap.Parse("""{ "machine": null, "columns": null, "delimiter": null, "offsetFromUtc": null }""");
        map.Columns.ShouldNotBeEmpty();
    }

    [Theory]
    [InlineData("2026-03-14T06:15:00Z", "2026-03-14T06:15:00.0000000+00:00")]
    [InlineData("2026-03-14T06:15:00.25+05:30", "2026-03-14T06:15:00.2500000+05:30")]
    [InlineData("2026-03-14T06:15:00", null)]
    [InlineData("2026-03-14T06:15:00ZZ", null)]
    [InlineData("2026-03-14 06:15:00Z", null)]
    public void A_moment_has_its_offset_or_z(string text, string? expected)
    {
        var json = $$"""{ "name": "n", "asOf": "{{text}}", "oils": [], "machines": [] }""";
        if (expected is null)
        {
            Should
                .Throw<FormatException>(() => OilCondition.Station.Parse(json))
                .Message.ShouldContain($"$.asOf: '{text}' is not a moment");
            return;
        }

        OilCondition.Station.Parse(json).AsOf!.Value.ToString("o", CultureInfo.InvariantCulture).ShouldBe(expected);
    }

    [Theory]
    [InlineData("\"$schema\": \"limit-set.schema.json\",")]
    [InlineData("\"format\": \"oilcondition/limit-set\",")]
    [InlineData("\"format\": \"oilcondition/limit-set\", \"version\": \"1.0\",")]
    public void A_document_may_say_what_it_is(string root) => LimitSet.Parse(Set(Limit, root)).Limits.Count.ShouldBe(1);

    [Theory]
    [InlineData(
        "\"format\": \"oilcondition/journal\",",
        "$.format: 'oilcondition/journal'; expected is 'oilcondition/limit-set'"
    )]
    [InlineData("\"version\": \"2.0\",", "$.version: '2.0'; allowed: 1.0 to 1.x")]
    [InlineData("\"version\": \"0.9\",", "$.version: '0.9' is not a version such as 1.0")]
    [InlineData("\"version\": \"1\",", "$.version: '1' is not a version such as 1.0")]
    [InlineData("\"version\": \"1.-1\",", "$.version: '1.-1' is not a version such as 1.0")]
    [InlineData("\"version\": 1,", "$.version: a text is expected")]
    public void Another_document_or_a_newer_one_is_refused_and_not_misread(string root, string expected)
    {
        // What would be wrong with it in this version says nothing then.
        var message = FaultsOf(Set("{}", root));
        message.ShouldContain(expected);
        message.Split('\n').Length.ShouldBe(2);
    }

    [Fact]
    public void A_misspelt_field_is_a_fault_unless_the_document_says_that_fields_were_added_or_programs_keep_it()
    {
        var misspelt = Limit.Replace("{ \"measurand\"", "{ \"dedBand\": 3, \"measurand\"");
        FaultsOf(Set(misspelt)).ShouldContain("$.limits[0].dedBand: unknown; allowed:");
        FaultsOf(Set(misspelt, "\"version\": \"1.0\",")).ShouldContain("$.limits[0].dedBand: unknown; allowed:");
        FaultsOf(Set(Limit, "\"lmits\": 3,")).ShouldContain("$.lmits: unknown; allowed: name, note, limits.");
        LimitSet.Parse(Set(misspelt, "\"version\": \"1.1\", \"more\": 3,")).Limits.Count.ShouldBe(1);
        AlertJournal.Parse("""{ "alerts": [], "mine": { "a": 1 } }""").Entries.ShouldBeEmpty();
    }
}
