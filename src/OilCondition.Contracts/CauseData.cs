using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A cause of a stall.</summary>
public sealed class CauseData : ContractPart
{
    /// <summary>The cause.</summary>
    [JsonRequired]
    [Words(KnownWords.StallCauseKind)]
    public string Cause { get; set; } = "";

    /// <summary>Its share of the weight of all causes, 0 to 1.</summary>
    [JsonRequired]
    public double Share { get; set; }

    /// <summary>The figures on which it rests.</summary>
    [JsonRequired]
    public IReadOnlyList<EvidenceData> Evidence { get; set; } = [];

    /// <summary>What to look at.</summary>
    [JsonRequired]
    [Words(KnownWords.StallCheck)]
    public IReadOnlyList<string> Checks { get; set; } = [];
}
