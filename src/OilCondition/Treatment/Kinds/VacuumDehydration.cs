using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Vacuum dehydration: the plan as a row of the comparison. It reaches all forms of water, gas, and with a filter particles.</summary>
public sealed class VacuumDehydration : ITreatment, IShiftable
{
    private readonly double tolerance;

    /// <summary>Describes the treatment.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="elements">Filter elements that are used up where it takes out particles, 0 to 10 000; null for one where it has a filter.</param>
    /// <exception cref="ArgumentNullException">The unit is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The number of elements lies outside its range.</exception>
    public VacuumDehydration(PurificationUnit unit, int? elements = null)
        : this(unit, elements, PurificationPlan.FineTolerance) { }

    private VacuumDehydration(PurificationUnit unit, int? elements, double tolerance)
    {
        this.tolerance = tolerance;
        Unit = Guard.NotNull(unit);
        Elements = (int)
            Guard.InRange(elements ?? (unit.Filter is null ? 0 : 1), 0, 10_000, "elements", nameof(elements));
    }

    /// <inheritdoc/>
    public string Name => "vacuum dehydration";

    /// <inheritdoc/>
    public TreatmentKind? Kind => TreatmentKind.VacuumDehydration;

    /// <inheritdoc/>
    public ContaminationForms Reaches =>
        ContaminationForms.FreeWater
        | ContaminationForms.EmulsifiedWater
        | ContaminationForms.DissolvedWater
        | ContaminationForms.Gas
        | (Unit.Filter is null ? ContaminationForms.None : ContaminationForms.Particles);

    /// <summary>The unit.</summary>
    public PurificationUnit Unit { get; }

    /// <summary>Filter elements that are used up where it takes out particles.</summary>
    public int Elements { get; }

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job)
    {
        const int States = 10;
        var hoursBetween = Guard.NotNull(job).Horizon.TotalHours / States;
        var interval = Elapsed.FromHours(Math.Min(720, Math.Max(1.0 / 60, hoursBetween)));
        var plan = PurificationPlan.Create(job, Unit, interval, tolerance);
        var time = TargetPart.RunTime(plan.WaterPart, plan.ParticlePart);

        // Where one part is never reached the plan runs on; the row counts to the part that is.
        var state =
            plan.MeetsTarget || time is null
                ? plan.Last
                : PurificationPlan.Create(Only(job, plan), Unit, interval, tolerance).Last;
        var counts = time is not null;
        return new TreatmentAssessment(
            this,
            plan.WaterPart,
            plan.ParticlePart,
            plan.End.WaterFloor,
            counts ? state.HeaterEnergy : Energy.Zero,
            counts ? state.TotalEnergy - state.HeaterEnergy : Energy.Zero,
            Volume.FromLiters(counts ? Math.Max(0, state.Evaporated.Kilograms) / 0.9982 : 0),
            elements: plan.ParticlePart.Time is null ? 0 : Elements,
            cautions: plan.Cautions,
            flags: plan.Flags
        );
    }

    ITreatment IShiftable.Shifted(InputShift shift) =>
        new VacuumDehydration(Unit.Shifted(shift), Elements, PurificationPlan.RoughTolerance);

    internal VacuumDehydration With(PurificationUnit unit) => new(unit, Elements);

    /// <summary>The treatment with its equipment, in a few words.</summary>
    /// <returns>For example <c>vacuum dehydration, 20 L/min at 65 °C, heater 18 kW, 65.1 hPa</c>.</returns>
    public override string ToString() => $"{Name}, {Unit}";

    private static TreatmentJob Only(TreatmentJob job, PurificationPlan plan) =>
        job.With(
            target: plan.WhyNotWater is null
                ? new TreatmentTarget(water: job.Target.Water)
                : new TreatmentTarget(code: job.Target.Code)
        );
}
