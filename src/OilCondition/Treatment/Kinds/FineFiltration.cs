using OilCondition.Text;

namespace OilCondition.Treatment;

/// <summary>Fine filtration in a kidney loop: particles only.</summary>
/// <remarks>
/// N(t) = N∞ + (N₀ − N∞) exp(−Q (1 − 1/β) t/V), size by size; <see cref="Cleanliness.KidneyLoop"/>. Use ratios as in service. How much dirt an element
/// holds cannot be told from counts: the elements fitted are taken as one set for the task.
/// </remarks>
public sealed class FineFiltration : ITreatment, IShiftable
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
    public TreatmentKind? Kind => TreatmentKind.FineFiltration;

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
        var removal = new LoopCourse.Removal(
            At4: Filter.At4.Efficiency.DecimalFractions,
            At6: Filter.At6.Efficiency.DecimalFractions,
            At14: Filter.At14.Efficiency.DecimalFractions
        );
        var course = new LoopCourse(Guard.NotNull(job), Loop, (_, _) => removal).Run(noWater: WhyNot.NotTouched);
        return new TreatmentAssessment(
            this,
            course.Water,
            course.Particles,
            job.Contamination.Water,
            course.Heat,
            course.Electricity,
            elements: course.Particles.Time is null ? 0 : Elements,
            cautions: CautionsOf.Treatment(TreatmentKind.FineFiltration, course.Conditions),
            flags: course.Flags
        );
    }

    ITreatment IShiftable.Shifted(InputShift shift) => new FineFiltration(Loop.Shifted(shift), Filter, Elements);

    /// <summary>The treatment with its equipment, in a few words.</summary>
    /// <returns>For example <c>fine filtration, β 75/200/1000, 40 L/min</c>.</returns>
    public override string ToString() => $"{Name}, {Filter}, {Loop}";
}
