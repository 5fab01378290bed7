namespace OilCondition.Treatment;

/// <summary>Conditions of a work on oil, as far as they are known; null where one is not.</summary>
internal readonly record struct WorkConditions(
    double? HottestCelsius = null,
    double? ChamberPascal = null,
    bool? IsHeated = null,
    bool? HasFreeWater = null,
    bool? HasDetergents = null
)
{
    /// <summary>Those of a task that is worked on at a temperature.</summary>
    public static WorkConditions Of(
        TreatmentJob job,
        double hottestCelsius,
        bool isHeated = false,
        double? chamberPascal = null
    ) =>
        new(
            Math.Max(hottestCelsius, job.Reservoir.Start.DegreesCelsius),
            chamberPascal,
            isHeated,
            job.WaterAt(job.Reservoir.Start).HasFreeWater,
            job.Oil.HasDetergents
        );
}
