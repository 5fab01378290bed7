using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>When the parts of a task's target are reached by a train, and hold until it ends.</summary>
internal static class TrainOutcome
{
    private const ContaminationForms AnyWater =
        ContaminationForms.FreeWater | ContaminationForms.EmulsifiedWater | ContaminationForms.DissolvedWater;

    /// <summary>How exactly a stage ends at its target: as exactly as a case of a band is integrated, with room.</summary>
    private const double Rounding = 10 * PurificationPlan.RoughTolerance;

    public static bool ReachesWater(ITreatment? treatment) =>
        ((treatment?.Reaches ?? ContaminationForms.None) & AnyWater) != ContaminationForms.None;

    public static bool ReachesParticles(ITreatment? treatment) =>
        ((treatment?.Reaches ?? ContaminationForms.None) & ContaminationForms.Particles) != ContaminationForms.None;

    public static TargetPart Water(TreatmentJob job, TreatmentTrain train, IReadOnlyList<TreatmentTrain.Step> steps) =>
        job.Target.Water is not { } target
            ? TargetPart.NotAsked
            : Part(
                job,
                train,
                steps,
                new TreatmentTarget(water: target),
                contamination => contamination.Water.PartsPerMillion <= target.PartsPerMillion * (1 + Rounding),
                ReachesWater,
                row => (row.WaterPart.Time, row.WhyNotWater)
            );

    public static TargetPart Particles(
        TreatmentJob job,
        TreatmentTrain train,
        IReadOnlyList<TreatmentTrain.Step> steps
    ) =>
        job.Target.Code is not { } code
            ? TargetPart.NotAsked
            : Part(
                job,
                train,
                steps,
                new TreatmentTarget(code: code),
                contamination => new CodeLimits(code).Excess(contamination.Particles) <= Rounding,
                ReachesParticles,
                row => (row.ParticlePart.Time, row.WhyNotParticles)
            );

    private static TargetPart Part(
        TreatmentJob job,
        TreatmentTrain train,
        IReadOnlyList<TreatmentTrain.Step> steps,
        TreatmentTarget target,
        Func<Contamination, bool> isMet,
        Func<ITreatment?, bool> reaches,
        Func<TreatmentAssessment, (TimeSpan? Time, WhyNot? WhyNot)> of
    )
    {
        var first = steps.Count;
        while (first > 0 && isMet(steps[first - 1].End))
        {
            first--;
        }

        var elapsed = TimeSpan.FromTicks(steps.Take(first).Sum(step => step.Time.Ticks));
        if (first == steps.Count)
        {
            return Unmet(job, train, steps, target, reaches, of);
        }

        var step = steps[first];
        if (isMet(step.Start.Contamination))
        {
            return first == 0 ? TargetPart.Already : TargetPart.After(elapsed);
        }

        var within = of(step.Stage.Treatment!.Assess(step.Start.With(target: target))).Time ?? step.Time;
        return TargetPart.After(elapsed + (within < step.Time ? within : step.Time));
    }

    private static TargetPart Unmet(
        TreatmentJob job,
        TreatmentTrain train,
        IReadOnlyList<TreatmentTrain.Step> steps,
        TreatmentTarget target,
        Func<ITreatment?, bool> reaches,
        Func<TreatmentAssessment, (TimeSpan? Time, WhyNot? WhyNot)> of
    )
    {
        var last = steps[steps.Count - 1];

        // A stage that stopped the train before the stage that would have reached this part.
        if (
            last.WhyNot is { } stopped
            && (train.Stages.Skip(steps.Count).Any(stage => reaches(stage.Treatment)) || reaches(last.Stage.Treatment))
        )
        {
            return TargetPart.Not(stopped, job);
        }

        var acted = steps.LastOrDefault(step => reaches(step.Stage.Treatment));
        if (acted is null)
        {
            return TargetPart.Not(WhyNot.NotTouched, job);
        }

        // Given more time it may get there: then the time of the stage was too short.
        var reason = of(acted.Stage.Treatment!.Assess(acted.Start.With(target: target))).WhyNot;
        return reason is { } why && why != WhyNot.TakesTooLong
            ? TargetPart.Not(why, job)
            : TargetPart.TooLong(TimeSpan.FromTicks(steps.Sum(step => step.Time.Ticks)));
    }
}
