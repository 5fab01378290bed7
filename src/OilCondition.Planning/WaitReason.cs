namespace OilCondition.Planning;

/// <summary>Why the unit waits at a machine before it is connected.</summary>
public enum WaitReason
{
    /// <summary>It does not wait.</summary>
    None,

    /// <summary>The task may not start earlier.</summary>
    EarliestStart,

    /// <summary>The machine may not be worked on, or not for long enough.</summary>
    Window,

    /// <summary>Nobody is there to connect it, or to disconnect it in time.</summary>
    Crew,

    /// <summary>The unit itself is unavailable, or soon will be.</summary>
    Unit,
}
