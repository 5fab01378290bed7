using OilCondition.Cleanliness;
using OilCondition.Text;

namespace OilCondition.Treatment;

/// <summary>Fine filtration in a kidney loop: particles only.</summary>
/// <remarks>
/// N(t) = N∞ + (N₀ − N∞) exp(−Q (1 − 1/β) t/V), size by size; <see cref="Cleanliness.KidneyLoop"/>. Use ratios as in service. How much dirt an element
/// holds cannot be told from counts: the elements fitted are taken as one set for the task.
/// </remarks>
public sealed class FineFiltration : ITreatment
{
    /// <summary>Describes a filter loop.</summary>
    /// <param name="loop">The loop.</param>
    /// <param name="filter">The filter's ratios.</param>
    /// <param name="elements">Elements fitted, and used up by the task, 0 to 10 000.</param>
    /// <exception cref="ArgumentNullException">Loop or filter is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of elements lies outside its range.</exception>
    public FineFiltration(SideLoop loop, FilterRatings filter, int elements)
    {
        Loop = Guard.NotNull(loop);
        Filter = Guard.NotNull(filter);
        Elements = (int)Guard.InRange(elements, 0, 10_000, "elements");
    }

    /// <inheritdoc/>
    public string Name => "fine filtration";

    /// <inheritdoc/>
    public ContaminationForms Reaches => ContaminationForms.Particles;

    /// <summary>The loop.</summary>
    public SideLoop Loop { get; }

    /// <summary>The filter's ratios.</summary>
    public FilterRatings Filter { get; }

    /// <summary>Elements fitted, and used up by the task.</summary>
    public int Elements { get; }

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job)
    {
        var loop = new LoopAtWork(Guard.NotNull(job), Loop);
        var untouched = Parts.UntouchedParticles(job);
        var particles =
            untouched.IsMet ? untouched
            : loop.Obstacle is { } obstacle ? new TargetForecast(obstacle)
            : Parts.Filtered(job, Filter, loop);
        return new TreatmentAssessment(
            this,
            Parts.UntouchedWater(job),
            particles,
            job.Contamination.Water,
            particles.Time,
            loop.HeatFor(particles.Time.TotalHours),
            loop.ElectricityFor(particles.Time.TotalHours),
            elements: particles.Outcome == TreatmentOutcome.Reached ? Elements : 0,
            cautions: CautionsOf.Loop
        );
    }
}
