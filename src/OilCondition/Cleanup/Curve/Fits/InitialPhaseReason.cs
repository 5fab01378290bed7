namespace OilCondition.Cleanup;

/// <summary>Why a reading is not used for a cleanup curve: it belongs to an initial phase of the run, before the exponential fall.</summary>
public enum InitialPhaseReason
{
    /// <summary>It was taken before the stated start.</summary>
    BeforeStatedStart,

    /// <summary>
    /// It was taken before, or is, the last reading that is only known to lie above its value: a moisture sensor at saturation, where free
    /// water leaves at the rate that heat and pump allow, or a counter beyond its range.
    /// </summary>
    UpToLastSaturated,

    /// <summary>It was taken before, or is, the last reading above the stated content at which water is free.</summary>
    UpToLastFreeWater,

    /// <summary>The shape of the run: it falls less than the exponential of the rest would have (warming up, or free water at a constant rate).</summary>
    SlowStart,
}
