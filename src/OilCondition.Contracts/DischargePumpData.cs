using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The pump that draws the oil from a chamber.</summary>
public sealed class DischargePumpData : ContractPart
{
    /// <summary>Its flow.</summary>
    [JsonRequired]
    public double LitresPerMinute { get; set; }

    /// <summary>Height of the oil above it.</summary>
    [JsonRequired]
    public double HeightMetres { get; set; }

    /// <summary>Length of its suction pipe.</summary>
    [JsonRequired]
    public double SuctionMetres { get; set; }

    /// <summary>Inner diameter of that pipe.</summary>
    [JsonRequired]
    public double SuctionMillimetres { get; set; }

    /// <summary>Head that it needs at its inlet.</summary>
    [JsonRequired]
    public double HeadNeededMetres { get; set; }

    /// <summary>Whether its speed follows.</summary>
    public bool? VariableSpeed { get; set; }
}
