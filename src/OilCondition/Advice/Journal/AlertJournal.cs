using OilCondition.Text;

namespace OilCondition;

/// <summary>Remembers which alerts are open, so that a problem reaches the maintenance system once.</summary>
/// <remarks>
/// <para>
/// Immutable. Keep it as JSON between runs; reconcile every assessment with it and act on the changes: raised opens a work request, held does
/// nothing, escalated raises its priority, cleared tells that the condition has gone. Running the same assessment again changes nothing.
/// </para>
/// <para>
/// Against flapping an alert that no longer shows is only cleared when the clear delay has passed since it was last seen. An alert of
/// an oil charge that is no longer in the machine is cleared at once.
/// </para>
/// </remarks>
/// <example>
/// <code>
/// var step = AlertJournal.Parse(File.ReadAllText("journal.json")).Reconcile(assessment);
/// foreach (var change in step.Changes.Where(change => change.Kind == JournalChangeKind.Raised))
/// {
///     OpenWorkRequest(change.Entry.Key, change.Entry.Sentence);
/// }
///
/// File.WriteAllText("journal.json", step.Journal.ToJson());
/// </code>
/// </example>
public sealed class AlertJournal
{
    private AlertJournal(IEnumerable<JournalEntry> entries) =>
        Entries = [.. entries.OrderBy(entry => entry.Key, StringComparer.Ordinal)];

    /// <summary>A journal in which nothing is written.</summary>
    public static AlertJournal Empty { get; } = new([]);

    /// <summary>Every alert ever raised, in the order of the keys, each key once.</summary>
    public IReadOnlyList<JournalEntry> Entries { get; }

    /// <summary>Reads a journal that <see cref="ToJson"/> wrote.</summary>
    /// <param name="json">The text.</param>
    /// <returns>The journal.</returns>
    /// <exception cref="FormatException">The text is no journal; the message says where.</exception>
    public static AlertJournal Parse(string json) => new(JournalJson.Read(Guard.NotNull(json)));

    /// <summary>Reconciles an assessment with the journal.</summary>
    /// <param name="assessment">The assessment of one machine; entries of other machines stay as they are.</param>
    /// <param name="clearDelay">How long an alert must be gone before it is cleared, up to ten years; none by default.</param>
    /// <returns>The journal to keep for the next time, and what changed, gravest first; alerts that merely hold are among them.</returns>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The assessment is older than what the journal knows of this machine, or the delay lies outside its range.
    /// </exception>
    public (AlertJournal Journal, IReadOnlyList<JournalChange> Changes) Reconcile(
        ConditionAssessment assessment,
        TimeSpan? clearDelay = null
    )
    {
        Guard.NotNull(assessment);
        var delay = TimeSpan.FromDays(Guard.InRange(clearDelay?.TotalDays ?? 0, 0, 3653, "d", nameof(clearDelay)));
        var asOf = assessment.Options.AsOf;
        var machine = assessment.History.Machine.Id + "/";
        var known = Entries
            .Where(entry => entry.Key.StartsWith(machine, StringComparison.Ordinal))
            .ToDictionary(entry => entry.Key, StringComparer.Ordinal);
        var latest = known.Values.Select(entry => entry.ClearedAt ?? entry.LastSeenAt).DefaultIfEmpty().Max();
        if (asOf < latest)
        {
            throw new ArgumentOutOfRangeException(
                nameof(assessment),
                $"The assessment is of {asOf:u}, but the journal knows {assessment.History.Machine.Id} up to {latest:u}. Reconcile in order of time."
            );
        }

        var changes = assessment.Alerts.Select(alert => Present(alert, known, asOf)).ToList();
        var present = new HashSet<string>(assessment.Alerts.Select(alert => alert.Key), StringComparer.Ordinal);
        var charge = machine + assessment.Charge + "/";
        changes.AddRange(
            known
                .Values.Where(entry => entry.IsActive && !present.Contains(entry.Key))
                .Select(entry => Absent(entry, charge, asOf, delay))
                .OfType<JournalChange>()
        );
        var changed = changes.ToDictionary(change => change.Entry.Key, change => change.Entry, StringComparer.Ordinal);
        var entries = Entries.Where(entry => !changed.ContainsKey(entry.Key)).Concat(changed.Values);
        return (
            new AlertJournal(entries),
            [.. changes.OrderByDescending(change => change.Entry.Severity).ThenBy(change => change.Kind)]
        );
    }

    /// <summary>Notes that somebody has taken an alert on.</summary>
    /// <param name="key">Its key.</param>
    /// <returns>The new journal; the same when it was acknowledged already.</returns>
    /// <exception cref="ArgumentException">The journal has no such key.</exception>
    public AlertJournal Acknowledge(string key)
    {
        Guard.NotBlank(key);
        var entry =
            Entries.FirstOrDefault(one => string.Equals(one.Key, key, StringComparison.Ordinal))
            ?? throw new ArgumentException($"key is '{key}'; the journal has no such alert.", nameof(key));
        var state = entry.State switch
        {
            AlertState.UnacknowledgedActive => AlertState.AcknowledgedActive,
            AlertState.ReturnedUnacknowledged => AlertState.Normal,
            var same => same,
        };
        return state == entry.State
            ? this
            : new AlertJournal(Entries.Where(one => one != entry).Append(entry with { State = state }));
    }

    /// <summary>The journal as JSON, the same bytes for the same journal.</summary>
    /// <returns>Indented JSON.</returns>
    public string ToJson() => JournalJson.Write(Entries);

    private static JournalChange Present(Alert alert, Dictionary<string, JournalEntry> known, DateTimeOffset asOf)
    {
        var sentence = alert.Problem.Statement;
        if (!known.TryGetValue(alert.Key, out var entry))
        {
            entry = new JournalEntry(
                alert.Key,
                alert.Severity,
                AlertState.UnacknowledgedActive,
                asOf,
                asOf,
                null,
                sentence
            );
            return new JournalChange(JournalChangeKind.Raised, entry, alert);
        }

        var now = entry with { Severity = alert.Severity, LastSeenAt = asOf, Sentence = sentence, ClearedAt = null };
        if (!entry.IsActive)
        {
            now = now with { State = AlertState.UnacknowledgedActive, RaisedAt = asOf };
            return new JournalChange(JournalChangeKind.Returned, now, alert);
        }

        if (alert.Severity > entry.Severity)
        {
            // Who acknowledged an alert has not yet seen the alarm.
            now = now with
            {
                State = AlertState.UnacknowledgedActive,
            };
            return new JournalChange(JournalChangeKind.Escalated, now, alert);
        }

        var kind = alert.Severity < entry.Severity ? JournalChangeKind.Eased : JournalChangeKind.Held;
        return new JournalChange(kind, now, alert);
    }

    private static JournalChange? Absent(JournalEntry entry, string charge, DateTimeOffset asOf, TimeSpan delay)
    {
        var ofThisCharge = entry.Key.StartsWith(charge, StringComparison.Ordinal);
        if (ofThisCharge && asOf - entry.LastSeenAt < delay)
        {
            return null;
        }

        var gone = entry with
        {
            ClearedAt = asOf,
            State =
                entry.State == AlertState.AcknowledgedActive ? AlertState.Normal : AlertState.ReturnedUnacknowledged,
        };
        var kind = ofThisCharge ? JournalChangeKind.Cleared : JournalChangeKind.ClearedByOilChange;
        return new JournalChange(kind, gone, null);
    }

    /// <summary>How many alerts it knows, and how many of them hold.</summary>
    /// <returns>For example <c>12 alerts, 3 active</c>.</returns>
    public override string ToString() => $"{Entries.Count} alerts, {Entries.Count(entry => entry.IsActive)} active";
}
