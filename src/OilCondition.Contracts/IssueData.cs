using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Something wrong with the records.</summary>
public sealed class IssueData : ContractPart
{
    /// <summary>What.</summary>
    [JsonRequired]
    [Words(KnownWords.HistoryIssueKind)]
    public string Kind { get; set; } = "";

    /// <summary>When the sample was taken or the sensor read.</summary>
    [JsonRequired]
    public DateTimeOffset At { get; set; }

    /// <summary>The laboratory's number; left out for a sensor.</summary>
    public string? SampleNumber { get; set; }

    /// <summary>The readings concerned.</summary>
    public IReadOnlyList<MeasuredData>? Readings { get; set; }

    /// <summary>What the laboratory wrote besides on the report concerned, by the header it stood under.</summary>
    public IReadOnlyDictionary<string, string>? Texts { get; set; }
}
