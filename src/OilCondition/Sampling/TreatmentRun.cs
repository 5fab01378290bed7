using OilCondition.Text;

namespace OilCondition;

/// <summary>A treatment of the charge with a start, possibly an end, and what it is to reach.</summary>
public sealed partial class TreatmentRun : OilEvent
{
    /// <summary>A treatment run.</summary>
    /// <param name="startedAt">When it was started; in the years 1900 to 2199.</param>
    /// <param name="endedAt">When it was ended; null while nobody has ended it.</param>
    /// <param name="kind">The treatment; an oil change is recorded as an <see cref="OilChange"/>.</param>
    /// <param name="measurand">What it is to bring down.</param>
    /// <param name="target">The value to reach, in the measurand's unit.</param>
    /// <param name="equipment">Identifier of the equipment that did it, as the station file has it; null where it is not known.</param>
    /// <param name="planned">What was planned for it, where it brings down water: with it a run whose water does not leave is called hours sooner, and what comes in is told; null where it is not known.</param>
    /// <exception cref="ArgumentException">The run ends before it starts, a moment lies outside its range, the kind is an oil change, the target is not plausible for the measurand, or there is a plan for something else than water.</exception>
    public TreatmentRun(
        DateTimeOffset startedAt,
        DateTimeOffset? endedAt,
        TreatmentKind kind,
        Measurand measurand,
        double target,
        string? equipment = null,
        PlannedUnit? planned = null
    )
        : base(startedAt, nameof(startedAt))
    {
        if (endedAt < startedAt)
        {
            throw new ArgumentException($"endedAt {endedAt:u} lies before startedAt {startedAt:u}.", nameof(endedAt));
        }

        if (kind == TreatmentKind.DrainAndRefill)
        {
            throw new ArgumentException(
                "kind is DrainAndRefill; an oil change starts a new oil fill: record it as an OilChange.",
                nameof(kind)
            );
        }

        EndedAt = endedAt is { } end ? Guard.Moment(end, nameof(endedAt)) : null;
        Kind = kind;
        Equipment = equipment;
        Measurand = Guard.NotNull(measurand);
        if (planned is not null && !measurand.Equals(Measurands.WaterContent))
        {
            throw new ArgumentException(
                $"planned tells of water; the run brings down {measurand.Name}.",
                nameof(planned)
            );
        }

        Planned = planned;
        Target = Guard.InRange(target, measurand.LowestPlausible, measurand.HighestPlausible, measurand.Unit);
    }

    /// <summary>When it was ended; null while nobody has ended it.</summary>
    public DateTimeOffset? EndedAt { get; }

    /// <summary>The treatment.</summary>
    public TreatmentKind Kind { get; }

    /// <summary>Identifier of the equipment that did it; null where it is not known.</summary>
    public string? Equipment { get; }

    /// <summary>What was planned for it; null where that is not known.</summary>
    public PlannedUnit? Planned { get; }

    /// <summary>What it is to bring down.</summary>
    public Measurand Measurand { get; }

    /// <summary>The value to reach, in the measurand's unit.</summary>
    public double Target { get; }

    /// <summary>Whether the treatment runs at a moment.</summary>
    /// <param name="asOf">The moment.</param>
    /// <returns>True from the start, included, until the end, excluded.</returns>
    public bool IsUnderWay(DateTimeOffset asOf) => At <= asOf && (EndedAt is null || asOf < EndedAt);

    /// <summary>What, when and to which target.</summary>
    /// <returns>For example <c>vacuum dehydration from 2025-03-04 06:00 to 2025-03-06 18:00, target 60 mg/kg of water content</c>.</returns>
    public override string ToString() =>
        $"{PlainText.Spaced(Kind)} from {PlainText.Time(At)}{(EndedAt is { } end ? $" to {PlainText.Time(end)}" : ", under way")}, "
        + $"target {PlainText.Reported(Target)} {Measurand.Unit}".TrimEnd()
        + $" of {Measurand.Name}";
}
