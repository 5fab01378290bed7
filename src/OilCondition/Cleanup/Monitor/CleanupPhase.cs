namespace OilCondition.Cleanup;

/// <summary>Where a run stands.</summary>
public enum CleanupPhase
{
    /// <summary>There is no reading of what the target asks.</summary>
    NoReadings,

    /// <summary>The oil is colder than it must be.</summary>
    Warming,

    /// <summary>Free water is there: the sensor stands at saturation, or a titration above it. Whether it leaves is not shown by that.</summary>
    FreeWater,

    /// <summary>It falls towards the target, as far as the readings tell.</summary>
    Falling,

    /// <summary>A part levels off above its target, or shows no fall for long enough (<see cref="CleanupStatus.StallEvidence"/>).</summary>
    Stalled,

    /// <summary>At the target or below, but not yet for as long as it must hold.</summary>
    Holding,

    /// <summary>The target has held: it is met.</summary>
    AtTarget,

    /// <summary>The target was met, and the readings are above it again.</summary>
    Rebounded,
}
