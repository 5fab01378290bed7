using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>One measured saturation.</summary>
public sealed class SaturationPointData : ContractPart
{
    /// <summary>The temperature.</summary>
    [JsonRequired]
    public double Celsius { get; set; }

    /// <summary>The water content at saturation.</summary>
    [JsonRequired]
    public double MgPerKg { get; set; }
}
