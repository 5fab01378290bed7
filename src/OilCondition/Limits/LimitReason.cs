namespace OilCondition.Limits;

/// <summary>Why a state is what it is.</summary>
public enum LimitReason
{
    /// <summary>The reading was compared with the limit.</summary>
    Compared,

    /// <summary>There is no reading.</summary>
    NoReading,

    /// <summary>The limit is a change from new oil, and no new-oil value is known.</summary>
    NewOilValueMissing,

    /// <summary>The reading is only bounded (&lt; or &gt;), and the bound does not decide.</summary>
    BoundDoesNotDecide,

    /// <summary>The latest readings lie beyond a figure, but not yet as many as the limit asks for.</summary>
    AwaitingConfirmation,

    /// <summary>There are too few readings for a rate of change or for limits from the machine's own history.</summary>
    TooFewReadings,

    /// <summary>The machine's earlier readings move by themselves, so that they give no usual state to hold a reading against.</summary>
    HistoryMoves,

    /// <summary>The limit is a percentile of a fleet, and no fleet was given.</summary>
    NoFleet,

    /// <summary>The percentile falls among readings of the fleet that are only bounds (&lt; or &gt;), which leave it open.</summary>
    FleetOnlyBounded,

    /// <summary>The fleet is too small for that percentile.</summary>
    FleetTooSmall,
}
