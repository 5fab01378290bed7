using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The limits for one kind of machine, as <c>LimitSet.ToJson</c> writes and <c>LimitSet.Parse</c> reads them.</summary>
public sealed class LimitSetDocument : ContractDocument
{
    /// <summary>What it is for.</summary>
    [JsonRequired]
    public string Name { get; set; } = "";

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }

    /// <summary>The limits.</summary>
    [JsonRequired]
    public IReadOnlyList<LimitData> Limits { get; set; } = [];
}
