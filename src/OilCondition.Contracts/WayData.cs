using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>How long a way takes.</summary>
public sealed class WayData : ContractPart
{
    /// <summary>One place.</summary>
    [JsonRequired]
    public string From { get; set; } = "";

    /// <summary>The other place.</summary>
    [JsonRequired]
    public string To { get; set; } = "";

    /// <summary>Hours on the way.</summary>
    [JsonRequired]
    public double Hours { get; set; }

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }
}
