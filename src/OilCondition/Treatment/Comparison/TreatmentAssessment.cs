using System.Diagnostics.CodeAnalysis;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>One row of a comparison: what a treatment reaches here, when, and what it needs; or why it is ruled out.</summary>
public sealed class TreatmentAssessment
{
    /// <summary>States a row for a treatment of your own. Name the arguments that have a default.</summary>
    /// <remarks>
    /// A part that the target does not ask for, that is met from the start or that the treatment does not reach (<see cref="ITreatment.Reaches"/>) needs
    /// neither time nor reason. A time beyond the horizon of the task stands for <see cref="Treatment.WhyNot.TakesTooLong"/>.
    /// </remarks>
    /// <param name="treatment">The treatment.</param>
    /// <param name="job">The task.</param>
    /// <param name="waterFloor">Lowest water that it can reach here without ingress, 0 to 500 000 mg/kg.</param>
    /// <param name="waterTime">Time to the water target, 0 or more; null where it is not reached.</param>
    /// <param name="whyNotWater">Why the water target is not reached; null where it is.</param>
    /// <param name="particleTime">Time to the code, 0 or more; null where it is not reached.</param>
    /// <param name="whyNotParticles">Why the code is not reached; null where it is.</param>
    /// <param name="heat">Heat to the oil in that time, 0 or more.</param>
    /// <param name="electricity">Electricity for motors in that time, 0 or more.</param>
    /// <param name="waterRemoved">Water taken out in that time, at 20 °C, 0 or more.</param>
    /// <param name="elements">Elements used up, 0 or more.</param>
    /// <param name="newOil">New oil, 0 or more.</param>
    /// <param name="cautions">What can hurt someone; null for the cautions of its kind.</param>
    /// <exception cref="ArgumentNullException">Treatment or task is null.</exception>
    /// <exception cref="ArgumentException">A part that it reaches has neither a time nor a reason.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A figure lies outside its range.</exception>
    public TreatmentAssessment(
        ITreatment treatment,
        TreatmentJob job,
        MassFraction waterFloor,
        TimeSpan? waterTime = null,
        WhyNot? whyNotWater = null,
        TimeSpan? particleTime = null,
        WhyNot? whyNotParticles = null,
        Energy heat = default,
        Energy electricity = default,
        Volume waterRemoved = default,
        int elements = 0,
        Volume newOil = default,
        IReadOnlyList<Caution>? cautions = null
    )
        : this(
            treatment,
            Part(
                Guard.NotNull(job),
                TargetPart.UntouchedWater(job),
                (Guard.NotNull(treatment).Reaches & AnyWater) != ContaminationForms.None,
                waterTime,
                whyNotWater,
                nameof(waterTime)
            ),
            Part(
                job,
                TargetPart.UntouchedParticles(job),
                (treatment.Reaches & ContaminationForms.Particles) != ContaminationForms.None,
                particleTime,
                whyNotParticles,
                nameof(particleTime)
            ),
            waterFloor,
            heat,
            electricity,
            waterRemoved,
            elements,
            newOil,
            cautions
        ) { }

    internal TreatmentAssessment(
        ITreatment treatment,
        TargetPart water,
        TargetPart particles,
        MassFraction waterFloor,
        Energy heat = default,
        Energy electricity = default,
        Volume waterRemoved = default,
        int elements = 0,
        Volume newOil = default,
        IReadOnlyList<Caution>? cautions = null,
        TreatmentDoubts flags = TreatmentDoubts.None
    )
    {
        Flags = flags;
        Treatment = Guard.NotNull(treatment);
        WaterPart = water;
        ParticlePart = particles;
        PhysicalRange.Water(waterFloor);
        Guard.InRange(heat.KilowattHours, 0, 1e12, "kWh", nameof(heat));
        Guard.InRange(electricity.KilowattHours, 0, 1e12, "kWh", nameof(electricity));
        Guard.InRange(waterRemoved.Liters, 0, 1e12, "L", nameof(waterRemoved));
        Elements = (int)Guard.InRange(elements, 0, 1e9, "elements");
        Guard.InRange(newOil.Liters, 0, 1e12, "L", nameof(newOil));
        WaterFloor = waterFloor;
        Heat = heat;
        Electricity = electricity;
        WaterRemoved = waterRemoved;
        NewOil = newOil;
        Cautions = cautions ?? (treatment.Kind is { } kind ? CautionsOf.Treatment(kind) : []);
        var whole = TargetPart.Both(water, particles);
        Arrival = whole.Arrival!;
        WhyNot = whole.WhyNot;
        RunTime = TargetPart.RunTime(water, particles) ?? (MeetsTarget ? TimeSpan.Zero : null);
    }

    /// <summary>The treatment.</summary>
    public ITreatment Treatment { get; }

    /// <summary>When the water target is reached; null where the target does not ask for it.</summary>
    public Arrival<TimeSpan>? Water => WaterPart.Arrival;

    /// <summary>Why the water target is not reached; null where it is, or is not asked for.</summary>
    public WhyNot? WhyNotWater => WaterPart.WhyNot;

    /// <summary>When the code is reached; null where the target does not ask for it.</summary>
    public Arrival<TimeSpan>? Particles => ParticlePart.Arrival;

    /// <summary>Why the code is not reached; null where it is, or is not asked for.</summary>
    public WhyNot? WhyNotParticles => ParticlePart.WhyNot;

    /// <summary>When all that was asked is reached.</summary>
    public Arrival<TimeSpan> Arrival { get; }

    /// <summary>Why not all that was asked is reached, the water's reason first; null where it is.</summary>
    public WhyNot? WhyNot { get; }

    /// <summary>Whether all that was asked is reached.</summary>
    public bool MeetsTarget => WhyNot is null;

    /// <summary>Lowest water that it can reach here without ingress.</summary>
    public MassFraction WaterFloor { get; }

    /// <summary>How long it runs for the parts that it reaches; 0 where all is met from the start, null where it reaches nothing.</summary>
    public TimeSpan? RunTime { get; }

    /// <summary>Heat to the oil in that time; none where it does not run.</summary>
    public Energy Heat { get; }

    /// <summary>Electricity for motors in that time; none where it does not run.</summary>
    public Energy Electricity { get; }

    /// <summary>Water taken out in that time, at 20 °C; none where it does not run.</summary>
    public Volume WaterRemoved { get; }

    /// <summary>Elements used up; none where it does not run.</summary>
    public int Elements { get; }

    /// <summary>New oil; as much used oil is waste. None where it does not run.</summary>
    public Volume NewOil { get; }

    /// <summary>What can hurt someone, under the conditions of this work.</summary>
    public IReadOnlyList<Caution> Cautions { get; }

    /// <summary>What makes the row less certain than its figures look.</summary>
    public TreatmentDoubts Flags { get; }

    /// <summary>Hours and floor with the errors of the inputs, in a comparison; null for a row that stands alone.</summary>
    public TreatmentBand? Band => band?.Value;

    internal TargetPart WaterPart { get; }

    internal TargetPart ParticlePart { get; }

    private Lazy<TreatmentBand>? band;

    private const ContaminationForms AnyWater =
        ContaminationForms.FreeWater | ContaminationForms.EmulsifiedWater | ContaminationForms.DissolvedWater;

    /// <summary>The same row with its band, which is made when it is first asked for.</summary>
    /// <param name="job">The task.</param>
    /// <param name="errors">The errors of its inputs.</param>
    /// <param name="by">What made the row, where that is not <see cref="Treatment"/> alone.</param>
    internal TreatmentAssessment WithBand(TreatmentJob job, InputErrors errors, ITreatment? by = null)
    {
        var row = (TreatmentAssessment)MemberwiseClone();
        var own = by ?? Treatment;
        row.band = new Lazy<TreatmentBand>(() =>
            new TreatmentBand([
                .. InputShift
                    .All(errors)
                    .Select(shift => (own is IShiftable one ? one.Shifted(shift) : own).Assess(shift.Job(job))),
            ])
        );
        return row;
    }

    /// <summary>What it costs at the user's own prices.</summary>
    /// <param name="prices">The prices.</param>
    /// <param name="cost">A row for each thing that is used; none is invented.</param>
    /// <returns>False where it reaches nothing, and so has no cost.</returns>
    /// <exception cref="ArgumentNullException">The prices are null.</exception>
    public bool TryCostAt(TreatmentPrices prices, [NotNullWhen(true)] out TreatmentCost? cost)
    {
        Guard.NotNull(prices);
        cost = RunTime is { } time ? new TreatmentCost(this, time, prices) : null;
        return cost is not null;
    }

    /// <summary>The row in one line.</summary>
    /// <returns>For example <c>vacuum dehydration: water in 12.3 h, particles not asked, floor 78.7 mg/kg</c>.</returns>
    public override string ToString() =>
        $"{Treatment.Name}: {WaterPart.Of("water")}, {ParticlePart.Of("particles")}, floor {PlainText.Number(WaterFloor.PartsPerMillion)} mg/kg";

    private static TargetPart Part(
        TreatmentJob job,
        TargetPart untouched,
        bool isReached,
        TimeSpan? time,
        WhyNot? whyNot,
        string name
    ) =>
        untouched.Arrival is null ? untouched
        : whyNot is { } reason ? TargetPart.Not(reason, job)
        : untouched.IsMet || !isReached ? untouched
        : time is { } hours ? TargetPart.Within(job, Guard.InRange(hours.TotalHours, 0, 1e9, "h", name))
        : throw new ArgumentException(
            $"{name} is missing; a part that the treatment reaches needs a time or a reason.",
            name
        );
}
