using System.Globalization;
using System.Text.Json;
using OilCondition.Text;

namespace OilCondition;

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

    public static IReadOnlyList<JournalEntry> Read(string text) => JsonFaults.Read(text, "journal", Entries);

    private static List<JournalEntry>? Entries(JsonElement root, JsonFaults faults)
    {
        if (
            root.ValueKind != JsonValueKind.Object
            || !root.TryGetProperty("alerts", out var list)
            || list.ValueKind != JsonValueKind.Array
        )
        {
            faults.Add("$", "an object with the list 'alerts' is expected.");
            return null;
        }

        faults.Known(root, "$", "alerts");
        var entries = list.EnumerateArray()
            .Select((one, i) => Entry(one, $"$.alerts[{i}]", faults))
            .OfType<JournalEntry>()
            .ToList();
        foreach (var twice in entries.GroupBy(entry => entry.Key, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            faults.Add("$.alerts", $"the key '{twice.Key}' is there more than once.");
        }

        return entries;
    }

    /// <summary>To the last tick: a journal that was read again must equal the one that was written.</summary>
    private static string Exact(DateTimeOffset at) => at.ToString(Form, CultureInfo.InvariantCulture);

    private static JournalEntry? Entry(JsonElement element, string path, JsonFaults faults)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            faults.Add(path, "an object is expected.");
            return null;
        }

        faults.Known(element, path, "key", "severity", "state", "raisedAt", "lastSeenAt", "clearedAt", "sentence");
        var key = faults.Text(element, path, "key");
        var severity = Word(element, path, "severity", faults, Severity.Information, Severity.Alert, Severity.Alarm);
        var state = Word(
            element,
            path,
            "state",
            faults,
            AlertState.UnacknowledgedActive,
            AlertState.AcknowledgedActive,
            AlertState.ReturnedUnacknowledged,
            AlertState.Normal
        );
        var raisedAt = Moment(element, path, "raisedAt", faults);
        var lastSeenAt = Moment(element, path, "lastSeenAt", faults);
        var isCleared = element.TryGetProperty("clearedAt", out _);
        var clearedAt = isCleared ? Moment(element, path, "clearedAt", faults) : null;
        var sentence = faults.Text(element, path, "sentence");
        if (
            key is null
            || severity is null
            || state is null
            || raisedAt is null
            || lastSeenAt is null
            || (isCleared && clearedAt is null)
            || sentence is null
        )
        {
            return null;
        }

        var entry = new JournalEntry(
            key,
            severity.Value,
            state.Value,
            raisedAt.Value,
            lastSeenAt.Value,
            clearedAt,
            sentence
        );
        if (entry.IsActive == isCleared)
        {
            faults.Add(
                path,
                $"the state is '{PlainText.Kebab(entry.State)}', which {(entry.IsActive ? "has no" : "needs a")} 'clearedAt'."
            );
        }

        return entry;
    }

    private static T? Word<T>(JsonElement element, string path, string name, JsonFaults faults, params T[] values)
        where T : struct, Enum
    {
        if (faults.Text(element, path, name) is not { } text)
        {
            return null;
        }

        foreach (var value in values.Where(value => PlainText.Kebab(value) == text))
        {
            return value;
        }

        var allowed = string.Join(", ", values.Select(value => PlainText.Kebab(value)));
        faults.Add($"{path}.{name}", $"'{text}'; allowed: {allowed}.");
        return null;
    }

    private static DateTimeOffset? Moment(JsonElement element, string path, string name, JsonFaults faults)
    {
        if (faults.Text(element, path, name) is not { } text)
        {
            return null;
        }

        if (DateTimeOffset.TryParseExact(text, Form, CultureInfo.InvariantCulture, DateTimeStyles.None, out var moment))
        {
            return moment;
        }

        faults.Add($"{path}.{name}", $"'{text}' is not a moment such as 2026-03-14T06:15:00+00:00.");
        return null;
    }
}
