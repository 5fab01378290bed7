using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Why a run stalls.</summary>
public sealed class DiagnosisData : ContractPart
{
    /// <summary>What can be said.</summary>
    [JsonRequired]
    [Words(KnownWords.StallVerdict)]
    public string Verdict { get; set; } = "";

    /// <summary>The figures on which that rests.</summary>
    [JsonRequired]
    public IReadOnlyList<EvidenceData> Evidence { get; set; } = [];

    /// <summary>The causes, likeliest first.</summary>
    [JsonRequired]
    public IReadOnlyList<CauseData> Causes { get; set; } = [];
}
