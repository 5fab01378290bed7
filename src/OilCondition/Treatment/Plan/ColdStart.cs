using OilCondition.Text;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>What thick cold oil costs: the plan as it is beside the same plan with a light oil.</summary>
/// <remarks>
/// The two plans differ in viscosity only: same density, heat, water and limits. While the pump holds less than its full flow, the heater can give no more
/// than that flow carries away at the process temperature, P = ρ Q c (T_set − T): this is what makes cold heavy oil slow.
/// Caution: cold thick oil starves pumps and breaks couplings; the pump's maker says from which viscosity on it may be started.
/// </remarks>
public sealed class ColdStart
{
    private ColdStart(PurificationPlan heavy, PurificationPlan light)
    {
        Heavy = heavy;
        Light = light;
        HasTimeLost = heavy.Forecast.IsMet && light.Forecast.IsMet;
        TimeLost = HasTimeLost ? heavy.Time - light.Time : TimeSpan.Zero;
    }

    /// <summary>The plan as it is.</summary>
    public PurificationPlan Heavy { get; }

    /// <summary>The same plan with the light oil's viscosity.</summary>
    public PurificationPlan Light { get; }

    /// <summary>Whether both reach the target.</summary>
    public bool HasTimeLost { get; }

    /// <summary>Time lost against the light oil; 0 unless <see cref="HasTimeLost"/>.</summary>
    public TimeSpan TimeLost { get; }

    /// <summary>Compares.</summary>
    /// <param name="job">The task with the heavy oil.</param>
    /// <param name="unit">The unit.</param>
    /// <param name="lightLine">Viscosity of the light oil against temperature.</param>
    /// <returns>Both plans, hour by hour, and the difference.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static ColdStart Compare(TreatmentJob job, PurificationUnit unit, ViscosityTemperatureLine lightLine)
    {
        Guard.NotNull(job);
        var oil = new TreatedOil(
            job.Oil.Properties,
            job.Oil.SaturationCurve,
            Guard.NotNull(lightLine),
            job.Oil.HighestTemperature,
            job.Oil.HasDetergents
        );
        var light = new TreatmentJob(oil, job.Reservoir, job.Contamination, job.Target, job.Horizon);
        return new ColdStart(PurificationPlan.Create(job, unit), PurificationPlan.Create(light, unit));
    }
}
