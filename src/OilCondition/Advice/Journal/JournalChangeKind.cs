namespace OilCondition;

/// <summary>What an assessment changes in the journal, and so in the maintenance system.</summary>
public enum JournalChangeKind
{
    /// <summary>New: open a work request.</summary>
    Raised,

    /// <summary>It was closed or had gone, and is back: reopen the work request of the same key.</summary>
    Returned,

    /// <summary>From alert to alarm: raise the priority of the work request.</summary>
    Escalated,

    /// <summary>From alarm to alert.</summary>
    Eased,

    /// <summary>Still there: nothing to do.</summary>
    Held,

    /// <summary>The condition has gone.</summary>
    Cleared,

    /// <summary>The oil was changed, and with it went the condition of the old charge.</summary>
    ClearedByOilChange,
}
