using System.Globalization;
using System.Text.Json;
using OilCondition.Guards;

namespace OilCondition.Advice;

/// <summary>Writes and reads a journal.</summary>
internal static class JournalJson
{
    private const string Form = "yyyy-MM-ddTHH:mm:ss.FFFFFFFzzz";

    public static string Write(IReadOnlyList<JournalEntry> entries) =>
        JsonText.Write(json =>
        {
            json.WriteStartArray("alerts");
            foreach (var entry in entries)
            {
                json.WriteStartObject();
                json.WriteString("key", entry.Key);
                json.WriteString("severity", PlainText.Kebab(entry.Severity));
                json.WriteString("state", PlainText.Kebab(entry.State));
                json.WriteString("raisedAt", Exact(entry.RaisedAt));
                json.WriteString("lastSeenAt", Exact(entry.LastSeenAt));
                if (entry.ClearedAt is { } cleared)
                {
                    json.WriteString("clearedAt", Exact(cleared));
                }

                json.WriteString("sentence", entry.Sentence);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        });

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

    /// <summary>To the last tick: a journal that was read again must equal the one that was written.</summary>
    private static string Exact(DateTimeOffset at) => at.ToString(Form, CultureInfo.InvariantCulture);

    private static JournalEntry Entry(JsonElement element, string path)
    {
        var entry = new JournalEntry(
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
        return entry.IsActive == entry.ClearedAt is null
            ? entry
            : throw new FormatException(
                $"{path}: the state is '{PlainText.Kebab(entry.State)}', which {(entry.IsActive ? "has no" : "needs a")} 'clearedAt'."
            );
    }

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
        var found = values.Where(value => PlainText.Kebab(value) == text).ToList();
        return found.Count == 1
            ? found[0]
            : throw new FormatException(
                $"{path}.{name}: '{text}'; allowed: {string.Join(", ", values.Select(value => PlainText.Kebab(value)))}."
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
