using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Elements that swell with free and emulsified water, on a side loop.</summary>
/// <remarks>
/// Water above saturation falls with k = η Q/V, as long as full elements are changed in time. Elements = water removed / capacity of one, rounded up: the
/// capacity is the maker's at the viscosity and flow at work, usually far below that of a test bench. Some media take a little dissolved water as well;
/// it is not counted on.
/// </remarks>
public sealed class WaterAbsorbingElements : ITreatment, IShiftable
{
    /// <summary>Describes the elements.</summary>
    /// <param name="loop">The loop.</param>
    /// <param name="removalPerPass">Share of the water above saturation removed in one pass, η, above 0 up to 1.</param>
    /// <param name="capacityOfElement">Water that one element holds, 1 mL to 10 m³.</param>
    /// <exception cref="ArgumentNullException">The loop is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public WaterAbsorbingElements(SideLoop loop, Ratio removalPerPass, Volume capacityOfElement)
    {
        Loop = Guard.NotNull(loop);
        Guard.InRange(removalPerPass.DecimalFractions, 1e-9, 1, "(ratio)", nameof(removalPerPass));
        Guard.InRange(capacityOfElement.Liters, 1e-3, 1e4, "L", nameof(capacityOfElement));
        RemovalPerPass = removalPerPass;
        CapacityOfElement = capacityOfElement;
    }

    /// <inheritdoc/>
    public string Name => "absorbing elements";

    /// <inheritdoc/>
    public TreatmentKind? Kind => TreatmentKind.WaterAbsorbingElements;

    /// <inheritdoc/>
    public ContaminationForms Reaches => ContaminationForms.FreeWater | ContaminationForms.EmulsifiedWater;

    /// <summary>The loop.</summary>
    public SideLoop Loop { get; }

    /// <summary>Share of the water above saturation removed in one pass, η.</summary>
    public Ratio RemovalPerPass { get; }

    /// <summary>Water that one element holds.</summary>
    public Volume CapacityOfElement { get; }

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job)
    {
        var share = RemovalPerPass.DecimalFractions;
        var course = new LoopCourse(
            Guard.NotNull(job),
            Loop,
            (_, _) => new LoopCourse.Removal(Drops: share, Emulsion: share)
        ).Run(noParticles: WhyNot.NotTouched);
        var removed = WaterRemoved.By(job, course.Water, course.OilKilograms);
        return new TreatmentAssessment(
            this,
            course.Water,
            course.Particles,
            course.Floor,
            course.Heat,
            course.Electricity,
            removed,
            (int)Math.Min(1e9, Math.Ceiling(removed.Liters / CapacityOfElement.Liters)),
            cautions: CautionsOf.Treatment(TreatmentKind.WaterAbsorbingElements, course.Conditions),
            flags: course.Flags
        );
    }

    ITreatment IShiftable.Shifted(InputShift shift) =>
        new WaterAbsorbingElements(Loop.Shifted(shift), shift.Removal(RemovalPerPass), CapacityOfElement);

    /// <summary>The treatment with its equipment, in a few words.</summary>
    /// <returns>For example <c>absorbing elements of 0.5 L, 50 % a pass, 40 L/min</c>.</returns>
    public override string ToString() =>
        $"{Name} of {PlainText.Number(CapacityOfElement.Liters)} L, {PlainText.Number(RemovalPerPass.Percent)} % a pass, {Loop}";
}
