using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Beta ratios of a filter.</summary>
public sealed class FilterData : ContractPart
{
    /// <summary>At 4 µm(c).</summary>
    [JsonRequired]
    public double Beta4 { get; set; }

    /// <summary>At 6 µm(c).</summary>
    [JsonRequired]
    public double Beta6 { get; set; }

    /// <summary>At 14 µm(c).</summary>
    [JsonRequired]
    public double Beta14 { get; set; }
}
