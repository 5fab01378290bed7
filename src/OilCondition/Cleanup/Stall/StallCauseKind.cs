namespace OilCondition.Cleanup;

/// <summary>Why a cleanup stalls, or is slow.</summary>
public enum StallCauseKind
{
    /// <summary>The physical floor: what vacuum and sweep air allow with the oil at working temperature.</summary>
    VacuumOrSweepAir,

    /// <summary>The oil is colder in the chamber than it should be, which raises the physical floor.</summary>
    OilTooCold,

    /// <summary>Water comes in: the level lies above the physical floor.</summary>
    WaterIngress,

    /// <summary>The purifier takes out too little per turnover: a bypass, a short circuit from return to suction, less flow, poor contact.</summary>
    BypassOrShortCircuit,
}
