namespace OilCondition.Cleanup;

/// <summary>Why a cleanup stalls, or is slow.</summary>
public enum StallCauseKind
{
    /// <summary>Nothing is amiss: vacuum and sweep air as planned do not bring the oil to this target.</summary>
    VacuumOrSweepAir,

    /// <summary>The oil is colder in the chamber than it should be, which raises the physical floor.</summary>
    OilTooCold,

    /// <summary>Water comes in: the level lies above the physical floor.</summary>
    WaterIngress,

    /// <summary>The purifier takes out too little per turnover: a bypass, a short circuit from return to suction, less flow, poor contact.</summary>
    BypassOrShortCircuit,

    /// <summary>The pressure in the chamber is higher than planned, by its own gauge.</summary>
    PoorVacuum,

    /// <summary>The sweep air that was planned does not flow.</summary>
    SweepAirMissing,

    /// <summary>The vacuum gauge reads a pressure that is not there.</summary>
    VacuumGaugeWrong,

    /// <summary>The thermometer reads a temperature that the oil in the chamber does not have.</summary>
    ThermometerWrong,
}
