using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>What was planned for a treatment of water.</summary>
public sealed class PlannedData : ContractPart
{
    /// <summary>Flow of the unit.</summary>
    [JsonRequired]
    public double FlowLitresPerMinute { get; set; }

    /// <summary>Removal per pass on the excess over the floor, above 0 to 1.</summary>
    [JsonRequired]
    public double RemovalPerPass { get; set; }

    /// <summary>Content that the unit would reach without ingress.</summary>
    [JsonRequired]
    public double FloorMgPerKg { get; set; }

    /// <summary>Water that comes in; left out for none.</summary>
    public double? WaterIngressGramsPerHour { get; set; }
}
