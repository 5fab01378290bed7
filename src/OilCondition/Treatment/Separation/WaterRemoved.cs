using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Water that leaves the oil until the target, with what comes in meanwhile.</summary>
internal static class WaterRemoved
{
    /// <summary>The volume at 20 °C; none where the target is not reached by the treatment.</summary>
    public static Volume By(TreatmentJob job, TargetPart water, double oilKilograms)
    {
        if (water.Time is not { } time || job.Target.Water is not { } target)
        {
            return Volume.Zero;
        }

        var kilograms =
            oilKilograms * (job.Contamination.Water - target).DecimalFractions
            + job.Reservoir.WaterIngress.KilogramsPerHour * time.TotalHours;
        return Volume.FromLiters(kilograms * 1000 / WaterContent.WaterDensity.KilogramsPerCubicMeter);
    }
}
