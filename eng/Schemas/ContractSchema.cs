using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using OilCondition.Contracts;

namespace Schemas;

/// <summary>The schema of one document, made of its class: names and kinds of the fields, words, units, what must be there, and what it is.</summary>
/// <remarks>
/// Documents that people write are closed, as their readers refuse a misspelt field. Those that the library writes are open, since fields may be added
/// within a version; so is the journal, which others may add to. Where the library reads, null stands for 'left out'; it writes none.
/// </remarks>
internal sealed class ContractSchema
{
    /// <summary>Version of the documents that these classes are of.</summary>
    private const string Major = "1";

    private const string Moment = @"^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,7})?(Z|[+-]\d{2}:\d{2})$";

    private static readonly JsonSerializerOptions Written = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    private readonly Type root;
    private readonly bool isRead;
    private readonly bool isClosed;
    private readonly SortedDictionary<string, JsonNode?> definitions = new(StringComparer.Ordinal);

    private ContractSchema(Type root, string id, bool isRead, bool isClosed)
    {
        this.root = root;
        this.isRead = isRead;
        this.isClosed = isClosed;
        Id = id;
    }

    public static IReadOnlyList<ContractSchema> All { get; } =
    [
        new(typeof(AssessmentDocument), "assessment", isRead: false, isClosed: false),
        new(typeof(CleanupRecordDocument), "cleanup-record", isRead: false, isClosed: false),
        new(typeof(ColumnMapDocument), "column-map", isRead: true, isClosed: true),
        new(typeof(DecisionDocument), "decision", isRead: false, isClosed: false),
        new(typeof(HistoryDocument), "history", isRead: true, isClosed: true),
        new(typeof(JournalDocument), "journal", isRead: true, isClosed: false),
        new(typeof(LimitSetDocument), "limit-set", isRead: true, isClosed: true),
        new(typeof(StationDocument), "station", isRead: true, isClosed: true),
    ];

    /// <summary>Its word, such as <c>limit-set</c>.</summary>
    public string Id { get; }

    /// <summary>Whether the library reads such documents, so that people may write them.</summary>
    public bool IsRead => isRead;

    public string FileName => Id + ".schema.json";

    /// <summary>The class of the document.</summary>
    public Type Root => root;

    public string Write()
    {
        definitions.Clear();
        var body = Schema(root);
        var schema = new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["$id"] = $"urn:oilcondition:{Id}:{Major}",
            ["title"] = $"oilcondition/{Id}, version {Major}",
        };
        foreach (var (name, node) in body.ToList())
        {
            body.Remove(name);
            schema[name] = node;
        }

        schema["$defs"] = new JsonObject(definitions);
        return schema.ToJsonString(Written) + "\n";
    }

    private JsonObject Schema(Type type)
    {
        var node = JsonSchemaExporter.GetJsonSchemaAsNode(
            ContractJson.Default.Options,
            type,
            new JsonSchemaExporterOptions
            {
                TreatNullObliviousAsNonNullable = true,
                TransformSchemaNode = (context, schema) => Transformed(context, schema, type),
            }
        );
        var schema = (JsonObject)node;
        Complete(type, schema);
        return schema;
    }

    private JsonNode Transformed(JsonSchemaExporterContext context, JsonNode schema, Type owner)
    {
        var type = context.TypeInfo.Type;
        var isPart = typeof(ContractPart).IsAssignableFrom(type) && type != owner;
        var isNullable = schema is JsonObject kinds && kinds["type"] is JsonArray;
        if (isPart)
        {
            Define(type);
            var reference = new JsonObject { ["$ref"] = "#/$defs/" + type.Name };
            schema =
                isNullable && isRead
                    ? new JsonObject { ["anyOf"] = new JsonArray(reference, new JsonObject { ["type"] = "null" }) }
                    : reference;
        }
        else if (isNullable && !isRead && schema["type"] is JsonArray types)
        {
            schema["type"] = types.Select(one => one!.GetValue<string>()).First(one => one != "null");
        }

        if (context.PropertyInfo is not { } property || schema is not JsonObject field)
        {
            return schema;
        }

        return Field(property, field);
    }

    private JsonObject Field(JsonPropertyInfo property, JsonObject field)
    {
        var member = (PropertyInfo)property.AttributeProvider!;
        if (member.GetCustomAttribute<WordsAttribute>() is { } words)
        {
            var isList = field["items"] is not null;
            var one = isList ? (JsonObject)field["items"]! : field;
            one["enum"] = new JsonArray([.. words.Words.Select(word => (JsonNode)word)]);
            if (!isList && isRead && field["type"] is JsonArray)
            {
                ((JsonArray)one["enum"]!).Add(null);
            }
        }

        if (isClosed && field["items"] is JsonObject && member.PropertyType == typeof(IReadOnlyList<string>))
        {
            field["minItems"] = 1;
        }

        if (field["format"] is not null)
        {
            field["pattern"] = Moment;
        }

        switch (member.Name)
        {
            case nameof(ContractDocument.Format):
                field["enum"] = isRead
                    ? new JsonArray($"oilcondition/{Id}", null)
                    : new JsonArray($"oilcondition/{Id}");
                break;
            case nameof(ContractDocument.Version):
                field["pattern"] = $@"^{Major}\.\d+$";
                break;
        }

        if (FieldUnits.Of(property.Name) is { } unit)
        {
            field["unit"] = unit;
        }

        // The words first: it is what people look for.
        var described = new JsonObject { ["description"] = Summaries.Of(member) };
        foreach (var (name, value) in field.ToList())
        {
            field.Remove(name);
            described[name] = value;
        }

        return described;
    }

    private void Define(Type type)
    {
        if (definitions.ContainsKey(type.Name))
        {
            return;
        }

        definitions[type.Name] = null;
        definitions[type.Name] = Schema(type);
    }

    /// <summary>What holds for an object as a whole.</summary>
    private void Complete(Type type, JsonObject schema)
    {
        schema["type"] = "object";
        schema.Insert(0, "description", Summaries.Of(type));
        if (!isRead && type == root)
        {
            var required = (JsonArray)schema["required"]!;
            required.Insert(0, "version");
            required.Insert(0, "format");
        }

        if (type.GetCustomAttribute<AnyOfAttribute>() is { } any)
        {
            schema["anyOf"] = new JsonArray([.. any.Fields.Select(Present)]);
        }

        var variants = type.GetCustomAttributes<VariantAttribute>().ToList();
        if (variants.Count > 0)
        {
            schema["allOf"] = new JsonArray([.. variants.Select(one => Variant(one, variants))]);
        }

        if (isClosed)
        {
            schema["additionalProperties"] = false;
        }
    }

    private static JsonObject Variant(VariantAttribute variant, List<VariantAttribute> all)
    {
        var then = new JsonObject();
        var required = variant.Required.Where(name => !name.Contains('/')).ToList();
        if (required.Count > 0)
        {
            then["required"] = new JsonArray([.. required.Select(name => (JsonNode)name)]);
            // Null stands for 'left out', which these may not be.
            then["properties"] = new JsonObject(
                required.Select(name => KeyValuePair.Create(name, (JsonNode?)NotNull()))
            );
        }

        if (variant.Required.FirstOrDefault(name => name.Contains('/')) is { } either)
        {
            then["oneOf"] = new JsonArray([.. either.Split('/').Select(Present)]);
        }

        var mine = variant.Required.SelectMany(name => name.Split('/')).Concat(variant.Allowed).ToHashSet();
        var others = all.SelectMany(one => one.Required.SelectMany(name => name.Split('/')).Concat(one.Allowed))
            .Distinct()
            .Where(name => name != variant.Field && !mine.Contains(name));
        var properties = (JsonObject?)then["properties"] ?? [];
        foreach (var other in others)
        {
            properties[other] = false;
        }

        if (properties.Count > 0)
        {
            then["properties"] = properties;
        }

        var condition = variant.Values switch
        {
            VariantAttribute.IsThere => Present(variant.Field),
            VariantAttribute.IsLeftOut => new JsonObject { ["not"] = Present(variant.Field) },
            var values => new JsonObject
            {
                ["required"] = new JsonArray(variant.Field),
                ["properties"] = new JsonObject
                {
                    [variant.Field] = new JsonObject
                    {
                        ["enum"] = new JsonArray([.. values.Split(' ').Select(word => (JsonNode)word)]),
                    },
                },
            },
        };
        return new JsonObject { ["if"] = condition, ["then"] = then };
    }

    private static JsonObject Present(string field) =>
        new()
        {
            ["required"] = new JsonArray(field),
            ["properties"] = new JsonObject { [field] = NotNull() },
        };

    private static JsonObject NotNull() => new() { ["not"] = new JsonObject { ["type"] = "null" } };
}
