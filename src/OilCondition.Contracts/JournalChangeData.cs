using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>One change of an alert.</summary>
[Variant("kind", "acknowledged", "by", "")]
[Variant("kind", KnownWords.JournalChangeKindButAcknowledged, "", "by")]
public sealed class JournalChangeData : ContractPart
{
    /// <summary>The change, by the word with which it is confirmed.</summary>
    public string? Id { get; set; }

    /// <summary>What happened.</summary>
    [JsonRequired]
    [Words(KnownWords.JournalChangeKind)]
    public string Kind { get; set; } = "";

    /// <summary>When.</summary>
    [JsonRequired]
    public DateTimeOffset At { get; set; }

    /// <summary>The severity from then on.</summary>
    [JsonRequired]
    [Words(KnownWords.SeverityButInformation)]
    public string Severity { get; set; } = "";

    /// <summary>What was to be said then.</summary>
    [JsonRequired]
    public string Sentence { get; set; } = "";

    /// <summary>The evidence of a change that asks for something.</summary>
    public IReadOnlyList<string>? Evidence { get; set; }

    /// <summary>Who acknowledged it.</summary>
    public string? By { get; set; }

    /// <summary>Whether it has been delivered.</summary>
    public bool? Confirmed { get; set; }
}
