namespace OilCondition;

/// <summary>Where an alert stands between the library and people. The states are those of the alarm state model of IEC 62682 (from memory).</summary>
public enum AlertState
{
    /// <summary>The condition holds, and nobody has acknowledged it.</summary>
    UnacknowledgedActive,

    /// <summary>The condition holds, and somebody has taken it on.</summary>
    AcknowledgedActive,

    /// <summary>The condition has gone before anybody acknowledged it: people should still see that it was there.</summary>
    ReturnedUnacknowledged,

    /// <summary>The condition has gone, and somebody knows of it: closed.</summary>
    Normal,
}
