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
public sealed class Centrifuge : ITreatment, IShiftable
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
    /// <returns>The removal once the loop is as warm as it gets; 0 where the oil is not lighter than water.</returns>
    /// <exception cref="ArgumentNullException">The task is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The diameter lies outside its range.</exception>
    public Ratio RemovalPerPass(TreatmentJob job, Length dropletDiameter) =>
        RemovalPerPass(Guard.NotNull(job).Oil, new LoopCourse(job, Loop, (_, _) => default), dropletDiameter);

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job)
    {
        var oil = Guard.NotNull(job).Oil;
        var course = new LoopCourse(job, Loop, (celsius, flow) => Removal(oil, celsius, flow));
        course.Run(
            noWater: course.End.Drops <= 0 ? WhyNot.WaterDoesNotSink : null,
            noParticles: ParticleDensity is null ? WhyNot.DensityNotStated
                : course.End.At4 <= 0 ? WhyNot.ParticlesTooLight
                : null
        );
        return new TreatmentAssessment(
            this,
            course.Water,
            course.Particles,
            course.Floor,
            course.Heat,
            course.Electricity,
            WaterRemoved.By(job, course.Water, course.OilKilograms),
            cautions: CautionsOf.Treatment(TreatmentKind.Centrifuge, course.Conditions),
            flags: course.Flags
        );
    }

    ITreatment IShiftable.Shifted(InputShift shift) =>
        new Centrifuge(
            Loop.Shifted(shift),
            EquivalentArea,
            Droplet.Shifted(DropletDiameter, shift),
            Droplet.Shifted(EmulsionDiameter, shift),
            ParticleDensity
        );

    /// <summary>The treatment with its equipment, in a few words.</summary>
    /// <returns>For example <c>centrifuge, Σ 3000 m², 40 L/min at 50 °C, heater 12 kW</c>.</returns>
    public override string ToString() => $"{Name}, Σ {PlainText.Number(EquivalentArea.SquareMeters)} m², {Loop}";

    /// <summary>Shares removed in a pass at a temperature and a flow in m³/s: η = min(1, v Σ/Q) for each size.</summary>
    private LoopCourse.Removal Removal(TreatedOil oil, double celsius, double flow)
    {
        var temperature = Temperature.FromDegreesCelsius(celsius);
        double Share(double metrePerSecond) =>
            Math.Min(1, Math.Max(0, metrePerSecond) * EquivalentArea.SquareMeters / flow);
        double Drop(Length diameter) => Share(DropletSettling.In(oil, temperature, diameter).Velocity.MetersPerSecond);
        double Particle(double micrometres) =>
            ParticleDensity is { } density
                ? Share(
                    DropletSettling.Stokes(oil, temperature, 1e-6 * micrometres, density.KilogramsPerCubicMeter, out _)
                )
                : 0;
        return new LoopCourse.Removal(
            Drop(DropletDiameter),
            Drop(EmulsionDiameter),
            Particle(4),
            Particle(6),
            Particle(14)
        );
    }

    private Ratio RemovalPerPass(TreatedOil oil, LoopCourse course, Length dropletDiameter)
    {
        var velocity = DropletSettling.In(oil, course.Temperature, dropletDiameter).Velocity.MetersPerSecond;
        return Ratio.FromDecimalFractions(Math.Min(1, velocity * EquivalentArea.SquareMeters / course.EndFlow));
    }
}
