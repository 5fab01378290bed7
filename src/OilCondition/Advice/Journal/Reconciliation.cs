namespace OilCondition;

/// <summary>What one assessment changes in the entries of its machine.</summary>
internal static class Reconciliation
{
    /// <summary>The entries of a machine after an assessment.</summary>
    public static IReadOnlyList<JournalEntry> Of(
        ConditionAssessment assessment,
        IReadOnlyList<JournalEntry> known,
        TimeSpan clearDelay
    )
    {
        var asOf = assessment.Options.AsOf;
        var entries = known.ToDictionary(entry => entry.Key, StringComparer.Ordinal);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var alert in assessment.Alerts)
        {
            var entry = Present(alert, Known(alert, known, assessment.Charge), asOf);
            entries[entry.Key] = entry;
            seen.Add(entry.Key);
        }

        foreach (var entry in known.Where(entry => entry.IsActive && !seen.Contains(entry.Key)))
        {
            entries[entry.Key] = Absent(entry, assessment.Charge, asOf, clearDelay);
        }

        return [.. entries.Values.OrderBy(entry => entry.Key, StringComparer.Ordinal)];
    }

    /// <summary>
    /// The entry of an alert. An open one of the same subject is the same problem, even where its key names the charge otherwise: an oil change was
    /// entered late or put right, or is older than the records.
    /// </summary>
    private static JournalEntry? Known(Alert alert, IReadOnlyList<JournalEntry> known, OilCharge charge) =>
        known
            .Where(entry => entry.IsActive && entry.Parts.Subject == alert.Problem.Subject && entry.IsOf(charge))
            .OrderByDescending(entry => entry.Key == alert.Key)
            .ThenByDescending(entry => entry.RaisedAt)
            .FirstOrDefault()
        ?? known.FirstOrDefault(entry => entry.Key == alert.Key);

    private static JournalEntry Present(Alert alert, JournalEntry? entry, DateTimeOffset asOf)
    {
        var sentence = alert.Problem.Statement;
        JournalChange Change(JournalChangeKind kind) =>
            new(
                entry?.Key ?? alert.Key,
                kind,
                asOf,
                alert.Severity,
                sentence,
                [.. Sentences.English.Evidence(alert.Problem)]
            );
        if (entry is null)
        {
            return new JournalEntry(alert.Key, asOf, sentence, "", [Change(JournalChangeKind.Raised).After(null)!]);
        }

        return !entry.IsActive ? entry.With(Change(JournalChangeKind.RaisedAgain), asOf)
            : alert.Severity > entry.Severity ? entry.With(Change(JournalChangeKind.Escalated), asOf)
            : alert.Severity < entry.Severity ? entry.With(Change(JournalChangeKind.Eased), asOf)
            : entry.Seen(asOf, sentence);
    }

    private static JournalEntry Absent(JournalEntry entry, OilCharge charge, DateTimeOffset asOf, TimeSpan clearDelay)
    {
        var kind = entry.IsOf(charge) ? JournalChangeKind.Cleared : JournalChangeKind.ClearedByOilChange;
        return kind == JournalChangeKind.Cleared && asOf - entry.LastSeenAt < clearDelay
            ? entry
            : entry.With(entry.Change(kind, asOf));
    }
}
