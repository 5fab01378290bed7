using OilCondition.Text;

namespace OilCondition;

/// <summary>One alert as the journal knows it: what happened to it, from which follows where it stands.</summary>
public sealed class JournalEntry
{
    internal JournalEntry(
        string key,
        DateTimeOffset lastSeenAt,
        string sentence,
        string workOrder,
        IReadOnlyList<JournalChange> changes
    )
    {
        Key = key;
        Parts =
            AlertKey.Parse(key)
            ?? throw new ArgumentException($"key is '{key}'; expected: machine/charge/subject.", nameof(key));
        LastSeenAt = lastSeenAt;
        Sentence = sentence;
        WorkOrder = workOrder;
        Changes = changes;
        Last = changes[changes.Count - 1];
    }

    /// <summary>The key of the alert: machine / charge / subject of the problem. It stands, whatever is learnt of the charge later.</summary>
    public string Key { get; }

    /// <summary>The machine.</summary>
    public string MachineId => Parts.MachineId;

    /// <summary>Alert or alarm, as last assessed.</summary>
    public Severity Severity => Last.Severity;

    /// <summary>Where it stands.</summary>
    public AlertState State => Last.State;

    /// <summary>The assessment that raised it, the latest time where it was raised again; null where that was taken back.</summary>
    public DateTimeOffset? RaisedAt => Latest(JournalChangeKind.Raised, JournalChangeKind.RaisedAgain)?.At;

    /// <summary>The latest assessment that found it.</summary>
    public DateTimeOffset LastSeenAt { get; }

    /// <summary>When the condition had gone, or the raise was taken back; null while it holds.</summary>
    public DateTimeOffset? ClearedAt =>
        IsActive
            ? null
            : (
                Latest(
                    JournalChangeKind.Cleared,
                    JournalChangeKind.ClearedByOilChange,
                    JournalChangeKind.MachineRetired
                ) ?? Last
            ).At;

    /// <summary>The statement of its problem, as last assessed.</summary>
    public string Sentence { get; }

    /// <summary>Reference of its work request in the maintenance system; empty while none is known.</summary>
    public string WorkOrder { get; }

    /// <summary>Who acknowledged it and when, where that was after its latest raise or escalation; null otherwise.</summary>
    public JournalChange? Acknowledged =>
        Changes
            .Reverse()
            .TakeWhile(one =>
                one.Kind
                    is not (JournalChangeKind.Raised or JournalChangeKind.RaisedAgain or JournalChangeKind.Escalated)
            )
            .LastOrDefault(one => one.Kind == JournalChangeKind.Acknowledged);

    /// <summary>What happened to it, in order.</summary>
    public IReadOnlyList<JournalChange> Changes { get; }

    /// <summary>Whether the condition holds.</summary>
    public bool IsActive => Last.IsActive;

    internal AlertKey Parts { get; }

    /// <summary>The latest moment that an assessment wrote.</summary>
    internal DateTimeOffset LatestRun =>
        Changes.Where(one => one.IsOfRun).Select(one => one.At).Append(LastSeenAt).Max();

    private JournalChange Last { get; }

    /// <summary>Whether it was found in a charge: by its name, or because it was raised since the oil went in, whatever that charge was called then.</summary>
    internal bool IsOf(OilCharge charge) =>
        Parts.Charge == charge.ToString() || !charge.IsDated || RaisedAt >= charge.Since;

    /// <summary>Its changes, each with the latest moment of it and of those before it.</summary>
    internal IEnumerable<(JournalChange Change, DateTimeOffset NotBefore)> InOrder()
    {
        var latest = DateTimeOffset.MinValue;
        foreach (var change in Changes)
        {
            latest = change.At > latest ? change.At : latest;
            yield return (change, latest);
        }
    }

    /// <summary>The entry with one change more, and what was last seen of it.</summary>
    internal JournalEntry With(JournalChange change, DateTimeOffset? lastSeenAt = null) =>
        new(
            Key,
            lastSeenAt ?? LastSeenAt,
            lastSeenAt is null ? Sentence : change.Sentence,
            WorkOrder,
            [.. Changes, change.After(Last) ?? throw new InvalidOperationException($"{change} cannot follow {Last}.")]
        );

    internal JournalEntry Seen(DateTimeOffset at, string sentence) => new(Key, at, sentence, WorkOrder, Changes);

    internal JournalEntry With(IReadOnlyList<JournalChange> changes, string workOrder) =>
        new(Key, LastSeenAt, Sentence, workOrder, changes);

    /// <summary>A change of this alert that carries no new evidence.</summary>
    internal JournalChange Change(JournalChangeKind kind, DateTimeOffset at) =>
        new(Key, kind, at, Severity, Sentence, []);

    private JournalChange? Latest(params JournalChangeKind[] kinds) =>
        Changes.LastOrDefault(one => kinds.Contains(one.Kind));

    /// <summary>Key, severity, state and since when.</summary>
    /// <returns>For example <c>M1/2025-03-14/wear: alarm, unacknowledged active, raised 2026-01-01</c>.</returns>
    public override string ToString() =>
        $"{Key}: {PlainText.Spaced(Severity)}, {PlainText.Spaced(State)}"
        + (RaisedAt is { } raised ? $", raised {PlainText.Date(raised)}" : "")
        + (ClearedAt is { } cleared ? $", cleared {PlainText.Date(cleared)}" : "");
}
