using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A finding that asks for something.</summary>
public sealed class ReasonData : ContractPart
{
    /// <summary>What was found.</summary>
    [JsonRequired]
    [Words(KnownWords.FindingCode)]
    public string Code { get; set; } = "";

    /// <summary>Id of the measurand.</summary>
    [JsonRequired]
    public string Measurand { get; set; } = "";
}
