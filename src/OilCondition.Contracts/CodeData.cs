using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>ISO 4406 codes of a run.</summary>
public sealed class CodeData : ContractPart
{
    /// <summary>Before.</summary>
    [JsonRequired]
    public string Before { get; set; } = "";

    /// <summary>After.</summary>
    [JsonRequired]
    public string After { get; set; } = "";

    /// <summary>To be reached.</summary>
    public string? Target { get; set; }
}
