using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A time in which a machine stands.</summary>
public sealed class OutageData : ContractPart
{
    /// <summary>Its name.</summary>
    [JsonRequired]
    public string Name { get; set; } = "";

    /// <summary>Its begin.</summary>
    [JsonRequired]
    public DateTimeOffset From { get; set; }

    /// <summary>Its end.</summary>
    [JsonRequired]
    public DateTimeOffset To { get; set; }

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }
}
