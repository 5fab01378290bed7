using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Dry air through the head-space of the reservoir: it carries off all forms of water, slowly.</summary>
/// <remarks>
/// <para>
/// M dC/dt = r − ε ṁ (W(a) − W_in),  W(a) = 0.62196 a p_sat/(p − a p_sat),  a = min(1, C/S).   ṁ: dry air; ε: how far the air that leaves has come
/// to equilibrium with the oil, 1 at most. With free water the rate is constant; below saturation it is solved in closed form. The floor is
/// C = S p_w/p_sat with the vapour pressure of the air let in.
/// </para>
/// <para>
/// Oil temperature is that at the start; the heat that the water takes is left out. No source tells ε of a real tank: still oil gives off water through
/// its surface only. Measure it, humidity in and out, where the time matters.
/// </para>
/// </remarks>
public sealed class HeadSpacePurge : ITreatment
{
    private const double MolarMassRatio = VacuumChamber.WaterKilogramPerMole / VacuumChamber.AirKilogramPerMole;

    /// <summary>Describes a purge.</summary>
    /// <param name="dryAir">Mass flow of the air's dry part, above 0.</param>
    /// <param name="air">The air let in, behind its dryer.</param>
    /// <param name="localAtmosphere">Absolute pressure in the head-space, 300 to 1100 hPa.</param>
    /// <param name="approach">How far the air that leaves has come to equilibrium with the oil, ε, above 0 up to 1.</param>
    /// <param name="motorPower">Electrical power of blower and dryer, 0 to 100 MW.</param>
    /// <exception cref="ArgumentNullException">The air is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public HeadSpacePurge(
        MassFlow dryAir,
        HumidAir air,
        Pressure localAtmosphere,
        Ratio approach,
        Power motorPower = default
    )
    {
        Guard.InRange(dryAir.KilogramsPerHour, 1e-9, 1e6, "kg/h", nameof(dryAir));
        Air = Guard.NotNull(air);
        Guard.InRange(localAtmosphere.Hectopascals, 300, 1100, "hPa", nameof(localAtmosphere));
        Guard.InRange(approach.DecimalFractions, 1e-9, 1, "(ratio)", nameof(approach));
        Guard.InRange((double)motorPower.Watts, 0, 1e8, "W", nameof(motorPower));
        DryAir = dryAir;
        LocalAtmosphere = localAtmosphere;
        Approach = approach;
        MotorPower = motorPower;
    }

    /// <inheritdoc/>
    public string Name => "head-space purge";

    /// <inheritdoc/>
    public TreatmentKind? Kind => TreatmentKind.HeadSpacePurge;

    /// <inheritdoc/>
    public ContaminationForms Reaches =>
        ContaminationForms.FreeWater | ContaminationForms.EmulsifiedWater | ContaminationForms.DissolvedWater;

    /// <summary>Mass flow of the air's dry part.</summary>
    public MassFlow DryAir { get; }

    /// <summary>The air let in.</summary>
    public HumidAir Air { get; }

    /// <summary>Absolute pressure in the head-space.</summary>
    public Pressure LocalAtmosphere { get; }

    /// <summary>How far the air that leaves has come to equilibrium with the oil, ε.</summary>
    public Ratio Approach { get; }

    /// <summary>Electrical power of blower and dryer.</summary>
    public Power MotorPower { get; }

    /// <inheritdoc/>
    public TreatmentAssessment Assess(TreatmentJob job)
    {
        var temperature = Guard.NotNull(job).Reservoir.Start;
        var equilibrium = job.Oil.SaturationCurve.EquilibriumWith(Air, temperature).Dissolved;
        var floor = equilibrium < job.Contamination.Water ? equilibrium : job.Contamination.Water;
        var mass = job.OilMassAt(temperature).Kilograms;
        var water = Water(job, temperature, mass);
        return new TreatmentAssessment(
            this,
            water,
            TargetPart.UntouchedParticles(job),
            floor,
            electricity: MotorPower * (water.Time ?? TimeSpan.Zero),
            waterRemoved: WaterRemoved.By(job, water, mass)
        );
    }

    /// <summary>The treatment with its equipment, in a few words.</summary>
    /// <returns>For example <c>head-space purge, 5 kg/h of air</c>.</returns>
    public override string ToString() => $"{Name}, {PlainText.Number(DryAir.KilogramsPerHour)} kg/h of air";

    private TargetPart Water(TreatmentJob job, Temperature temperature, double mass)
    {
        var untouched = TargetPart.UntouchedWater(job);
        if (untouched.IsMet || job.Target.Water is not { } target)
        {
            return untouched;
        }

        var saturation = job.Oil.SaturationCurve.SaturationAt(temperature).Content.DecimalFractions;
        var share = WaterVapour.SaturationPressure(temperature).Pascals / LocalAtmosphere.Pascals;
        var airPerHour = Approach.DecimalFractions * DryAir.KilogramsPerHour;
        var ingress = job.Reservoir.WaterIngress.KilogramsPerHour;
        if (share >= 1)
        {
            // Oil above the boiling point of water: such a tank boils, and is no head-space purge.
            return TargetPart.Not(WhyNot.TooHot, job);
        }

        // What the air must carry off for the content to stand still, as a humidity ratio, and the activity at which it does.
        var still = Air.HumidityRatioAt(LocalAtmosphere).DecimalFractions + ingress / airPerHour;
        var stillActivity = still / (share * (MolarMassRatio + still));
        var end = target.DecimalFractions / saturation;
        if (stillActivity >= Math.Min(1, end))
        {
            var dry = job.Oil.SaturationCurve.EquilibriumWith(Air, temperature).Dissolved;
            return TargetPart.Not(dry >= target ? WhyNot.FloorAboveTarget : WhyNot.IngressTooHigh, job);
        }

        var start = job.Contamination.Water.DecimalFractions / saturation;
        var rateWithFreeWater = airPerHour * (MolarMassRatio * share / (1 - share) - still);
        var constant = mass * saturation * Math.Max(0, start - Math.Max(1, end)) / rateWithFreeWater;
        var falling = mass * saturation / airPerHour * Falling(Math.Min(1, start), Math.Min(1, end), share, still);
        return TargetPart.Within(job, constant + falling);
    }

    /// <summary>Integral of da/(W(a) − W_still) from one activity down to another, W(a) = μ s a/(1 − s a); in closed form.</summary>
    private static double Falling(double from, double to, double share, double still)
    {
        // With b = (μ + W) s and q = W the integrand is (1 − s a)/(b a − q).
        var b = (MolarMassRatio + still) * share;
        return -share / b * (from - to) + (1 - share * still / b) / b * Math.Log((b * from - still) / (b * to - still));
    }
}
