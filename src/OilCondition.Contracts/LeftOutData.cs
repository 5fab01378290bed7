using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A reading that a trend left out.</summary>
public sealed class LeftOutData : ContractPart
{
    /// <summary>The reading.</summary>
    [JsonRequired]
    public ReadingData Reading { get; set; } = new();

    /// <summary>Why.</summary>
    [JsonRequired]
    [Words(KnownWords.LeftOutReason)]
    public string Reason { get; set; } = "";
}
