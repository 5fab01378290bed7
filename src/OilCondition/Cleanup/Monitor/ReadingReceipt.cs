namespace OilCondition.Cleanup;

/// <summary>What a monitor did with a reading.</summary>
public enum ReadingReceipt
{
    /// <summary>Taken; none before was later.</summary>
    Taken,

    /// <summary>Taken; it is earlier than another that came before it, and counts where it belongs.</summary>
    TakenOutOfOrder,

    /// <summary>The same moment and kind as one that is kept, with the same figures: nothing changes.</summary>
    Duplicate,

    /// <summary>
    /// The same moment and kind as one that is kept, with other figures: for the curve the one with more water, or more particles, is kept. All count
    /// for holding.
    /// </summary>
    Conflicting,

    /// <summary>It shares a cell of time with a kept one: it counts for holding, temperatures and rebound, not for the curve.</summary>
    Thinned,

    /// <summary>Before the start of the run: left out.</summary>
    BeforeStart,
}
