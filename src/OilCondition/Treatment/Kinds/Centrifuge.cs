using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A centrifuge on a side loop.</summary>
/// <remarks>
/// Per pass η = min(1, v Σ/Q) for drops that sink at v under gravity (Stokes): Σ is the area of a still basin that would separate as well, which the
/// maker states or which follows from bowl and speed (sigma theory after Ambler, from memory). Half of v Σ/Q where the maker's Σ is for a 50 % cut.
/// Fine drops of an emulsion are reached in part, by their own v. Floor: saturation at the working temperature. Warm oil is thinner and gives up drops
/// faster, and holds more water dissolved, which falls out again when it cools. Particles go along where their density is stated, by their own v at 4, 6 and
/// 14 µm(c); without it nothing is said about the code. Quartz and dust 2650 kg/m³, iron 7870 kg/m³ (handbook values, from memory); soot, varnish and fibres hardly sink.
/// </remarks>
public sealed class Centrifuge : ITreatment
{
    /// <summary>Describes a centrifuge.</summary>
    /// <param name="loop">The loop.</param>
    /// <param name="equivalentArea">Equivalent settling area Σ, 0.1 m² to 10⁷ m².</param>
    /// <param name="dropletDiameter">Diameter of free drops, 0.01 to 5000 µm.</param>
    /// <param name="emulsionDiameter">Diameter of emulsified drops, 0.01 to 5000 µm.</param>
    /// <param name="particleDensity">Density of the particles, 500 to 25 000 kg/m³; null where it is not known.</param>
    /// <exception cref="ArgumentNullException">The loop is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public Centrifuge(
        SideLoop loop,
        Area equivalentArea,
        Length dropletDiameter,
        Length emulsionDiameter,
        Density? particleDensity = null
    )
    {
        Loop = Guard.NotNull(loop);
        Guard.InRange(equivalentArea.SquareMeters, 0.1, 1e7, "m²", nameof(equivalentArea));
        Guard.InRange(dropletDiameter.Micrometers, 0.01, 5000, "µm", nameof(dropletDiameter));
        Guard.InRange(emulsionDiameter.Micrometers, 0.01, 5000, "µm", nameof(emulsionDiameter));
        ParticleDensity = ParticleSettling.Checked(particleDensity, nameof(particleDensity));
        EquivalentArea = equivalentArea;
        DropletDiameter = dropletDiameter;
        EmulsionDiameter = emulsionDiameter;
    }

    /// <inheritdoc/>
    public string Name => "centrifuge";

    /// <inheritdoc/>
    public TreatmentKind? Kind => TreatmentKind.Centrifuge;

    /// <inheritdoc/>
    public ContaminationForms Reaches =>
        ContaminationForms.FreeWater
        | ContaminationForms.EmulsifiedWater
        | (ParticleDensity.HasValue ? ContaminationForms.Particles : ContaminationForms.None);

    /// <summary>The loop.</summary>
    public SideLoop Loop { get; }

    /// <summary>Equivalent settling area Σ.</summary>
    public Area EquivalentArea { get; }

    /// <summary>Diameter of free drops.</summary>
    public Length DropletDiameter { get; }

    /// <summary>Diameter of emulsified drops.</summary>
    public Length EmulsionDiameter { get; }

    /// <summary>Density of the particles; null where it is not known.</summary>
    public Density? ParticleDensity { get; }

    /// <summary>Removal per pass of drops of a size, min(1, v Σ/Q).</summary>
    /// <param name="job">The task.</param>
    /// <param name="dropletDiameter">Diameter, 0.01 to 5000 µm.</param>
    /// <returns>The removal at the working temperature; 0 where the oil is not lighter than water.</returns>
    /// <exception cref="ArgumentNullException">The task is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The diameter lies outside its range.</exception>
    public Ratio RemovalPerPass(TreatmentJob job, Length dropletDiameter) =>
        RemovalPerPass(job, new LoopAtWork(Guard.NotNull(job), Loop), dropletDiameter);

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job)
    {
        var loop = new LoopAtWork(Guard.NotNull(job), Loop);
        var fall = new FreeWaterFall(job, loop.Temperature);
        var drops = RemovalPerPass(job, loop, DropletDiameter).DecimalFractions;
        var emulsion = RemovalPerPass(job, loop, EmulsionDiameter).DecimalFractions;
        var untouched = TargetPart.UntouchedWater(job);
        var water =
            untouched.IsMet ? untouched
            : loop.Obstacle is { } obstacle ? TargetPart.Not(obstacle, job)
            : drops <= 0 ? TargetPart.Not(WhyNot.WaterDoesNotSink, job)
            : fall.At(drops * loop.TurnoversPerHour, emulsion * loop.TurnoversPerHour, loop.HeatUpHours);
        var clean = TargetPart.UntouchedParticles(job);
        var particles =
            clean.IsMet ? clean
            : ParticleDensity is not { } density ? ParticleSettling.OfUnknownDensity(job)
            : loop.Obstacle is { } stop ? TargetPart.Not(stop, job)
            : new ParticleSettling(job.Oil, loop.Temperature, density).Spun(job, loop, EquivalentArea.SquareMeters);
        var time = TargetPart.RunTime(water, particles);
        return new TreatmentAssessment(
            this,
            water,
            particles,
            fall.Floor(reachesEmulsion: true),
            loop.HeatFor(time),
            loop.ElectricityFor(time),
            WaterRemoved.By(job, water, loop.OilKilograms)
        );
    }

    /// <summary>The treatment with its equipment, in a few words.</summary>
    /// <returns>For example <c>centrifuge, Σ 3000 m², 40 L/min at 50 °C, heater 12 kW</c>.</returns>
    public override string ToString() => $"{Name}, Σ {PlainText.Number(EquivalentArea.SquareMeters)} m², {Loop}";

    private Ratio RemovalPerPass(TreatmentJob job, LoopAtWork loop, Length dropletDiameter)
    {
        var velocity = DropletSettling.In(job.Oil, loop.Temperature, dropletDiameter).Velocity.MetersPerHour;
        return Ratio.FromDecimalFractions(
            Math.Min(1, velocity * EquivalentArea.SquareMeters / loop.FlowCubicMetrePerHour)
        );
    }
}
