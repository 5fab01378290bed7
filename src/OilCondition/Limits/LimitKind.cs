namespace OilCondition.Limits;

/// <summary>What the figures of a limit are measured from.</summary>
public enum LimitKind
{
    /// <summary>From zero: the reading itself.</summary>
    Absolute,

    /// <summary>From the new oil's value, as a difference in the measurand's unit.</summary>
    ChangeFromNew,

    /// <summary>From the new oil's value, as a percentage of it.</summary>
    PercentChangeFromNew,

    /// <summary>The change from reading to reading, per span of time or of oil hours.</summary>
    RateOfChange,

    /// <summary>
    /// Percentiles of what the machine's own earlier readings come from: of readings in the usual state 99 % stay below an upper 99, and 1 %
    /// below a lower 1.
    /// </summary>
    OwnHistory,

    /// <summary>Percentiles of the readings of many machines.</summary>
    Fleet,
}
