using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A coalescer on a side loop: drops join on a bed and settle behind it.</summary>
/// <remarks>
/// Free water falls with k = η Q/V to saturation at the working temperature. An emulsion passes, and detergents and other surfactants disarm the bed
/// (common practice, no source). Thick oil needs warming or a larger bed: use the η of the maker at the viscosity at work.
/// </remarks>
public sealed class Coalescer : ITreatment, IShiftable
{
    /// <summary>Describes a coalescer.</summary>
    /// <param name="loop">The loop.</param>
    /// <param name="removalPerPass">Share of the free water removed in one pass, η, above 0 up to 1.</param>
    /// <param name="elements">Elements fitted, and used up by the task, 0 to 10 000.</param>
    /// <exception cref="ArgumentNullException">The loop is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Coalescer(SideLoop loop, Ratio removalPerPass, int elements)
    {
        Loop = Guard.NotNull(loop);
        Guard.InRange(removalPerPass.DecimalFractions, 1e-9, 1, "(ratio)", nameof(removalPerPass));
        Elements = (int)Guard.InRange(elements, 0, 10_000, "elements");
        RemovalPerPass = removalPerPass;
    }

    /// <inheritdoc/>
    public string Name => "coalescer";

    /// <inheritdoc/>
    public TreatmentKind? Kind => TreatmentKind.Coalescer;

    /// <inheritdoc/>
    public ContaminationForms Reaches => ContaminationForms.FreeWater;

    /// <summary>The loop.</summary>
    public SideLoop Loop { get; }

    /// <summary>Share of the free water removed in one pass, η.</summary>
    public Ratio RemovalPerPass { get; }

    /// <summary>Elements fitted, and used up by the task.</summary>
    public int Elements { get; }

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job)
    {
        var share = RemovalPerPass.DecimalFractions;
        var course = new LoopCourse(Guard.NotNull(job), Loop, (_, _) => new LoopCourse.Removal(Drops: share)).Run(
            noWater: job.Oil.HasDetergents ? WhyNot.DetergentsInOil : null,
            noParticles: WhyNot.NotTouched
        );
        return new TreatmentAssessment(
            this,
            course.Water,
            course.Particles,
            course.Floor,
            course.Heat,
            course.Electricity,
            WaterRemoved.By(job, course.Water, course.OilKilograms),
            course.Water.Time is null ? 0 : Elements,
            cautions: CautionsOf.Treatment(TreatmentKind.Coalescer, course.Conditions),
            flags: course.Flags
        );
    }

    ITreatment IShiftable.Shifted(InputShift shift) =>
        new Coalescer(Loop.Shifted(shift), shift.Removal(RemovalPerPass), Elements);

    /// <summary>The treatment with its equipment, in a few words.</summary>
    /// <returns>For example <c>coalescer, 60 % a pass, 40 L/min</c>.</returns>
    public override string ToString() => $"{Name}, {PlainText.Number(RemovalPerPass.Percent)} % a pass, {Loop}";
}
