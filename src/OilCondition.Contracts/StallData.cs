using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A part of the target that stalls.</summary>
public sealed class StallData : ContractPart
{
    /// <summary>The part: water, or a particle size.</summary>
    [JsonRequired]
    public string Part { get; set; } = "";

    /// <summary>What tells of it.</summary>
    [JsonRequired]
    [Words(KnownWords.StallSignButNone)]
    public string Sign { get; set; } = "";

    /// <summary>The figures on which that rests.</summary>
    [JsonRequired]
    public IReadOnlyList<EvidenceData> Evidence { get; set; } = [];
}
