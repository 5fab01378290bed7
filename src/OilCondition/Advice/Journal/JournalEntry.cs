using OilCondition.Text;

namespace OilCondition;

/// <summary>One alert as the journal knows it.</summary>
public sealed record JournalEntry
{
    internal JournalEntry(
        string key,
        Severity severity,
        AlertState state,
        DateTimeOffset raisedAt,
        DateTimeOffset lastSeenAt,
        DateTimeOffset? clearedAt,
        string sentence
    )
    {
        Key = key;
        Severity = severity;
        State = state;
        RaisedAt = raisedAt;
        LastSeenAt = lastSeenAt;
        ClearedAt = clearedAt;
        Sentence = sentence;
    }

    /// <summary>The key of the alert: machine / charge / subject of the problem.</summary>
    public string Key { get; internal init; }

    /// <summary>Alert or alarm, as last assessed.</summary>
    public Severity Severity { get; internal init; }

    /// <summary>Where it stands.</summary>
    public AlertState State { get; internal init; }

    /// <summary>The assessment that raised it, the latest time where it returned.</summary>
    public DateTimeOffset RaisedAt { get; internal init; }

    /// <summary>The latest assessment that found it.</summary>
    public DateTimeOffset LastSeenAt { get; internal init; }

    /// <summary>The assessment that no longer found it; null while it holds.</summary>
    public DateTimeOffset? ClearedAt { get; internal init; }

    /// <summary>The statement of its problem, as last assessed.</summary>
    public string Sentence { get; internal init; }

    /// <summary>Whether the condition holds.</summary>
    public bool IsActive => State is AlertState.UnacknowledgedActive or AlertState.AcknowledgedActive;

    /// <summary>Key, severity, state and since when.</summary>
    /// <returns>For example <c>M1/charge-1/wear: alarm, unacknowledged active, raised 2026-01-01</c>.</returns>
    public override string ToString() =>
        $"{Key}: {PlainText.Spaced(Severity)}, {PlainText.Spaced(State)}, raised {PlainText.Date(RaisedAt)}"
        + (ClearedAt is { } cleared ? $", cleared {PlainText.Date(cleared)}" : "");
}
