using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Particle counts per millilitre.</summary>
public sealed class CountsData : ContractPart
{
    /// <summary>Of 4 µm(c) and more.</summary>
    [JsonRequired]
    public double At4 { get; set; }

    /// <summary>Of 6 µm(c) and more.</summary>
    [JsonRequired]
    public double At6 { get; set; }

    /// <summary>Of 14 µm(c) and more.</summary>
    [JsonRequired]
    public double At14 { get; set; }
}
