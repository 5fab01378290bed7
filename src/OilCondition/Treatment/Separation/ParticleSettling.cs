using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Particles that sink by their density in standing oil, size by size of ISO 4406, at Stokes' velocity (<see cref="DropletSettling"/>).</summary>
/// <remarks>
/// N(t) = N₀ (1 − s/h) + what came in and has not sunk through h; it is taken to enter at the top.
/// All of a cumulative count at d and above is taken to sink as slowly as d: larger ones are gone sooner. Spheres of one density; flakes and fibres sink slower.
/// </remarks>
internal static class ParticleSettling
{
    public static Density? Checked(Density? particleDensity, string name)
    {
        if (particleDensity is { } stated)
        {
            Guard.InRange(stated.KilogramsPerCubicMeter, 500, 25_000, "kg/m³", name);
        }

        return particleDensity;
    }

    /// <summary>The code in standing oil; not determined where the density of the particles was not stated.</summary>
    public static TargetPart Still(TreatmentJob job, StandingOil standing, Density? particleDensity, double height)
    {
        var untouched = TargetPart.UntouchedParticles(job);
        if (untouched.IsMet || job.Target.Code is not { } code)
        {
            return untouched;
        }

        if (particleDensity is not { } density)
        {
            return TargetPart.Not(WhyNot.DensityNotStated, job);
        }

        double Speed(Temperature temperature, double micrometres) =>
            DropletSettling.Stokes(job.Oil, temperature, 1e-6 * micrometres, density.KilogramsPerCubicMeter, out _);
        if (Speed(standing.Start, 4) <= 0)
        {
            return TargetPart.Not(WhyNot.ParticlesTooLight, job);
        }

        var (start, ingression) = (job.Contamination.Particles, job.Reservoir.Ingression);
        var perSecond = 1 / (60 * job.Reservoir.OilVolume.Milliliters);
        (double Micrometres, double Count, double PerSecond, double Limit)[] sizes =
        [
            (4, start.At4PerMillilitre, ingression.At4PerMinute * perSecond, CodeLimits.Of(code.At4)),
            (6, start.At6PerMillilitre, ingression.At6PerMinute * perSecond, CodeLimits.Of(code.At6)),
            (14, start.At14PerMillilitre, ingression.At14PerMinute * perSecond, CodeLimits.Of(code.At14)),
        ];
        var flows = job.Oil.PourPoint is { } pour
            ? standing.LastAbove(pour.DegreesCelsius)
            : standing.Seconds.Length - 1;
        double slowest = 0;
        foreach (var size in sizes.Where(one => one.Limit < one.Count))
        {
            var depths = standing.Depths(temperature => Speed(temperature, size.Micrometres));
            var excess = new double[depths.Length];
            for (int i = 0, bottom = 0; i < excess.Length; i++)
            {
                while (depths[i] - depths[bottom] > height)
                {
                    bottom++;
                }

                excess[i] =
                    size.Count * Math.Max(0, 1 - depths[i] / height)
                    + size.PerSecond * (standing.Seconds[i] - Entered(standing, depths, bottom, depths[i] - height))
                    - size.Limit;
            }

            if (standing.FirstHours(excess, flows) is not { } hours)
            {
                return TargetPart.Not(
                    size.Limit <= size.PerSecond * height / Speed(standing.End, size.Micrometres)
                            ? WhyNot.IngressTooHigh
                        : flows < excess.Length - 1 ? WhyNot.BelowPourPoint
                        : WhyNot.TakesTooLong,
                    job
                );
            }

            slowest = Math.Max(slowest, hours);
        }

        return TargetPart.Within(job, slowest);
    }

    /// <summary>When what is now at the bottom entered, s.</summary>
    private static double Entered(StandingOil standing, double[] depths, int index, double depth)
    {
        if (depth <= 0 || index == 0)
        {
            return 0;
        }

        var width = depths[index] - depths[index - 1];
        var share = width > 0 ? (depth - depths[index - 1]) / width : 1;
        return standing.Seconds[index - 1] + share * (standing.Seconds[index] - standing.Seconds[index - 1]);
    }
}
