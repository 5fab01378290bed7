namespace OilCondition.Cleanup;

/// <summary>Whether a cleanup stalls.</summary>
public enum StallVerdict
{
    /// <summary>The readings do not tell yet. Causes that would fit the best curve are given where it levels off above the target.</summary>
    NotDetermined,

    /// <summary>The sensor stands at saturation: there is free water, and a sensor cannot see how much, nor whether it leaves.</summary>
    SensorAtSaturation,

    /// <summary>The target is reached, and the readings show it.</summary>
    Done,

    /// <summary>It falls as fast as planned, to a target within reach.</summary>
    NotStalled,

    /// <summary>The target is within reach, but the fall is slower than planned.</summary>
    Slow,

    /// <summary>It levels off above the target, now or later.</summary>
    Stalled,
}
