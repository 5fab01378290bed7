using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Let free water settle in still oil, and drain it.</summary>
/// <remarks>
/// Drops of one size sink through the height at Stokes' velocity: what is free falls as D (1 − s/h), s = ∫ v dt. The oil stands in its tank and cools towards its
/// surroundings, T_inf + (T_0 − T_inf) exp(−t U/C): it thickens, and what it can no longer hold dissolved falls out as fine drops that sink far slower. Heat of
/// the running machine or of a tank heater is that of the reservoir. Dissolved and emulsified water stay: the floor is saturation at the temperature at
/// which it ends. Detergents hold the drops up. Below 0 °C free water freezes, and ice is not drained.
/// The drop size decides with its square, and nobody knows it: common practice, no source, 50 to 200 µm for water that separates visibly.
/// Particles settle along where their density is stated, N₀ (1 − s/h) size by size; without it nothing is said about the code. Quartz and dust 2650 kg/m³, iron
/// 7870 kg/m³ (handbook values, from memory); soot, varnish and fibres hardly sink. Oil in motion, vents and heaters keep drops up: the oil must stand.
/// Water that comes in meanwhile dissolves while there is room, and else sinks from the top like the rest.
/// </remarks>
/// <example><code>new SettlingAndDraining(Length.FromMeters(1.2), Length.FromMicrometers(100)).Assess(job)</code></example>
public sealed class SettlingAndDraining : ITreatment, IShiftable
{
    /// <summary>Describes a settling.</summary>
    /// <param name="height">Height of oil above the drain, 1 mm to 100 m.</param>
    /// <param name="dropletDiameter">Diameter of the drops, 0.01 to 5000 µm.</param>
    /// <param name="temperature">Temperature of the oil when it begins to stand, 0 to 150 °C; null for that of the reservoir at the start.</param>
    /// <param name="particleDensity">Density of the particles, 500 to 25 000 kg/m³; null where it is not known.</param>
    /// <param name="fineDropletDiameter">Diameter of drops that fall out as the oil cools, 0.01 to 5000 µm; null for 10 µm (ours: a haze that one sees).</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public SettlingAndDraining(
        Length height,
        Length dropletDiameter,
        Temperature? temperature = null,
        Density? particleDensity = null,
        Length? fineDropletDiameter = null
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
        FineDropletDiameter = fineDropletDiameter ?? Length.FromMicrometers(10);
        Guard.InRange(FineDropletDiameter.Micrometers, 0.01, 5000, "µm", nameof(fineDropletDiameter));
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

    /// <summary>Diameter of drops that fall out as the oil cools.</summary>
    public Length FineDropletDiameter { get; }

    /// <summary>Temperature of the oil when it begins to stand; null for that of the reservoir at the start.</summary>
    public Temperature? Temperature { get; }

    /// <summary>Density of the particles; null where it is not known.</summary>
    public Density? ParticleDensity { get; }

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job)
    {
        var standing = new StandingOil(Guard.NotNull(job), Temperature ?? job.Reservoir.Start);
        var height = Height.Meters;
        var course = new SettlingWater(
            job,
            standing,
            height,
            standing.DropDepths(DropletDiameter),
            standing.DropDepths(FineDropletDiameter)
        );
        var floor = Floor(job, standing, course);
        var water = Water(job, standing, course, floor);
        var floorReached = water.Time is null ? floor : Math.Min(floor, job.Target.Water!.Value.DecimalFractions);
        return new TreatmentAssessment(
            this,
            water,
            ParticleSettling.Still(job, standing, ParticleDensity, height),
            MassFraction.FromPartsPerMillion(1e6 * floorReached),
            waterRemoved: WaterRemoved.By(job, water, job.OilMass.Kilograms),
            cautions: CautionsOf.Treatment(
                TreatmentKind.SettlingAndDraining,
                WorkConditions.Of(job, standing.Start.DegreesCelsius)
            ),
            flags: TreatmentDoubtsOf.Job(job, standing.End)
        );
    }

    ITreatment IShiftable.Shifted(InputShift shift) =>
        new SettlingAndDraining(
            Height,
            Droplet.Shifted(DropletDiameter, shift),
            Temperature,
            ParticleDensity,
            Droplet.Shifted(FineDropletDiameter, shift)
        );

    /// <summary>The treatment with its equipment, in a few words.</summary>
    /// <returns>For example <c>settling and draining, drops of 100 µm through 1 m</c>.</returns>
    public override string ToString() =>
        $"{Name}, drops of {PlainText.Number(DropletDiameter.Micrometers)} µm through {PlainText.Number(Height.Meters)} m";

    /// <summary>What stays for ever without ingress: what is dissolved in the end, or at 0 °C where water freezes, and the emulsion.</summary>
    private static double Floor(TreatmentJob job, StandingOil standing, SettlingWater course)
    {
        var coldest = UnitsNet.Temperature.FromDegreesCelsius(Math.Max(0, standing.End.DegreesCelsius));
        return job.WaterAt(coldest).Dissolved.DecimalFractions + course.Emulsion;
    }

    private TargetPart Water(TreatmentJob job, StandingOil standing, SettlingWater course, double floor)
    {
        var untouched = TargetPart.UntouchedWater(job);
        if (untouched.IsMet || job.Target.Water is not { } asked)
        {
            return untouched;
        }

        if (job.Oil.HasDetergents)
        {
            return TargetPart.Not(WhyNot.DetergentsInOil, job);
        }

        var target = asked.DecimalFractions;
        var last = course.Content.Length - 1;
        var liquid = standing.LastAbove(0);
        var flowing = job.Oil.PourPoint is { } pour ? standing.LastAbove(pour.DegreesCelsius) : last;
        if (
            standing.FirstHours([.. course.Content.Select(one => one - target)], Math.Min(liquid, flowing)) is { } hours
        )
        {
            return TargetPart.Within(job, hours);
        }

        var drops = DropletSettling.In(job.Oil, standing.End, DropletDiameter);
        var level =
            drops.Velocity.MetersPerSecond > 0
                ? job.Reservoir.WaterIngress.KilogramsPerSecond
                    / job.OilMass.Kilograms
                    * Height.Meters
                    / drops.Velocity.MetersPerSecond
                : 0;
        return TargetPart.Not(
            floor - course.Emulsion >= target ? WhyNot.FloorAboveTarget
                : floor >= target ? WhyNot.EmulsionStays
                : !drops.Sinks && !DropletSettling.In(job.Oil, standing.Start, DropletDiameter).Sinks
                    ? WhyNot.WaterDoesNotSink
                : liquid < Math.Min(last, flowing) ? WhyNot.WaterFreezes
                : flowing < last ? WhyNot.BelowPourPoint
                : floor + level >= target ? WhyNot.IngressTooHigh
                : WhyNot.TakesTooLong,
            job
        );
    }
}
