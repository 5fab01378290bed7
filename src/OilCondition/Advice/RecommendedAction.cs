namespace OilCondition;

/// <summary>What to do.</summary>
public enum RecommendedAction
{
    /// <summary>Let the treatment that is under way go on until its target holds.</summary>
    ContinueTreatment,

    /// <summary>End the treatment, prove the result by titration and take a sample for the return of the water.</summary>
    ProveCleanup,

    /// <summary>Find out why the treatment levels off above its target.</summary>
    FindCauseOfStall,

    /// <summary>Find where the water comes in and stop it.</summary>
    FindWaterIngress,

    /// <summary>Drain free water from the lowest point at standstill.</summary>
    DrainFreeWater,

    /// <summary>Remove dissolved and remaining free water by vacuum dehydration.</summary>
    VacuumDehydrate,

    /// <summary>Remove particles by fine filtration in a kidney loop.</summary>
    FilterInKidneyLoop,

    /// <summary>Find where the dirt comes in.</summary>
    FindDirtIngress,

    /// <summary>Remove varnish and look for deposits.</summary>
    RemoveVarnish,

    /// <summary>Find out whether it is the right oil, a mixture or diluted.</summary>
    CheckOilIdentity,

    /// <summary>Find the part that wears.</summary>
    FindWear,

    /// <summary>Plan the oil change.</summary>
    PlanOilChange,

    /// <summary>Take the sample again before acting on it.</summary>
    SampleAgain,

    /// <summary>Find the cause together with the oil's supplier and the machine's maker.</summary>
    InvestigateCause,
}
