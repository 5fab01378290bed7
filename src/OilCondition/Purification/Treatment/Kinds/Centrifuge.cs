using OilCondition.Guards;
using UnitsNet;

namespace OilCondition.Purification;

/// <summary>A centrifuge on a side loop.</summary>
/// <remarks>
/// Per pass η = min(1, v Σ/Q) for drops that sink at v under gravity (Stokes): Σ is the area of a still basin that would separate as well, which the
/// maker states or which follows from bowl and speed (sigma theory after Ambler, from memory). Half of v Σ/Q where the maker's Σ is for a 50 % cut.
/// Fine drops of an emulsion are reached in part, by their own v. Floor: saturation at the working temperature. Warm oil is thinner and gives up drops
/// faster, and holds more water dissolved, which falls out again when it cools. Heavy particles go along; they are not counted on.
/// </remarks>
public sealed class Centrifuge : ITreatment
{
    /// <summary>Describes a centrifuge.</summary>
    /// <param name="loop">The loop.</param>
    /// <param name="equivalentArea">Equivalent settling area Σ, 0.1 m² to 10⁷ m².</param>
    /// <param name="dropletDiameter">Diameter of free drops, 0.01 to 5000 µm.</param>
    /// <param name="emulsionDiameter">Diameter of emulsified drops, 0.01 to 5000 µm.</param>
    /// <exception cref="ArgumentNullException">The loop is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Centrifuge(SideLoop loop, Area equivalentArea, Length dropletDiameter, Length emulsionDiameter)
    {
        Loop = Guard.NotNull(loop, nameof(loop));
        Guard.InRange(equivalentArea.SquareMeters, 0.1, 1e7, "m²", nameof(equivalentArea));
        Guard.InRange(dropletDiameter.Micrometers, 0.01, 5000, "µm", nameof(dropletDiameter));
        Guard.InRange(emulsionDiameter.Micrometers, 0.01, 5000, "µm", nameof(emulsionDiameter));
        EquivalentArea = equivalentArea;
        DropletDiameter = dropletDiameter;
        EmulsionDiameter = emulsionDiameter;
    }

    /// <inheritdoc/>
    public string Name => "centrifuge";

    /// <inheritdoc/>
    public ContaminationForms Reaches => ContaminationForms.FreeWater | ContaminationForms.EmulsifiedWater;

    /// <summary>The loop.</summary>
    public SideLoop Loop { get; }

    /// <summary>Equivalent settling area Σ.</summary>
    public Area EquivalentArea { get; }

    /// <summary>Diameter of free drops.</summary>
    public Length DropletDiameter { get; }

    /// <summary>Diameter of emulsified drops.</summary>
    public Length EmulsionDiameter { get; }

    /// <summary>Removal per pass of drops of a size, min(1, v Σ/Q).</summary>
    /// <param name="job">The task.</param>
    /// <param name="dropletDiameter">Diameter, 0.01 to 5000 µm.</param>
    /// <returns>The removal at the working temperature; 0 where the oil is not lighter than water.</returns>
    /// <exception cref="ArgumentNullException">The task is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The diameter lies outside its range.</exception>
    public Ratio RemovalPerPass(TreatmentJob job, Length dropletDiameter) =>
        RemovalPerPass(job, new LoopAtWork(Guard.NotNull(job, nameof(job)), Loop), dropletDiameter);

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job)
    {
        var loop = new LoopAtWork(Guard.NotNull(job, nameof(job)), Loop);
        var fall = new FreeWaterFall(job, loop.Temperature);
        var drops = RemovalPerPass(job, loop, DropletDiameter).DecimalFractions;
        var emulsion = RemovalPerPass(job, loop, EmulsionDiameter).DecimalFractions;
        var untouched = Parts.UntouchedWater(job);
        var water =
            untouched.IsMet ? untouched
            : loop.Obstacle is { } obstacle ? new TargetForecast(obstacle)
            : drops <= 0 ? new TargetForecast(TreatmentOutcome.OilNotLighterThanWater)
            : fall.At(drops * loop.TurnoversPerHour, emulsion * loop.TurnoversPerHour, loop.HeatUpHours);
        return new TreatmentAssessment(
            this,
            water,
            Parts.UntouchedParticles(job),
            fall.Floor(reachesEmulsion: true),
            water.Time,
            loop.HeatFor(water.Time.Hours),
            loop.ElectricityFor(water.Time.Hours),
            Parts.WaterRemoved(job, water, loop.OilKilograms),
            cautions: CautionsOf.Heating
        );
    }

    private Ratio RemovalPerPass(TreatmentJob job, LoopAtWork loop, Length dropletDiameter)
    {
        var velocity = DropletSettling.In(job.Oil, loop.Temperature, dropletDiameter).Velocity.MetersPerHour;
        return Ratio.FromDecimalFractions(
            Math.Min(1, velocity * EquivalentArea.SquareMeters / loop.FlowCubicMetrePerHour)
        );
    }
}
