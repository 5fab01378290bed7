using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Oil temperatures of a run in °C.</summary>
public sealed class TemperatureData : ContractPart
{
    /// <summary>The lowest.</summary>
    public double? Lowest { get; set; }

    /// <summary>The highest.</summary>
    public double? Highest { get; set; }

    /// <summary>The last.</summary>
    [JsonRequired]
    public double Last { get; set; }

    /// <summary>The one to which readings are referred.</summary>
    [JsonRequired]
    public double Reference { get; set; }

    /// <summary>Whether they are.</summary>
    [JsonRequired]
    public bool Referred { get; set; }
}
