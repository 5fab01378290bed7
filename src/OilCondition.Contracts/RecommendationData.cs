using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Something to do.</summary>
public sealed class RecommendationData : ContractPart
{
    /// <summary>What to do.</summary>
    [JsonRequired]
    [Words(KnownWords.RecommendedAction)]
    public string Action { get; set; } = "";

    /// <summary>Severity of the gravest reason.</summary>
    [JsonRequired]
    [Words(KnownWords.Severity)]
    public string Severity { get; set; } = "";

    /// <summary>The recommendation as a sentence.</summary>
    [JsonRequired]
    public string Sentence { get; set; } = "";

    /// <summary>The problems that ask for it, by their subjects.</summary>
    [JsonRequired]
    public IReadOnlyList<string> Subjects { get; set; } = [];

    /// <summary>The findings that ask for it.</summary>
    [JsonRequired]
    public IReadOnlyList<ReasonData> Reasons { get; set; } = [];

    /// <summary>How much, by when.</summary>
    [JsonRequired]
    public IReadOnlyList<EvidenceData> Quantities { get; set; } = [];

    /// <summary>What to beware of.</summary>
    [JsonRequired]
    public IReadOnlyList<CautionData> Cautions { get; set; } = [];
}
