using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A limit set inside a station file.</summary>
public sealed class LimitSetData : ContractPart
{
    /// <summary>What it is for; machines name it.</summary>
    [JsonRequired]
    public string Name { get; set; } = "";

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }

    /// <summary>The limits.</summary>
    [JsonRequired]
    public IReadOnlyList<LimitData> Limits { get; set; } = [];
}
