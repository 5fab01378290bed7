namespace OilCondition.Cleanup;

/// <summary>What can lie behind a difference between condensate and balance.</summary>
internal enum CondensateReason
{
    /// <summary>Vapour left with the exhaust of the vacuum pump instead of condensing.</summary>
    VapourWithExhaust,

    /// <summary>Water was drained elsewhere, or is still in separator and hoses.</summary>
    DrainedElsewhere,

    /// <summary>Less water was in the oil before the run than the sample said.</summary>
    LessWaterBefore,

    /// <summary>Water came in during the run and is not counted, or is counted too low.</summary>
    WaterCameIn,

    /// <summary>Water lay at the bottom or in dead legs, where no sample saw it.</summary>
    StandingWater,

    /// <summary>Moisture of the sweep air condensed as well.</summary>
    HumidSweepAir,
}
