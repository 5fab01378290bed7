using System.Globalization;
using OilCondition.Text;

namespace OilCondition;

/// <summary>Writes and reads a journal.</summary>
internal static class JournalJson
{
    private const string Form = "yyyy-MM-ddTHH:mm:ss.FFFFFFFzzz";

    public static string Write(IReadOnlyList<JournalEntry> entries) =>
        JsonText.Write(
            JsonFormat.Journal,
            json =>
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
            }
        );

    public static IReadOnlyList<JournalEntry> Read(string text) => JsonEntry.Read(text, JsonFormat.Journal, Entries);

    private static IReadOnlyList<JournalEntry> Entries(JsonEntry root)
    {
        root.Known("alerts");
        var entries = root.List("alerts", Entry);
        foreach (var twice in entries.GroupBy(entry => entry.Key, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            root.Fault("alerts", $"the key '{twice.Key}' is there more than once.");
        }

        return entries;
    }

    /// <summary>To the last tick: a journal that was read again must equal the one that was written.</summary>
    private static string Exact(DateTimeOffset at) => at.ToString(Form, CultureInfo.InvariantCulture);

    private static JournalEntry? Entry(JsonEntry json)
    {
        json.Known("key", "severity", "state", "raisedAt", "lastSeenAt", "clearedAt", "sentence");
        var key = json.Text("key");
        var severity = json.Word<Severity>("severity");
        var state = json.Word<AlertState>("state");
        var raisedAt = json.Moment("raisedAt");
        var lastSeenAt = json.Moment("lastSeenAt");
        var clearedAt = json.MomentIfAny("clearedAt");
        var sentence = json.Text("sentence");
        if (
            key is null
            || severity is null
            || state is null
            || raisedAt is null
            || lastSeenAt is null
            || json.Has("clearedAt") != clearedAt.HasValue
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
        if (entry.IsActive == clearedAt.HasValue)
        {
            json.Fault(
                $"the state is '{PlainText.Kebab(entry.State)}', which {(entry.IsActive ? "has no" : "needs a")} 'clearedAt'."
            );
        }

        return entry;
    }
}
