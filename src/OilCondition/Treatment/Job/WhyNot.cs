namespace OilCondition.Treatment;

/// <summary>Why a treatment does not bring a part of the target about, beside the answer when it does (<see cref="Arrival{T}"/>).</summary>
public enum WhyNot
{
    /// <summary>It would get there, but later than the task looks ahead.</summary>
    TakesTooLong,

    /// <summary>The lowest level that physics allows lies at or above the target.</summary>
    FloorAboveTarget,

    /// <summary>What comes in holds the level at or above the target.</summary>
    IngressTooHigh,

    /// <summary>Emulsified water, which this treatment does not reach, stays above the target.</summary>
    EmulsionStays,

    /// <summary>Nothing evaporates: the oil is too cold or the vacuum too shallow, and no dry air carries vapour away.</summary>
    NothingEvaporates,

    /// <summary>The treatment does not act on this form of contamination.</summary>
    NotTouched,

    /// <summary>Detergents in the oil hold the drops: a coalescer does not work.</summary>
    DetergentsInOil,

    /// <summary>The water does not sink: the oil is as dense as water, or denser.</summary>
    WaterDoesNotSink,

    /// <summary>The particles do not sink: the oil is as dense as they are, or denser.</summary>
    ParticlesTooLight,

    /// <summary>It cannot be told: how fast particles sink depends on their density, which was not stated.</summary>
    DensityNotStated,

    /// <summary>The oil is too thick at the start: the pump cannot be started.</summary>
    PumpCannotStart,

    /// <summary>The heater cannot bring the oil to the working temperature.</summary>
    HeaterTooWeak,

    /// <summary>The working temperature lies above what oil or seals bear, or above the boiling point of water in an open tank.</summary>
    TooHot,

    /// <summary>The oil is at or below its pour point: it does not flow to the pump, and drops do not sink in it.</summary>
    BelowPourPoint,

    /// <summary>The oil would be heated to less than 30 K below its flash point.</summary>
    NearFlashPoint,

    /// <summary>The oil cools below 0 °C before it is done: free water freezes, and ice neither sinks nor drains.</summary>
    WaterFreezes,
}
