using OilCondition.Cleanliness;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The two parts of a target, for treatments that do not follow the oil hour by hour.</summary>
internal static class Parts
{
    private const double NoLimit = double.PositiveInfinity;

    /// <summary>The water part of a treatment that does not touch water.</summary>
    public static TargetForecast UntouchedWater(TreatmentJob job) =>
        job.Target.Water is not { } target ? new(TreatmentOutcome.NotAsked)
        : job.Contamination.Water <= target ? new(TreatmentOutcome.AlreadyThere)
        : new(TreatmentOutcome.NotReachedByTreatment);

    /// <summary>The code of a treatment that does not touch particles.</summary>
    public static TargetForecast UntouchedParticles(TreatmentJob job) =>
        job.Target.Code is not { } code ? new(TreatmentOutcome.NotAsked)
        : new CodeLimits(code).Excess(job.Contamination.Particles) <= 0 ? new(TreatmentOutcome.AlreadyThere)
        : new(TreatmentOutcome.NotReachedByTreatment);

    /// <summary>The code of a treatment by which particles sink, with a density that was not stated.</summary>
    public static TargetForecast ParticlesOfUnknownDensity(TreatmentJob job) =>
        UntouchedParticles(job) is { IsMet: true } met ? met : new(TreatmentOutcome.ParticleDensityNotStated);

    /// <summary>Reached after a time, unless that lies beyond the horizon.</summary>
    public static TargetForecast After(TreatmentJob job, double hours) =>
        hours <= job.Horizon.TotalHours
            ? new TargetForecast(TreatmentOutcome.Reached, hours)
            : new TargetForecast(TreatmentOutcome.BeyondHorizon);

    /// <summary>Hours to the later of the parts that are reached.</summary>
    public static double HoursOf(TargetForecast water, TargetForecast particles) =>
        Math.Max(water.Time.TotalHours, particles.Time.TotalHours);

    /// <summary>Water that leaves the charge until the target, with what comes in meanwhile; 0 where it is not reached.</summary>
    public static Volume WaterRemoved(TreatmentJob job, TargetForecast water, double oilKilograms)
    {
        if (water.Outcome != TreatmentOutcome.Reached || job.Target.Water is not { } target)
        {
            return Volume.Zero;
        }

        var kilograms =
            oilKilograms * (job.Contamination.Water - target).DecimalFractions
            + job.Reservoir.WaterIngress.KilogramsPerHour * water.Time.TotalHours;
        return Volume.FromLiters(
            kilograms * 1000 / OilCondition.Water.WaterContent.WaterDensity.KilogramsPerCubicMeter
        );
    }

    /// <summary>The code in a kidney loop, size by size.</summary>
    public static TargetForecast Filtered(TreatmentJob job, FilterRatings filter, LoopAtWork loop)
    {
        var untouched = UntouchedParticles(job);
        if (untouched.IsMet || job.Target.Code is not { } code)
        {
            return untouched;
        }

        var start = job.Contamination.Particles;
        var ingression = job.Reservoir.Ingression;
        Arrival<TimeSpan>[] times =
        [
            .. Size(code.At4, filter.At4, start.At4PerMillilitre, ingression.At4PerMinute),
            .. Size(code.At6, filter.At6, start.At6PerMillilitre, ingression.At6PerMinute),
            .. Size(code.At14, filter.At14, start.At14PerMillilitre, ingression.At14PerMinute),
        ];
        return times.Any(time => time is Arrival<TimeSpan>.Never)
            ? new TargetForecast(TreatmentOutcome.IngressAboveTarget)
            : After(job, loop.HeatUpHours + times.Max(time => time.TryEstimate(out var span) ? span.TotalHours : 0));

        IEnumerable<Arrival<TimeSpan>> Size(ScaleNumber number, FilterBeta beta, double count, double perMinute) =>
            CodeLimits.Of(number) is var limit && limit < NoLimit
                ?
                [
                    new KidneyLoop(
                        job.Reservoir.OilVolume,
                        VolumeFlow.FromCubicMetersPerHour(loop.FlowCubicMetrePerHour),
                        beta,
                        perMinute
                    ).TimeTo(count, limit),
                ]
                : [];
    }
}
