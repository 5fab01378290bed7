using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Particles that sink by their density, size by size of ISO 4406, at Stokes' velocity (<see cref="DropletSettling"/>).</summary>
/// <remarks>
/// All of a cumulative count at d and above is taken to sink as slowly as d: larger ones are gone sooner. Spheres of one density; flakes and fibres sink slower.
/// </remarks>
internal sealed class ParticleSettling
{
    private readonly double[] metrePerHour;

    public ParticleSettling(TreatedOil oil, Temperature temperature, Density particleDensity) =>
        metrePerHour = [
            .. new double[] { 4, 6, 14 }.Select(micrometres =>
                3600
                * DropletSettling.Stokes(
                    oil,
                    temperature,
                    1e-6 * micrometres,
                    particleDensity.KilogramsPerCubicMeter,
                    out _
                )
            ),
        ];

    public static Density? Checked(Density? particleDensity, string name)
    {
        if (particleDensity is { } stated)
        {
            Guard.InRange(stated.KilogramsPerCubicMeter, 500, 25_000, "kg/m³", name);
        }

        return particleDensity;
    }

    /// <summary>
    /// The code in still oil. N(t) = N₀ (1 − v t/h) + (R/V) t: what comes in is taken to enter at the top and to have sunk after h/v.
    /// </summary>
    public TargetPart Still(TreatmentJob job, double heightMetres) =>
        Of(
            job,
            0,
            (size, limit) =>
            {
                var passesPerHour = metrePerHour[size.Index] / heightMetres;
                return limit <= size.PerHour / passesPerHour
                    ? null
                    : (size.Count - limit) / (size.Count * passesPerHour - size.PerHour);
            }
        );

    /// <summary>The code on a loop through a centrifuge. N∞ + (N₀ − N∞) exp(−η Q t/V), η = min(1, v Σ/Q), N∞ = R/(η Q).</summary>
    public TargetPart Spun(TreatmentJob job, LoopAtWork loop, double squareMetres) =>
        Of(
            job,
            loop.HeatUpHours,
            (size, limit) =>
            {
                var share = Math.Min(1, metrePerHour[size.Index] * squareMetres / loop.FlowCubicMetrePerHour);
                var rate = share * loop.TurnoversPerHour;
                var steady = size.PerHour / rate;
                return limit <= steady ? null : Math.Log((size.Count - steady) / (limit - steady)) / rate;
            }
        );

    /// <summary>The code where the density of the particles was not stated.</summary>
    public static TargetPart OfUnknownDensity(TreatmentJob job) =>
        TargetPart.UntouchedParticles(job) is { IsMet: true } met ? met : TargetPart.Not(WhyNot.DensityNotStated, job);

    /// <summary>The slowest of the sizes that are asked and not there yet.</summary>
    private TargetPart Of(TreatmentJob job, double afterHours, Func<Size, double, double?> hoursOf)
    {
        var untouched = TargetPart.UntouchedParticles(job);
        if (untouched.IsMet || job.Target.Code is not { } code)
        {
            return untouched;
        }

        if (metrePerHour[0] <= 0)
        {
            return TargetPart.Not(WhyNot.ParticlesTooLight, job);
        }

        var (start, ingression) = (job.Contamination.Particles, job.Reservoir.Ingression);
        var perHour = 60 / job.Reservoir.OilVolume.Milliliters;
        (Size Size, double Limit)[] sizes =
        [
            (new(0, start.At4PerMillilitre, ingression.At4PerMinute * perHour), CodeLimits.Of(code.At4)),
            (new(1, start.At6PerMillilitre, ingression.At6PerMinute * perHour), CodeLimits.Of(code.At6)),
            (new(2, start.At14PerMillilitre, ingression.At14PerMinute * perHour), CodeLimits.Of(code.At14)),
        ];
        double?[] hours =
        [
            .. sizes.Where(one => one.Limit < one.Size.Count).Select(one => hoursOf(one.Size, one.Limit)),
        ];
        return hours.Any(one => one is null)
            ? TargetPart.Not(WhyNot.IngressTooHigh, job)
            : TargetPart.Within(job, afterHours + hours.Max()!.Value);
    }

    private readonly record struct Size(int Index, double Count, double PerHour);
}
