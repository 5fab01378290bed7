using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The same reservoir with one thing changed.</summary>
internal static class ReservoirParts
{
    /// <summary>With the oil at another temperature.</summary>
    public static Reservoir StartingAt(this Reservoir tank, Temperature start) =>
        new(
            tank.OilVolume,
            start,
            tank.Ambient,
            tank.LossWattPerKelvin,
            tank.WaterIngress,
            tank.Ingression,
            tank.HighestTemperature,
            tank.Steel
        );
}
