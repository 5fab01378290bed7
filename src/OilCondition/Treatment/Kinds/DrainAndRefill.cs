using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Drain the oil and fill new, once or more, with the heel that stays.</summary>
/// <remarks>
/// x_n = x_new + h^n (x_old − x_new).   h: share of the oil that cannot be drained; n: changes. New oil is not dry and seldom clean: its own water and
/// particles are the floor. The heel is taken to be like the rest; at the bottom it is worse, so drain warm and from the lowest point.
/// What comes in during the work stays in the oil and is counted, at the ingress of the reservoir. What comes in afterwards is not: no change lasts against a
/// leak, find it first.
/// </remarks>
public sealed class DrainAndRefill : ITreatment
{
    private const int MostChanges = 100;

    /// <summary>Describes an oil change.</summary>
    /// <param name="heel">Share of the oil that stays, 0 to 0.99.</param>
    /// <param name="newWater">Water in the new oil, 0 to 500 000 mg/kg.</param>
    /// <param name="newParticles">Particles in the new oil as it is filled.</param>
    /// <param name="transferFlow">Flow of draining and of filling, above 0.</param>
    /// <param name="motorPower">Electrical power of the transfer pump, 0 to 100 MW.</param>
    /// <exception cref="ArgumentNullException">The particles are null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public DrainAndRefill(
        Ratio heel,
        MassFraction newWater,
        ParticleLevels newParticles,
        VolumeFlow transferFlow,
        Power motorPower = default
    )
    {
        Guard.InRange(heel.DecimalFractions, 0, 0.99, "(ratio)", nameof(heel));
        PhysicalRange.Water(newWater);
        NewParticles = Guard.NotNull(newParticles);
        Guard.InRange(transferFlow.LitersPerMinute, 1e-6, 1e6, "L/min", nameof(transferFlow));
        Guard.InRange((double)motorPower.Watts, 0, 1e8, "W", nameof(motorPower));
        Heel = heel;
        NewWater = newWater;
        TransferFlow = transferFlow;
        MotorPower = motorPower;
    }

    /// <inheritdoc/>
    public string Name => "drain and refill";

    /// <inheritdoc/>
    public TreatmentKind? Kind => TreatmentKind.DrainAndRefill;

    /// <inheritdoc/>
    public ContaminationForms Reaches =>
        ContaminationForms.FreeWater
        | ContaminationForms.EmulsifiedWater
        | ContaminationForms.DissolvedWater
        | ContaminationForms.Particles;

    /// <summary>Share of the oil that stays.</summary>
    public Ratio Heel { get; }

    /// <summary>Water in the new oil.</summary>
    public MassFraction NewWater { get; }

    /// <summary>Particles in the new oil as it is filled.</summary>
    public ParticleLevels NewParticles { get; }

    /// <summary>Flow of draining and of filling.</summary>
    public VolumeFlow TransferFlow { get; }

    /// <summary>Electrical power of the transfer pump.</summary>
    public Power MotorPower { get; }

    /// <summary>What a number of changes leaves of a content, x_new + h^n (x_old − x_new).</summary>
    /// <param name="before">Content of the old oil, 0 or more, any unit.</param>
    /// <param name="ofNewOil">Content of the new oil, 0 or more, in the same unit.</param>
    /// <param name="changes">Number of changes, 0 to 100.</param>
    /// <returns>The content, in the same unit.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public double After(double before, double ofNewOil, int changes)
    {
        Guard.NotNegative(before, "");
        Guard.NotNegative(ofNewOil, "");
        Guard.InRange(changes, 0, MostChanges, "changes");
        return ofNewOil + Math.Pow(Heel.DecimalFractions, changes) * (before - ofNewOil);
    }

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job) => Assess(job, fewest: 0);

    /// <summary>With at least so many changes, where something other than water and dirt asks for them.</summary>
    internal TreatmentAssessment Assess(TreatmentJob job, int fewest)
    {
        var water = TargetPart.UntouchedWater(Guard.NotNull(job));
        var particles = TargetPart.UntouchedParticles(job);
        var changes = fewest;
        if (!water.IsMet)
        {
            water = Changed(
                job,
                NewWater < job.Target.Water,
                (n, ingress) => WaterAfter(job, n, ingress) <= job.Target.Water,
                ref changes
            );
        }

        if (!particles.IsMet)
        {
            var limits = new CodeLimits(job.Target.Code);
            particles = Changed(
                job,
                limits.Excess(NewParticles) <= 0,
                (n, ingress) => limits.Excess(ParticlesAfter(job, n, ingress)) <= 0,
                ref changes
            );
        }

        (water, particles) = (Kept(job, water, changes), Kept(job, particles, changes, ofParticles: true));
        var exchanged = changes * (1 - Heel.DecimalFractions) * job.Reservoir.OilVolume;
        var removed = Math.Max(0, (job.Contamination.Water - WaterAfter(job, changes, false)).DecimalFractions);
        return new TreatmentAssessment(
            this,
            water,
            particles,
            NewWater < job.Contamination.Water ? NewWater : job.Contamination.Water,
            electricity: MotorPower * Elapsed.FromHours(HoursFor(job, changes)),
            waterRemoved: Volume.FromLiters(removed * job.OilMass.Kilograms / 0.9982),
            newOil: exchanged,
            cautions: CautionsOf.Treatment(
                TreatmentKind.DrainAndRefill,
                WorkConditions.Of(job, job.Reservoir.Start.DegreesCelsius)
            )
        );
    }

    /// <summary>The treatment with its equipment, in a few words.</summary>
    /// <returns>For example <c>drain and refill, 5 % stays, new oil 40 mg/kg, 17/15/12</c>.</returns>
    public override string ToString() =>
        $"{Name}, {PlainText.Number(Heel.Percent)} % stays, new oil {PlainText.Number(NewWater.PartsPerMillion)} mg/kg, {NewParticles.Code}";

    /// <summary>
    /// A part that is met before: it takes the time of the changes that something else asks for, and is not met where the new oil makes it worse than the target.
    /// </summary>
    private TargetPart Kept(TreatmentJob job, TargetPart part, int changes, bool ofParticles = false)
    {
        if (changes == 0 || !part.IsMet || part.Arrival is not Arrival<TimeSpan>.Already)
        {
            return part;
        }

        var isWorse = ofParticles
            ? new CodeLimits(job.Target.Code).Excess(ParticlesAfter(job, changes, true)) > 0
            : WaterAfter(job, changes, true) > job.Target.Water;
        return isWorse ? TargetPart.Not(WhyNot.FloorAboveTarget, job) : TargetPart.Within(job, HoursFor(job, changes));
    }

    /// <summary>With what comes in during the work, or without.</summary>
    private MassFraction WaterAfter(TreatmentJob job, int changes, bool withIngress)
    {
        var cameIn = withIngress
            ? 1e6 * job.Reservoir.WaterIngress.KilogramsPerHour * HoursFor(job, changes) / job.OilMass.Kilograms
            : 0;
        return MassFraction.FromPartsPerMillion(
            After(job.Contamination.Water.PartsPerMillion, NewWater.PartsPerMillion, changes) + cameIn
        );
    }

    private ParticleLevels ParticlesAfter(TreatmentJob job, int changes, bool withIngress)
    {
        var (start, ingression) = (job.Contamination.Particles, job.Reservoir.Ingression);
        var minutesPerMillilitre = withIngress ? 60 * HoursFor(job, changes) / job.Reservoir.OilVolume.Milliliters : 0;
        return ParticleLevels.Computed(
            After(start.At4PerMillilitre, NewParticles.At4PerMillilitre, changes)
                + ingression.At4PerMinute * minutesPerMillilitre,
            After(start.At6PerMillilitre, NewParticles.At6PerMillilitre, changes)
                + ingression.At6PerMinute * minutesPerMillilitre,
            After(start.At14PerMillilitre, NewParticles.At14PerMillilitre, changes)
                + ingression.At14PerMinute * minutesPerMillilitre
        );
    }

    private double HoursFor(TreatmentJob job, int changes) =>
        2 * changes * (1 - Heel.DecimalFractions) * job.Reservoir.OilVolume.Liters / TransferFlow.LitersPerHour;

    private TargetPart Changed(TreatmentJob job, bool newOilIsBetter, Func<int, bool, bool> isMet, ref int changes)
    {
        if (!newOilIsBetter)
        {
            return TargetPart.Not(WhyNot.FloorAboveTarget, job);
        }

        var needed = Enumerable.Range(1, MostChanges).FirstOrDefault(n => isMet(n, true));
        if (needed == 0)
        {
            // More changes than are looked at may do: not before the time of these, and never claimed beyond the horizon.
            return Enumerable.Range(1, MostChanges).Any(n => isMet(n, false))
                ? TargetPart.Not(WhyNot.IngressTooHigh, job)
                : TargetPart.TooLong(Elapsed.FromHours(Math.Min(job.Horizon.TotalHours, HoursFor(job, MostChanges))));
        }

        var forecast = TargetPart.Within(job, HoursFor(job, needed));
        changes = forecast.IsMet ? Math.Max(changes, needed) : changes;
        return forecast;
    }
}
