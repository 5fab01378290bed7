using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Vacuum dehydration: the plan as a row of the comparison. It reaches all forms of water, gas, and with a filter particles.</summary>
public sealed class VacuumDehydration : ITreatment
{
    /// <summary>Describes the treatment.</summary>
    /// <param name="unit">The unit.</param>
    /// <exception cref="ArgumentNullException">The unit is null.</exception>
    public VacuumDehydration(PurificationUnit unit) => Unit = Guard.NotNull(unit);

    /// <inheritdoc/>
    public string Name => "vacuum dehydration";

    /// <inheritdoc/>
    public ContaminationForms Reaches =>
        ContaminationForms.FreeWater
        | ContaminationForms.EmulsifiedWater
        | ContaminationForms.DissolvedWater
        | ContaminationForms.Gas
        | (Unit.Filter is null ? ContaminationForms.None : ContaminationForms.Particles);

    /// <summary>The unit.</summary>
    public PurificationUnit Unit { get; }

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job)
    {
        const int States = 10;
        var hoursBetween = Guard.NotNull(job).Horizon.TotalHours / States;
        var interval = Elapsed.FromHours(Math.Min(720, Math.Max(1.0 / 60, hoursBetween)));
        var plan = PurificationPlan.Create(job, Unit, interval);
        var hours = Parts.HoursOf(plan.Water, plan.Particles);

        // Where one part is never reached the plan runs on; the row counts to the part that is.
        var state =
            plan.Forecast.IsMet || hours <= 0
                ? plan.Last
                : PurificationPlan.Create(Only(job, plan), Unit, interval).Last;
        var counts = hours > 0;
        return new TreatmentAssessment(
            this,
            plan.Water,
            plan.Particles,
            plan.End.WaterFloor,
            Elapsed.FromHours(hours),
            counts ? state.HeaterEnergy : Energy.Zero,
            counts ? state.TotalEnergy - state.HeaterEnergy : Energy.Zero,
            Volume.FromLiters(counts ? Math.Max(0, state.Evaporated.Kilograms) / 0.9982 : 0),
            cautions: CautionsOf.Vacuum
        );
    }

    private static TreatmentJob Only(TreatmentJob job, PurificationPlan plan) =>
        new(
            job.Oil,
            job.Reservoir,
            job.Contamination,
            plan.Water.IsMet
                ? new TreatmentTarget(water: job.Target.Water)
                : new TreatmentTarget(code: job.Target.Code),
            job.Horizon
        );
}
