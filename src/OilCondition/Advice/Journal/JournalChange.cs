using System.Globalization;
using OilCondition.Text;

namespace OilCondition;

/// <summary>One thing that happened to an alert, with all that its work request needs: it can be delivered today, or after a crash tomorrow.</summary>
public sealed record JournalChange
{
    internal JournalChange(
        string key,
        JournalChangeKind kind,
        DateTimeOffset at,
        Severity severity,
        string sentence,
        IReadOnlyList<string> evidence
    )
    {
        Key = key;
        Kind = kind;
        At = at;
        Severity = severity;
        Sentence = sentence;
        Evidence = evidence;
    }

    /// <summary>The key of the alert; the same for all its changes.</summary>
    public string Key { get; }

    /// <summary>
    /// The same for the same change on every run, and for no other one: key, moment in UTC and kind. Keep it with the work request, so that a change
    /// that is delivered a second time is known.
    /// </summary>
    public string Id =>
        Key
        + "@"
        + At.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ss.FFFFFFFZ", CultureInfo.InvariantCulture)
        + "/"
        + PlainText.Kebab(Kind);

    /// <summary>What happened.</summary>
    public JournalChangeKind Kind { get; }

    /// <summary>When: the moment of the assessment, or the moment that was stated.</summary>
    public DateTimeOffset At { get; }

    /// <summary>Alert or alarm, after it.</summary>
    public Severity Severity { get; internal init; }

    /// <summary>Where the alert stands after it.</summary>
    public AlertState State { get; internal init; }

    /// <summary>The statement of the problem at that moment, or the last one where it has gone.</summary>
    public string Sentence { get; }

    /// <summary>The figures on which it rests, one line a measurand; none where the condition has gone.</summary>
    public IReadOnlyList<string> Evidence { get; }

    /// <summary>Who acknowledged; empty for all other kinds.</summary>
    public string By { get; internal init; } = "";

    /// <summary>Whether it was delivered, as far as the journal knows.</summary>
    public bool IsConfirmed { get; internal init; }

    /// <summary>Whether the condition holds after it.</summary>
    public bool IsActive => State is AlertState.UnacknowledgedActive or AlertState.AcknowledgedActive;

    /// <summary>Whether an assessment made it, not a person.</summary>
    internal bool IsOfRun =>
        Kind
            is JournalChangeKind.Raised
                or JournalChangeKind.RaisedAgain
                or JournalChangeKind.Escalated
                or JournalChangeKind.Eased
                or JournalChangeKind.Cleared
                or JournalChangeKind.ClearedByOilChange;

    /// <summary>The change after another one, with the state to which it leads; null where it cannot follow it.</summary>
    internal JournalChange? After(JournalChange? before)
    {
        AlertState? state = (Kind, before?.State) switch
        {
            (JournalChangeKind.Raised, null) => AlertState.UnacknowledgedActive,
            (JournalChangeKind.TakenBack, null) => AlertState.Normal,
            (_, null) => null,
            (JournalChangeKind.RaisedAgain, _) when !before!.IsActive => AlertState.UnacknowledgedActive,
            // Who acknowledged an alert has not yet seen the alarm.
            (JournalChangeKind.Escalated, _) when before!.IsActive && Severity > before.Severity =>
                AlertState.UnacknowledgedActive,
            (JournalChangeKind.Eased, _) when before!.IsActive && Severity < before.Severity => before.State,
            (JournalChangeKind.Acknowledged, AlertState.UnacknowledgedActive) => AlertState.AcknowledgedActive,
            (JournalChangeKind.Acknowledged, AlertState.ReturnedUnacknowledged) => AlertState.Normal,
            (JournalChangeKind.Acknowledged, _) => before!.State,
            (JournalChangeKind.Cleared or JournalChangeKind.ClearedByOilChange, AlertState.AcknowledgedActive) =>
                AlertState.Normal,
            (JournalChangeKind.Cleared or JournalChangeKind.ClearedByOilChange, AlertState.UnacknowledgedActive) =>
                AlertState.ReturnedUnacknowledged,
            (JournalChangeKind.MachineRetired, _) when before!.IsActive => AlertState.Normal,
            (JournalChangeKind.TakenBack, _) => before!.State,
            _ => null,
        };
        return state is { } found ? this with { State = found } : null;
    }

    /// <summary>What happened, to what, when, and whether it waits for delivery.</summary>
    /// <returns>For example <c>2026-01-01 raised: M1/2025-03-14/wear (alarm), to be delivered</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Date(At)} {PlainText.Spaced(Kind)}: {Key} ({PlainText.Spaced(Severity)}){(IsConfirmed ? "" : ", to be delivered")}";
}
