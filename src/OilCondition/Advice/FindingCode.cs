namespace OilCondition;

/// <summary>What was found.</summary>
public enum FindingCode
{
    /// <summary>A reading is beyond its alert or alarm figure.</summary>
    LimitPassed,

    /// <summary>A measurand changes faster than its limit allows.</summary>
    RateOfChange,

    /// <summary>A reading lies outside what the machine's own history lets expect.</summary>
    OutOfTheUsual,

    /// <summary>The latest readings are beyond a figure, but not yet as many as the limit asks for.</summary>
    LimitNotConfirmed,

    /// <summary>A measurand changed at once to the worse: to be confirmed after one reading, an alert from the second.</summary>
    SuddenChange,

    /// <summary>Free water at running temperature.</summary>
    FreeWaterRunning,

    /// <summary>Free water once the machine has cooled down, none at running temperature.</summary>
    FreeWaterAtStandstill,

    /// <summary>A limit is likely to be crossed within the planning horizon.</summary>
    RemainingLifeShort,

    /// <summary>A treatment is under way and its readings fall.</summary>
    CleanupUnderWay,

    /// <summary>A treatment is under way and its target is reached.</summary>
    CleanupTargetReached,

    /// <summary>A treatment is under way and levels off above its target.</summary>
    CleanupStalled,

    /// <summary>During a treatment sensor and samples contradict each other by more than their uncertainty.</summary>
    CleanupSourcesDisagree,

    /// <summary>What a finished treatment removed is coming back.</summary>
    CleanupRebounding,

    /// <summary>Several measurands change their level at once where no event is recorded: an oil change or a large top-up?</summary>
    UnrecordedChange,

    /// <summary>No sample for longer than the sampling plan allows.</summary>
    SampleOverdue,

    /// <summary>No sample at all, and no sensor: nobody knows this oil.</summary>
    NeverSampled,

    /// <summary>A sample seems to belong to another oil.</summary>
    SuspectSample,

    /// <summary>Records contradict each other or are not plausible.</summary>
    RecordFault,
}
