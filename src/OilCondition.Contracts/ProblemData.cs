using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Everything that was found about one topic.</summary>
public sealed class ProblemData : ContractPart
{
    /// <summary>The word by which alerts and recommendations join it.</summary>
    [JsonRequired]
    public string Subject { get; set; } = "";

    /// <summary>What it is about.</summary>
    [JsonRequired]
    [Words(KnownWords.ProblemTopic)]
    public string Topic { get; set; } = "";

    /// <summary>On which side, where the topic alone does not say it.</summary>
    [Words(KnownWords.LimitSideButBoth)]
    public string? Side { get; set; }

    /// <summary>Severity of its gravest finding.</summary>
    [JsonRequired]
    [Words(KnownWords.Severity)]
    public string Severity { get; set; } = "";

    /// <summary>What is wrong, in one sentence.</summary>
    [JsonRequired]
    public string Statement { get; set; } = "";

    /// <summary>What was found, gravest first.</summary>
    [JsonRequired]
    public IReadOnlyList<FindingData> Findings { get; set; } = [];
}
