using System.Text.Json;
using System.Text.Json.Serialization;
using OilCondition.Contracts;
using Schemas;

namespace OilCondition.Tests.Contract;

/// <summary>What the library writes keeps to the published schema, loses nothing in the classes, and is all that the schema promises.</summary>
public class WrittenDocumentTests
{
    private static readonly JsonSerializerOptions Strict = new(ContractJson.Default.Options)
    {
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        TypeInfoResolver = ContractJson.Default,
    };

    private static readonly string[] Ids =
    [
        "assessment",
        "decision",
        "cleanup-record",
        "history",
        "journal",
        "limit-set",
    ];

    public static TheoryData<string> Formats => [.. Ids];

    [Theory]
    [MemberData(nameof(Formats))]
    public void Every_document_keeps_to_its_schema(string format)
    {
        var schema = PublishedSchema.Of(format);
        var documents = WrittenDocuments.Of(format);
        documents.Count.ShouldBeGreaterThan(8);
        foreach (var json in documents)
        {
            schema.Faults(json).ShouldBeEmpty(json[..Math.Min(400, json.Length)]);
        }
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void No_document_loses_anything_in_the_classes(string format)
    {
        var type = ContractSchema.All.Single(schema => schema.Id == format).Root;
        foreach (var json in WrittenDocuments.Of(format))
        {
            var document = (ContractDocument)JsonSerializer.Deserialize(json, type, Strict)!;
            document.Format.ShouldBe("oilcondition/" + format);
            using var before = JsonDocument.Parse(json);
            using var after = JsonDocument.Parse(document.ToString());
            JsonElement
                .DeepEquals(before.RootElement, after.RootElement)
                .ShouldBeTrue(json[..Math.Min(400, json.Length)]);
        }
    }

    /// <summary>
    /// Fields of parts count in whichever document they are seen. Words that are named after an enumeration are held against its members, since machines in some
    /// states are rare; all other words must be seen.
    /// </summary>
    [Fact]
    public void All_that_the_schemas_promise_is_written()
    {
        var seen = Ids.SelectMany(SeenIn).ToHashSet(StringComparer.Ordinal);
        var own = OwnWords();
        own.Count.ShouldBe(9);
        foreach (var format in Ids)
        {
            var promised = PublishedSchema.Of(format).Promised.Where(one => one.Field != "root.$schema");
            foreach (var (field, words) in promised)
            {
                // A figure is evidence with its source.
                var name = field.Replace("root.", $"{format}.").Replace("FigureData.", "EvidenceData.");
                if (!OnlyRead.Contains(field))
                {
                    seen.ShouldContain(name);
                }

                foreach (var word in own.Contains(string.Join(' ', words)) ? words : [])
                {
                    seen.ShouldContain($"{name}={word}");
                }
            }
        }
    }

    /// <summary>People may state a curve by two points; the library writes its constants.</summary>
    private static readonly HashSet<string> OnlyRead = new(StringComparer.Ordinal)
    {
        "SaturationData.points",
        "SaturationPointData.celsius",
        "SaturationPointData.mgPerKg",
    };

    private static IEnumerable<string> SeenIn(string format)
    {
        var schema = PublishedSchema.Of(format);
        return WrittenDocuments
            .Of(format)
            .SelectMany(schema.SeenIn)
            .Distinct()
            .Select(one => one.Replace("root.", $"{format}.").Replace("FigureData.", "EvidenceData."));
    }

    private static HashSet<string> OwnWords()
    {
        var enumerations = typeof(Source)
            .Assembly.GetTypes()
            .Where(type => type.IsEnum)
            .Select(type => type.Name)
            .ToHashSet();
        return
        [
            .. typeof(KnownWords)
                .GetFields(System.Reflection.BindingFlags.Public | System.Reflection.BindingFlags.Static)
                .Where(field => field.Name != nameof(KnownWords.EventKind) && field.Name != nameof(KnownWords.WeekDay))
                .Where(field => !enumerations.Contains(field.Name.Split("But")[0]))
                .Select(field => (string)field.GetRawConstantValue()!),
        ];
    }

    [Theory]
    [MemberData(nameof(Formats))]
    public void No_document_has_a_null(string format)
    {
        foreach (var json in WrittenDocuments.Of(format))
        {
            using var document = JsonDocument.Parse(json);
            HasNull(document.RootElement).ShouldBeFalse();
        }
    }

    private static bool HasNull(JsonElement element) =>
        element.ValueKind switch
        {
            JsonValueKind.Null => true,
            JsonValueKind.Object => element.EnumerateObject().Any(one => HasNull(one.Value)),
            JsonValueKind.Array => element.EnumerateArray().Any(HasNull),
            _ => false,
        };
}
