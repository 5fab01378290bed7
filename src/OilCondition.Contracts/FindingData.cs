using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>One finding: its facts, the sentence beside them, and the evidence.</summary>
public sealed class FindingData : ContractPart
{
    /// <summary>What was found.</summary>
    [JsonRequired]
    [Words(KnownWords.FindingCode)]
    public string Code { get; set; } = "";

    /// <summary>How much it asks for.</summary>
    [JsonRequired]
    [Words(KnownWords.Severity)]
    public string Severity { get; set; } = "";

    /// <summary>Id of the measurand that it is about.</summary>
    [JsonRequired]
    public string Measurand { get; set; } = "";

    /// <summary>On which side, where the finding has one.</summary>
    [Words(KnownWords.LimitSideButBoth)]
    public string? Side { get; set; }

    /// <summary>The reading that it is about.</summary>
    public ReadingData? Reading { get; set; }

    /// <summary>The limit that is passed or approached.</summary>
    public PassedLimitData? Limit { get; set; }

    /// <summary>The rate of change that passed a limit.</summary>
    public RateData? Rate { get; set; }

    /// <summary>The slope of the trend behind it.</summary>
    public RateData? Slope { get; set; }

    /// <summary>The first of the readings beyond the limit.</summary>
    public DateTimeOffset? Since { get; set; }

    /// <summary>The record that is at fault, with the readings concerned.</summary>
    public IssueData? Record { get; set; }

    /// <summary>Ids of several measurands that changed together.</summary>
    public IReadOnlyList<string>? Measurands { get; set; }

    /// <summary>The finding as a sentence.</summary>
    [JsonRequired]
    public string Sentence { get; set; } = "";

    /// <summary>The figures on which it rests.</summary>
    [JsonRequired]
    public IReadOnlyList<EvidenceData> Evidence { get; set; } = [];
}
