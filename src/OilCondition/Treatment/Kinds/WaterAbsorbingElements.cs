using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Elements that swell with free and emulsified water, on a side loop.</summary>
/// <remarks>
/// Water above saturation falls with k = η Q/V, as long as full elements are changed in time. Elements = water removed / capacity of one, rounded up: the
/// capacity is the maker's at the viscosity and flow at work, usually far below that of a test bench. Some media take a little dissolved water as well;
/// it is not counted on.
/// </remarks>
public sealed class WaterAbsorbingElements : ITreatment
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
    public string Name => "water-absorbing elements";

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
        var loop = new LoopAtWork(Guard.NotNull(job), Loop);
        var fall = new FreeWaterFall(job, loop.Temperature);
        var rate = RemovalPerPass.DecimalFractions * loop.TurnoversPerHour;
        var untouched = Parts.UntouchedWater(job);
        var water =
            untouched.IsMet ? untouched
            : loop.Obstacle is { } obstacle ? new TargetForecast(obstacle)
            : fall.At(rate, rate, loop.HeatUpHours);
        var removed = Parts.WaterRemoved(job, water, loop.OilKilograms);
        return new TreatmentAssessment(
            this,
            water,
            Parts.UntouchedParticles(job),
            fall.Floor(reachesEmulsion: true),
            water.Time,
            loop.HeatFor(water.Time.TotalHours),
            loop.ElectricityFor(water.Time.TotalHours),
            removed,
            (int)Math.Min(1e9, Math.Ceiling(removed.Liters / CapacityOfElement.Liters)),
            cautions: CautionsOf.Loop
        );
    }
}
