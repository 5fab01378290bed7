namespace OilCondition.Planning;

/// <summary>Why a machine does not fit.</summary>
public enum MisfitReason
{
    /// <summary>Its visit is longer than the longest of its windows.</summary>
    WindowTooShort,

    /// <summary>Its visit is longer than the longest stretch in which unit and machine are both available.</summary>
    UnitAwayTooOften,

    /// <summary>Crew hours do not let its visit be connected and disconnected.</summary>
    CrewHours,

    /// <summary>The unit cannot be there before its last possible begin.</summary>
    Unreachable,

    /// <summary>Even if the unit goes there first, its visit ends after its latest end.</summary>
    LatestEnd,

    /// <summary>It would fit alone, and not with the other machines.</summary>
    Together,
}
