using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The same reservoir with some of its figures exchanged.</summary>
internal static class ReservoirParts
{
    /// <summary>With the oil at another temperature, and so of another volume.</summary>
    public static Reservoir Holding(this Reservoir tank, Volume oilVolume, Temperature start) =>
        new(
            oilVolume,
            start,
            tank.Ambient,
            tank.LossWattPerKelvin,
            tank.WaterIngress,
            tank.Ingression,
            tank.HighestTemperature,
            tank.Steel
        );

    /// <summary>Mass of the oil, by its volume at the start.</summary>
    public static double OilKilograms(this TreatmentJob job) =>
        job.Reservoir.OilVolume.CubicMeters * job.Oil.Properties.At(job.Reservoir.Start).Density.KilogramsPerCubicMeter;
}
