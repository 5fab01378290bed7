namespace OilCondition;

/// <summary>What happens to an alert of the journal, and so to its work request.</summary>
public enum JournalChangeKind
{
    /// <summary>New: open a work request.</summary>
    Raised,

    /// <summary>It had cleared, and is back: reopen its work request, or open another one.</summary>
    RaisedAgain,

    /// <summary>From alert to alarm: raise the priority of its work request.</summary>
    Escalated,

    /// <summary>From alarm to alert: lower the priority of its work request.</summary>
    Eased,

    /// <summary>Somebody has taken it on. That came from outside: nothing is delivered.</summary>
    Acknowledged,

    /// <summary>The condition has gone: tell it to whoever has its work request.</summary>
    Cleared,

    /// <summary>The oil was changed, and with it went the condition of the old charge: as cleared.</summary>
    ClearedByOilChange,

    /// <summary>The machine was taken out of service: close its work request.</summary>
    MachineRetired,

    /// <summary>A run that was dated wrongly was taken back: bring its work request to the state and severity that the change names.</summary>
    TakenBack,
}
