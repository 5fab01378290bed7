namespace OilCondition.Treatment;

/// <summary>Whether a treatment reaches a target, and if not, why.</summary>
public enum TreatmentOutcome
{
    /// <summary>The target asks nothing of this kind.</summary>
    NotAsked,

    /// <summary>It is so from the start.</summary>
    AlreadyThere,

    /// <summary>After the stated time.</summary>
    Reached,

    /// <summary>Later than the plan looks ahead.</summary>
    BeyondHorizon,

    /// <summary>Never: what comes in holds the level at or above the target.</summary>
    IngressAboveTarget,

    /// <summary>Never: the floor that physics sets lies at or above the target.</summary>
    FloorAboveTarget,

    /// <summary>Never: emulsified water, which this treatment does not reach, stays above the target.</summary>
    EmulsionAboveTarget,

    /// <summary>Never: nothing evaporates; the oil is too cold or the vacuum too shallow, and no dry air carries vapour away.</summary>
    NothingEvaporates,

    /// <summary>Never: the treatment does not touch this form of contamination.</summary>
    NotReachedByTreatment,

    /// <summary>Detergents in the oil hold the drops: a coalescer does not work.</summary>
    DetergentsHoldDrops,

    /// <summary>The water does not sink: the oil is as dense as water, or denser.</summary>
    OilNotLighterThanWater,

    /// <summary>Not reckoned: how fast particles sink depends on their density, which was not stated.</summary>
    ParticleDensityNotStated,

    /// <summary>The particles do not sink: the oil is as dense as they are, or denser.</summary>
    ParticlesDoNotSink,

    /// <summary>The pump cannot be started at the start temperature.</summary>
    PumpCannotStart,

    /// <summary>The heater cannot bring the oil to the working temperature.</summary>
    HeaterTooWeak,

    /// <summary>The working temperature lies above what oil or seals bear.</summary>
    TooHotForOilOrSeals,
}
