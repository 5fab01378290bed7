using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace OilCondition.Advice;

/// <summary>Writes and reads a journal.</summary>
internal static class JournalJson
{
    private const string Form = "yyyy-MM-ddTHH:mm:ss.FFFFFFFzzz";

    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static string Write(IReadOnlyList<JournalEntry> entries)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            json.WriteStartArray("alerts");
            foreach (var entry in entries)
            {
                json.WriteStartObject();
                json.WriteString("key", entry.Key);
                json.WriteString("severity", Words.Kebab(entry.Severity));
                json.WriteString("state", Words.Kebab(entry.State));
                json.WriteString("raisedAt", entry.RaisedAt.ToString(Form, CultureInfo.InvariantCulture));
                json.WriteString("lastSeenAt", entry.LastSeenAt.ToString(Form, CultureInfo.InvariantCulture));
                if (entry.ClearedAt is { } cleared)
                {
                    json.WriteString("clearedAt", cleared.ToString(Form, CultureInfo.InvariantCulture));
                }

                json.WriteString("sentence", entry.Sentence);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray()) + "\n";
    }

    public static IReadOnlyList<JournalEntry> Read(string text)
    {
        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(text);
        }
        // Text with half a surrogate pair is no Unicode, which the parser tells as an argument error.
        catch (Exception error) when (error is JsonException or ArgumentException)
        {
            throw new FormatException($"The journal is not JSON: {error.Message}", error);
        }

        using (document)
        {
            if (
                document.RootElement.ValueKind != JsonValueKind.Object
                || !document.RootElement.TryGetProperty("alerts", out var list)
                || list.ValueKind != JsonValueKind.Array
            )
            {
                throw new FormatException("The journal has no list 'alerts'.");
            }

            var entries = list.EnumerateArray().Select((one, i) => Entry(one, $"$.alerts[{i}]")).ToList();
            var twice = entries.GroupBy(entry => entry.Key, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1);
            return twice is null
                ? entries
                : throw new FormatException($"The journal has the key '{twice.Key}' more than once.");
        }
    }

    private static JournalEntry Entry(JsonElement element, string path) =>
        new(
            Text(element, path, "key"),
            Word(element, path, "severity", Severity.Information, Severity.Alert, Severity.Alarm),
            Word(
                element,
                path,
                "state",
                AlertState.UnacknowledgedActive,
                AlertState.AcknowledgedActive,
                AlertState.ReturnedUnacknowledged,
                AlertState.Normal
            ),
            Moment(element, path, "raisedAt"),
            Moment(element, path, "lastSeenAt"),
            element.TryGetProperty("clearedAt", out _) ? Moment(element, path, "clearedAt") : null,
            Text(element, path, "sentence")
        );

    private static string Text(JsonElement element, string path, string name)
    {
        try
        {
            if (
                element.ValueKind == JsonValueKind.Object
                && element.TryGetProperty(name, out var property)
                && property.ValueKind == JsonValueKind.String
                && property.GetString() is { Length: > 0 } text
            )
            {
                return text;
            }
        }
        catch (InvalidOperationException)
        {
            // An escaped half of a surrogate pair is no text; it is told like any other that is missing.
        }

        throw new FormatException($"{path}.{name}: a text is expected.");
    }

    private static T Word<T>(JsonElement element, string path, string name, params T[] values)
        where T : struct, Enum
    {
        var text = Text(element, path, name);
        var found = values.Where(value => Words.Kebab(value) == text).ToList();
        return found.Count == 1
            ? found[0]
            : throw new FormatException(
                $"{path}.{name}: '{text}'; allowed: {string.Join(", ", values.Select(value => Words.Kebab(value)))}."
            );
    }

    private static DateTimeOffset Moment(JsonElement element, string path, string name)
    {
        var text = Text(element, path, name);
        return DateTimeOffset.TryParseExact(
            text,
            Form,
            CultureInfo.InvariantCulture,
            DateTimeStyles.None,
            out var moment
        )
            ? moment
            : throw new FormatException($"{path}.{name}: '{text}' is not a moment such as 2026-03-14T06:15:00+00:00.");
    }
}
