using System.Globalization;
using System.Text.Json;
using OilCondition.Text;

namespace OilCondition;

/// <summary>Writes and reads a journal. Where an alert stands follows from its changes; it is written for other readers, and checked when read.</summary>
internal static class JournalJson
{
    private const string Form = "yyyy-MM-ddTHH:mm:ss.FFFFFFFzzz";

    public static JsonOutput Of(IReadOnlyList<JournalEntry> entries) =>
        new(JsonFormat.Journal, json => json.WriteList("alerts", entries, entry => Entry(json, entry)));

    private static void Entry(Utf8JsonWriter json, JournalEntry entry)
    {
        json.WriteString("key", entry.Key);
        json.WriteString("machine", entry.MachineId);
        json.WriteWord("severity", entry.Severity);
        json.WriteWord("state", entry.State);
        json.WriteString("lastSeenAt", Exact(entry.LastSeenAt));
        json.WriteString("sentence", entry.Sentence);
        if (entry.WorkOrder.Length > 0)
        {
            json.WriteString("workOrder", entry.WorkOrder);
        }

        json.WriteList("changes", entry.Changes, change => Change(json, change));
    }

    private static void Change(Utf8JsonWriter json, JournalChange change)
    {
        json.WriteString("id", change.Id);
        json.WriteWord("kind", change.Kind);
        json.WriteString("at", Exact(change.At));
        json.WriteWord("severity", change.Severity);
        json.WriteString("sentence", change.Sentence);
        if (change.Evidence.Count > 0)
        {
            json.WriteStartArray("evidence");
            foreach (var line in change.Evidence)
            {
                json.WriteStringValue(line);
            }

            json.WriteEndArray();
        }

        if (change.By.Length > 0)
        {
            json.WriteString("by", change.By);
        }

        json.WriteBoolean("confirmed", change.IsConfirmed);
    }

    public static IReadOnlyList<JournalEntry> Read(string text) => JsonEntry.Read(text, JsonFormat.Journal, Entries);

    private static IReadOnlyList<JournalEntry> Entries(JsonEntry root)
    {
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
        var key = json.Text("key");
        if (
            key is not null
            && AlertKey.Parse(key) is { } parts
            && json.TextOrEmpty("machine") is { Length: > 0 } machine
            && machine != parts.MachineId
        )
        {
            json.Fault("machine", $"'{machine}'; the key says '{parts.MachineId}'.");
        }

        var severity = json.Word<Severity>("severity");
        var state = json.Word<AlertState>("state");
        var lastSeenAt = json.Moment("lastSeenAt");
        var sentence = json.Text("sentence");
        var workOrder = json.TextOrEmpty("workOrder");
        if (key is not null && AlertKey.Parse(key) is null)
        {
            json.Fault("key", $"'{key}'; expected is machine/charge/subject.");
        }

        var changes = Changes(json, key ?? "");
        if (!json.IsFaultless)
        {
            return null;
        }

        var entry = new JournalEntry(key!, lastSeenAt!.Value, sentence!, workOrder, changes);
        if (entry.State != state || entry.Severity != severity)
        {
            json.Fault(
                $"the changes lead to '{PlainText.Kebab(entry.State)}' and '{PlainText.Kebab(entry.Severity)}', not to the state and severity that stand here."
            );
        }

        if (entry.LastSeenAt < entry.RaisedAt)
        {
            json.Fault("lastSeenAt", $"it is before the alert was raised, {Exact(entry.RaisedAt!.Value)}.");
        }

        return entry;
    }

    private static List<JournalChange> Changes(JsonEntry json, string key)
    {
        var changes = new List<JournalChange>();
        var latestRun = DateTimeOffset.MinValue;
        json.List(
            "changes",
            one =>
            {
                if (Change(one, key) is not { } change)
                {
                    return null;
                }

                var before = changes.Count == 0 ? null : changes[changes.Count - 1];
                if (change.After(before) is not { } possible)
                {
                    one.Fault(
                        $"{PlainText.Kebab(change.Kind)} cannot follow {(before is null ? "nothing" : $"{PlainText.Kebab(before.Kind)} with the state '{PlainText.Kebab(before.State)}' and severity '{PlainText.Kebab(before.Severity)}'")}."
                    );
                    return null;
                }

                if (change.IsOfRun && change.At < latestRun)
                {
                    one.Fault("at", $"it is before the change above it, {Exact(latestRun)}.");
                }

                latestRun = change.IsOfRun ? change.At : latestRun;
                changes.Add(possible);
                return possible;
            }
        );
        if (changes.Count == 0 && json.IsFaultless)
        {
            json.Fault("changes", "at least one is expected.");
        }

        return changes;
    }

    private static JournalChange? Change(JsonEntry json, string key)
    {
        var kind = json.Word<JournalChangeKind>("kind");
        var at = json.Moment("at");
        var severity = json.Word<Severity>("severity");
        var sentence = json.Text("sentence");
        var evidence = json.TextsIfAny("evidence");
        var by = json.TextOrEmpty("by");
        var confirmed = json.FlagIfAny("confirmed");
        if (severity == Severity.Information)
        {
            json.Fault("severity", "'information'; an alert is of severity alert or alarm.");
        }

        if (kind == JournalChangeKind.Acknowledged && by.Length == 0)
        {
            json.Fault("by", "who acknowledged is expected.");
        }

        var id = json.TextOrEmpty("id");
        if (!json.IsFaultless)
        {
            return null;
        }

        var change = new JournalChange(key, kind!.Value, at!.Value, severity!.Value, sentence!, evidence ?? [])
        {
            By = by,
            IsConfirmed = confirmed == true,
        };
        if (id.Length > 0 && id != change.Id)
        {
            json.Fault("id", $"'{id}'; key, moment and kind say '{change.Id}'.");
        }

        return change;
    }
}
