using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Let free water settle in still oil, and drain it.</summary>
/// <remarks>
/// Drops of one size sink through the height at Stokes' velocity: what is free falls in a straight line, D (1 − v t/h), to nothing at t = h/v. Dissolved
/// and emulsified water stay: the floor is saturation at the temperature at which the oil stands, and cold oil gives up more. Cold oil is also thicker.
/// The drop size decides with its square, and nobody knows it: common practice, no source, 50 to 200 µm for water that separates visibly.
/// Particles settle along where their density is stated, N₀ (1 − v t/h) size by size; without it nothing is said about the code. Quartz and dust 2650 kg/m³, iron
/// 7870 kg/m³ (handbook values, from memory); soot, varnish and fibres hardly sink. Oil in motion, vents and heaters keep drops up: the oil must stand.
/// Water that comes in meanwhile is taken to sink like the rest.
/// </remarks>
/// <example><code>new SettlingAndDraining(Length.FromMeters(1.2), Length.FromMicrometers(100)).Assess(job)</code></example>
public sealed class SettlingAndDraining : ITreatment
{
    /// <summary>Describes a settling.</summary>
    /// <param name="height">Height of oil above the drain, 1 mm to 100 m.</param>
    /// <param name="dropletDiameter">Diameter of the drops, 0.01 to 5000 µm.</param>
    /// <param name="temperature">Temperature at which the oil stands, 0 to 150 °C; null for that of the surroundings.</param>
    /// <param name="particleDensity">Density of the particles, 500 to 25 000 kg/m³; null where it is not known.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public SettlingAndDraining(
        Length height,
        Length dropletDiameter,
        Temperature? temperature = null,
        Density? particleDensity = null
    )
    {
        Guard.InRange(height.Meters, 1e-3, 100, "m", nameof(height));
        Guard.InRange(dropletDiameter.Micrometers, 0.01, 5000, "µm", nameof(dropletDiameter));
        if (temperature is { } stated)
        {
            Guard.InRange(stated.DegreesCelsius, 0, 150, "°C", nameof(temperature));
        }

        ParticleDensity = ParticleSettling.Checked(particleDensity, nameof(particleDensity));
        Height = height;
        DropletDiameter = dropletDiameter;
        Temperature = temperature;
    }

    /// <inheritdoc/>
    public string Name => "settling and draining";

    /// <inheritdoc/>
    public TreatmentKind? Kind => TreatmentKind.SettlingAndDraining;

    /// <inheritdoc/>
    public ContaminationForms Reaches =>
        ContaminationForms.FreeWater
        | (ParticleDensity.HasValue ? ContaminationForms.Particles : ContaminationForms.None);

    /// <summary>Height of oil above the drain.</summary>
    public Length Height { get; }

    /// <summary>Diameter of the drops.</summary>
    public Length DropletDiameter { get; }

    /// <summary>Temperature at which the oil stands; null for that of the surroundings.</summary>
    public Temperature? Temperature { get; }

    /// <summary>Density of the particles; null where it is not known.</summary>
    public Density? ParticleDensity { get; }

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job)
    {
        var ambient = Guard.NotNull(job).Reservoir.Ambient;
        var temperature = Temperature ?? ambient;
        var settling = DropletSettling.In(job.Oil, temperature, DropletDiameter);
        var fall = new FreeWaterFall(job, temperature);
        var water = Water(job, settling, fall);
        var particles = ParticleDensity is { } density
            ? new ParticleSettling(job.Oil, temperature, density).Still(job, Height.Meters)
            : ParticleSettling.OfUnknownDensity(job);
        return new TreatmentAssessment(
            this,
            water,
            particles,
            fall.Floor(reachesEmulsion: false),
            waterRemoved: WaterRemoved.By(job, water, job.OilMassAt(temperature).Kilograms)
        );
    }

    /// <summary>The treatment with its equipment, in a few words.</summary>
    /// <returns>For example <c>settling and draining, drops of 100 µm through 1 m</c>.</returns>
    public override string ToString() =>
        $"{Name}, drops of {PlainText.Number(DropletDiameter.Micrometers)} µm through {PlainText.Number(Height.Meters)} m";

    private TargetPart Water(TreatmentJob job, DropletSettling settling, FreeWaterFall fall)
    {
        if (fall.Settled(reachesEmulsion: false, levelOfIngress: 0) is { } settled)
        {
            return settled;
        }

        if (!settling.Sinks)
        {
            return TargetPart.Not(WhyNot.WaterDoesNotSink, job);
        }

        var floor = fall.Floor(reachesEmulsion: false);
        var share = (job.Contamination.Water - job.Target.Water!.Value) / (job.Contamination.Water - floor);
        return TargetPart.Within(job, share * Height.Meters / settling.Velocity.MetersPerSecond / 3600);
    }
}
