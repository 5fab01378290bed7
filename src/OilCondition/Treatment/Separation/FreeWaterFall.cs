using MathNet.Numerics.RootFinding;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Free and emulsified water that a separator takes out of a well-mixed tank down to saturation, never below.</summary>
/// <remarks>
/// C(t) = S + g/k_d + (D − g/k_d) exp(−k_d t) + E exp(−k_e t).   S: saturation at the working temperature; D, E: settling and emulsified water above it;
/// g: ingress per hour, taken as drops that settle.
/// </remarks>
internal readonly struct FreeWaterFall
{
    private readonly TreatmentJob job;
    private readonly double dissolved;
    private readonly double drops;
    private readonly double emulsion;
    private readonly double ingressPerHour;

    public FreeWaterFall(TreatmentJob job, Temperature temperature)
    {
        this.job = job;
        var water = job.WaterAt(temperature);
        dissolved = water.Dissolved.DecimalFractions;
        emulsion = water.Free.DecimalFractions * job.Contamination.EmulsifiedShare.DecimalFractions;
        drops = water.Free.DecimalFractions - emulsion;
        ingressPerHour = job.Reservoir.WaterIngress.KilogramsPerHour / job.OilMassAt(temperature).Kilograms;
    }

    /// <summary>What stays for ever without ingress.</summary>
    public MassFraction Floor(bool reachesEmulsion) =>
        MassFraction.FromPartsPerMillion(1e6 * (dissolved + (reachesEmulsion ? 0 : emulsion)));

    /// <summary>
    /// What decides the water part without any time: it is met, or it lies below what stays. Null where it is a matter of time. The level is
    /// that which ingress adds to what stays.
    /// </summary>
    public TargetPart? Settled(bool reachesEmulsion, double levelOfIngress)
    {
        var untouched = TargetPart.UntouchedWater(job);
        if (untouched.IsMet || job.Target.Water is not { } target)
        {
            return untouched;
        }

        var stays = reachesEmulsion ? 0 : emulsion;
        return dissolved >= target.DecimalFractions ? TargetPart.Not(WhyNot.FloorAboveTarget, job)
            : dissolved + stays >= target.DecimalFractions ? TargetPart.Not(WhyNot.EmulsionStays, job)
            : dissolved + stays + levelOfIngress >= target.DecimalFractions ? TargetPart.Not(WhyNot.IngressTooHigh, job)
            : null;
    }

    /// <summary>When the target is reached at two rates, in 1/h; the emulsion's may be 0.</summary>
    public TargetPart At(double dropRate, double emulsionRate, double afterHours)
    {
        var level = ingressPerHour / dropRate;
        if (Settled(emulsionRate > 0, level) is { } settled)
        {
            return settled;
        }

        var hours = job.Horizon.TotalHours - afterHours;
        var target = job.Target.Water!.Value.DecimalFractions;
        var (d, e, s) = (drops - level, emulsion, dissolved + level - target);
        double Excess(double time) =>
            (s + d * Math.Exp(-dropRate * time) + e * Math.Exp(-emulsionRate * time)) / target;
        return hours <= 0 || Excess(hours) > 0
            ? TargetPart.TooLong(job.Horizon)
            : TargetPart.After(Elapsed.FromHours(afterHours + Brent.FindRoot(Excess, 0, hours, 1e-13, 300)));
    }
}
