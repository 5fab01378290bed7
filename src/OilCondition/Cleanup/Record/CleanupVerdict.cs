namespace OilCondition.Cleanup;

/// <summary>What a run came to.</summary>
internal enum CleanupVerdict
{
    /// <summary>There is too little to judge by.</summary>
    NotDetermined,

    /// <summary>The target has held for as long as it must, and was not lost since.</summary>
    TargetMet,

    /// <summary>At the target or below at the end, but not for as long as it must hold.</summary>
    HoldNotCompleted,

    /// <summary>Ended above the target, or before the oil was warm.</summary>
    NotReached,

    /// <summary>Levels off above the target.</summary>
    Stalled,

    /// <summary>The target was met and lost again.</summary>
    Rebounded,
}
