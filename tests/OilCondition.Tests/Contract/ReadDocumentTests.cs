using System.Text.Json.Nodes;
using Schemas;

namespace OilCondition.Tests.Contract;

/// <summary>Schema and reader of a document that people write say the same of every field: of one that is there, missing, null, misspelt or of another kind.</summary>
public class ReadDocumentTests
{
    public static TheoryData<string> Ids => [.. ReadDocuments.Ids];

    [Fact]
    public void Every_document_that_is_read_is_tried() =>
        ContractSchema.All.Where(schema => schema.IsRead).Select(schema => schema.Id).ShouldBe(ReadDocuments.Ids);

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_fixture_has_every_field_and_every_word(string id)
    {
        var schema = PublishedSchema.Of(id);
        var json = ReadDocuments.Fixture(id);
        schema.Faults(json).ShouldBeEmpty();
        ReadDocuments.Refusal(id, json).ShouldBeNull();
        var seen = schema.SeenIn(json).ToHashSet(StringComparer.Ordinal);
        foreach (var (field, _) in schema.Promised.Where(one => !Elsewhere.Contains($"{id}: {one.Field}")))
        {
            seen.ShouldContain(field);
        }
    }

    /// <summary>Of a curve by points and one by constants, of an offset and a time zone, a document has one; the other is tried elsewhere.</summary>
    private static readonly HashSet<string> Elsewhere = new(StringComparer.Ordinal)
    {
        "history: SaturationData.points",
        "history: SaturationPointData.celsius",
        "history: SaturationPointData.mgPerKg",
        "column-map: root.offsetFromUtc",
    };

    [Fact]
    public void A_column_map_may_state_an_offset_and_no_zone_beside_it()
    {
        foreach (
            var (json, isRead) in new[]
            {
                ("""{ "offsetFromUtc": "+01:00" }""", true),
                ("""{ "offsetFromUtc": "+01:00", "timeZone": "Europe/Berlin" }""", false),
            }
        )
        {
            (ReadDocuments.Refusal("column-map", json) is null).ShouldBe(isRead);
            (PublishedSchema.Of("column-map").Faults(json).Count == 0).ShouldBe(isRead);
        }
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Each_field_alone_is_judged_alike(string id)
    {
        var schema = PublishedSchema.Of(id);
        var tried = 0;
        foreach (var (what, json) in Changes(id))
        {
            tried++;
            var byReader = ReadDocuments.Refusal(id, json);
            var bySchema = schema.Faults(json);
            (byReader is null).ShouldBe(
                bySchema.Count == 0,
                $"{what}: reader: {byReader ?? "read"}; schema: {string.Join("; ", bySchema)}"
            );
        }

        tried.ShouldBeGreaterThan(60);
    }

    /// <summary>A reader names the fields that it knows when it meets another one.</summary>
    [Theory]
    [MemberData(nameof(Ids))]
    public void No_reader_knows_a_field_that_its_schema_does_not(string id)
    {
        if (id == "journal")
        {
            return; // It passes over what it does not know, and names nothing.
        }

        var objects = PublishedSchema.Of(id).ObjectsIn(ReadDocuments.Fixture(id));
        objects.Count.ShouldBeGreaterThan(2);
        var root = JsonNode.Parse(ReadDocuments.Fixture(id))!;
        foreach (var one in Objects(root).Where(one => one.GetPropertyNameOrEmpty() is not ("texts" or "new")))
        {
            one["zzz"] = 1;
        }

        var refused = ReadDocuments
            .Refusal(id, root.ToJsonString())!
            .Split('\n')
            .Where(line => line.Contains(".zzz: unknown; allowed: ", StringComparison.Ordinal))
            .ToList();
        refused.Count.ShouldBe(objects.Count);
        foreach (var line in refused)
        {
            var parts = line[2..].TrimEnd('.').Split(".zzz: unknown; allowed: ");
            parts[1].Split(", ").ShouldBeSubsetOf(objects[parts[0]], parts[0]);
        }
    }

    private static List<JsonObject> Objects(JsonNode node) =>
        node switch
        {
            JsonObject one => one.SelectMany(field => Objects(field.Value!)).Prepend(one).ToList(),
            JsonArray list => list.SelectMany(item => Objects(item!)).ToList(),
            _ => [],
        };

    [Theory]
    [MemberData(nameof(Ids))]
    public void Each_word_is_read_and_no_other(string id)
    {
        var schema = PublishedSchema.Of(id);
        var words = schema.Promised.Where(one => one.Words.Count > 0 && one.Field != "root.format").ToList();
        // Parts that several documents have, such as a source, show all their words in one of them.
        var seen = ReadDocuments
            .Ids.SelectMany(one => PublishedSchema.Of(one).SeenIn(ReadDocuments.Fixture(one)))
            .ToHashSet(StringComparer.Ordinal);
        foreach (var (field, known) in words)
        {
            foreach (var word in known)
            {
                seen.ShouldContain($"{field}={word}");
            }
        }

        foreach (
            var (what, json) in Changes(
                id,
                value => value.GetValueKind() == System.Text.Json.JsonValueKind.String ? "no-such-word" : null
            )
        )
        {
            if (schema.Faults(json).Count > 0)
            {
                ReadDocuments.Refusal(id, json).ShouldNotBeNull(what);
            }
        }
    }

    /// <summary>The fixture with one field left out, null, misspelt or of another kind.</summary>
    private static IEnumerable<(string What, string Json)> Changes(string id)
    {
        var count = Fields(JsonNode.Parse(ReadDocuments.Fixture(id))!).Count();
        for (var i = 0; i < count; i++)
        {
            foreach (var change in new[] { "without", "null", "misspelt", "another kind" })
            {
                var root = JsonNode.Parse(ReadDocuments.Fixture(id))!;
                var (owner, name) = Fields(root).ElementAt(i);
                if (MayBeAnything(id, owner, name))
                {
                    continue;
                }

                var value = owner[name]!;
                switch (change)
                {
                    case "without":
                        owner.Remove(name);
                        break;
                    case "null":
                        owner[name] = null;
                        break;
                    case "misspelt":
                        owner.Remove(name);
                        owner[name + "x"] = value;
                        break;
                    default:
                        owner[name] = value is JsonObject or JsonArray ? 3 : new JsonObject();
                        break;
                }

                // An id that is gone leaves those that name it alone, which only the reader can know.
                if (name is "id" or "place" || (change != "another kind" && IsNamed(owner, name)))
                {
                    continue;
                }

                yield return ($"{owner.GetPath()}.{name} {change}", root.ToJsonString());
            }
        }
    }

    private static IEnumerable<(string What, string Json)> Changes(string id, Func<JsonNode, JsonNode?> other)
    {
        var count = Fields(JsonNode.Parse(ReadDocuments.Fixture(id))!).Count();
        for (var i = 0; i < count; i++)
        {
            var root = JsonNode.Parse(ReadDocuments.Fixture(id))!;
            var (owner, name) = Fields(root).ElementAt(i);
            if (other(owner[name]!) is { } value)
            {
                owner[name] = value;
                yield return ($"{owner.GetPath()}.{name}", root.ToJsonString());
            }
        }
    }

    private static IEnumerable<(JsonObject Owner, string Name)> Fields(JsonNode node) =>
        node switch
        {
            JsonObject one => one.SelectMany(field => Fields(field.Value!).Prepend((one, field.Key))),
            JsonArray list => list.SelectMany(item => Fields(item!)),
            _ => [],
        };

    /// <summary>
    /// Maps have names of their own: texts of a laboratory, new-oil values by measurand. The reader of a journal can tell ids and machines itself: it does
    /// without them, and refuses those that are wrong.
    /// </summary>
    private static bool MayBeAnything(string id, JsonObject owner, string name) =>
        owner.GetPropertyNameOrEmpty() is "texts" or "new"
        || name == "$schema"
        || (id == "journal" && name is "id" or "machine");

    /// <summary>What other parts of the document name, so that they point at nothing without it.</summary>
    private static bool IsNamed(JsonObject owner, string name) =>
        (name == "name" && owner.ContainsKey("limits")) || name is "oils" or "machines" or "equipment" or "limitSets";
}

file static class NodeNames
{
    public static string GetPropertyNameOrEmpty(this JsonObject node) =>
        node.Parent is JsonObject ? node.GetPropertyName() : "";
}
