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
}
