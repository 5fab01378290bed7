using System.Text.Json;

namespace OilCondition.Text;

/// <summary>Reads the fields of a JSON document and keeps every fault with its place, so that all are named together.</summary>
internal sealed class JsonFaults
{
    private readonly List<string> faults = [];

    private JsonFaults() { }

    public bool None => faults.Count == 0;

    /// <summary>Reads a document; a text that is no JSON or has faults gives one message that names them all.</summary>
    /// <param name="json">The text.</param>
    /// <param name="what">What the text should be, such as 'limit set'.</param>
    /// <param name="read">Reads the root; what it returns beside faults is not used.</param>
    public static T Read<T>(string json, string what, Func<JsonElement, JsonFaults, T?> read)
        where T : class
    {
        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(
                json,
                new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true }
            );
        }
        catch (Exception error) when (error is JsonException or ArgumentException)
        {
            // An argument error is half of a surrogate pair in the text.
            throw new FormatException($"The {what} is not JSON: {error.Message}", error);
        }

        using (document)
        {
            var found = new JsonFaults();
            T? result;
            try
            {
                result = read(document.RootElement, found);
            }
            catch (InvalidOperationException error)
            {
                // An escape such as \uD800 is JSON, but no text.
                throw new FormatException($"The {what} has a text that is not Unicode: {error.Message}", error);
            }

            return found.None && result is not null
                ? result
                : throw new FormatException(
                    $"The {what} has faults:" + string.Concat(found.faults.Select(fault => "\n- " + fault))
                );
        }
    }

    public void Add(string path, string fault) => faults.Add($"{path}: {fault}");

    /// <summary>A text that must be there.</summary>
    public string? Text(JsonElement element, string path, string name)
    {
        if (
            element.TryGetProperty(name, out var property)
            && property.ValueKind == JsonValueKind.String
            && !string.IsNullOrWhiteSpace(property.GetString())
        )
        {
            return property.GetString();
        }

        Add($"{path}.{name}", "a text is expected.");
        return null;
    }

    /// <summary>Names every field that nobody reads: a misspelt one must not be lost.</summary>
    public void Known(JsonElement element, string path, params string[] names)
    {
        foreach (var property in element.EnumerateObject().Where(property => !names.Contains(property.Name)))
        {
            Add($"{path}.{property.Name}", $"unknown; allowed: {string.Join(", ", names)}.");
        }
    }
}
