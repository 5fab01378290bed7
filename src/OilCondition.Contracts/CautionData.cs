using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>What to beware of.</summary>
public sealed class CautionData : ContractPart
{
    /// <summary>The caution.</summary>
    [JsonRequired]
    [Words(KnownWords.Caution)]
    public string Caution { get; set; } = "";

    /// <summary>The caution as a sentence.</summary>
    [JsonRequired]
    public string Sentence { get; set; } = "";
}
