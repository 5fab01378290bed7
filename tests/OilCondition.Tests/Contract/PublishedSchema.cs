using System.Collections.Concurrent;
using System.Text.Json;
using Json.Schema;
using OilCondition.Tests.Architecture;

namespace OilCondition.Tests.Contract;

/// <summary>A schema as it is published: what it finds wrong with a document, and which of its fields and words a document has.</summary>
internal sealed class PublishedSchema
{
    /// <summary>A schema registers itself by its id, and so can be read once only.</summary>
    private static readonly ConcurrentDictionary<string, Lazy<PublishedSchema>> Read = new(StringComparer.Ordinal);

    private readonly JsonSchema schema;
    private readonly JsonElement text;

    private PublishedSchema(string id)
    {
        var json = RepositoryFiles.Read("docs", "schemas", id + ".schema.json");
        schema = JsonSchema.FromText(json);
        text = JsonDocument.Parse(json).RootElement;
        Promised = [.. AllFields(text)];
    }

    /// <summary>Every field, such as <c>FindingData.code</c>, with its words; none where it has none.</summary>
    public IReadOnlyList<(string Field, IReadOnlyList<string> Words)> Promised { get; }

    public static PublishedSchema Of(string id) =>
        Read.GetOrAdd(id, one => new Lazy<PublishedSchema>(() => new PublishedSchema(one))).Value;

    /// <summary>What is wrong with a document; empty where nothing is.</summary>
    public IReadOnlyList<string> Faults(string json)
    {
        using var document = JsonDocument.Parse(json);
        var results = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return results.IsValid
            ? []
            :
            [
                .. (results.Details ?? [])
                    .Where(one => one.Errors is not null)
                    .SelectMany(one => one.Errors!.Select(error => $"{one.InstanceLocation}: {error.Value}")),
                "not valid",
            ];
    }

    /// <summary>Which of its fields and words a document has.</summary>
    public IEnumerable<string> SeenIn(string json)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        using var document = JsonDocument.Parse(json);
        Walk(text, "root", document.RootElement, seen);
        return [.. seen];
    }

    private static IEnumerable<(string, IReadOnlyList<string>)> AllFields(JsonElement root)
    {
        var parts = root.GetProperty("$defs").EnumerateObject().Select(one => (one.Name, one.Value));
        foreach (var (owner, part) in parts.Prepend(("root", root)))
        {
            foreach (var field in part.GetProperty("properties").EnumerateObject())
            {
                yield return ($"{owner}.{field.Name}", [.. WordsOf(field.Value)]);
            }
        }
    }

    private static IEnumerable<string> WordsOf(JsonElement field)
    {
        var one = field.TryGetProperty("items", out var items) ? items : field;
        return one.TryGetProperty("enum", out var words)
            ? words
                .EnumerateArray()
                .Where(word => word.ValueKind == JsonValueKind.String)
                .Select(word => word.GetString()!)
            : [];
    }

    private void Walk(JsonElement part, string owner, JsonElement value, HashSet<string> seen)
    {
        if (part.TryGetProperty("anyOf", out var any) && any[0].TryGetProperty("$ref", out _))
        {
            part = any[0];
        }

        if (part.TryGetProperty("$ref", out var reference))
        {
            owner = reference.GetString()!.Split('/')[^1];
            part = text.GetProperty("$defs").GetProperty(owner);
        }

        if (value.ValueKind == JsonValueKind.Array && part.TryGetProperty("items", out var items))
        {
            foreach (var item in value.EnumerateArray())
            {
                Walk(items, owner, item, seen);
            }
        }

        if (value.ValueKind != JsonValueKind.Object || !part.TryGetProperty("properties", out var properties))
        {
            return;
        }

        foreach (var field in properties.EnumerateObject())
        {
            if (!value.TryGetProperty(field.Name, out var held))
            {
                continue;
            }

            var name = $"{owner}.{field.Name}";
            seen.Add(name);
            if (WordsOf(field.Value).Any())
            {
                var words = held.ValueKind == JsonValueKind.Array ? held.EnumerateArray().ToList() : [held];
                seen.UnionWith(words.Select(word => $"{name}={word.GetString()}"));
            }

            Walk(field.Value, owner, held, seen);
        }
    }
}
