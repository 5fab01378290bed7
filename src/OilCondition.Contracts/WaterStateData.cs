using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The water in the oil at one temperature.</summary>
public sealed class WaterStateData : ContractPart
{
    /// <summary>The oil temperature.</summary>
    [JsonRequired]
    public double Celsius { get; set; }

    /// <summary>The most water that the oil holds dissolved.</summary>
    [JsonRequired]
    public double SaturationMgPerKg { get; set; }

    /// <summary>Dissolved water.</summary>
    [JsonRequired]
    public double DissolvedMgPerKg { get; set; }

    /// <summary>Free water.</summary>
    [JsonRequired]
    public double FreeMgPerKg { get; set; }

    /// <summary>Dissolved water as a share of the saturation.</summary>
    [JsonRequired]
    public double RelativeSaturationPercent { get; set; }

    /// <summary>Whether the temperature lies outside the range of the curve.</summary>
    [JsonRequired]
    public bool Extrapolated { get; set; }
}
