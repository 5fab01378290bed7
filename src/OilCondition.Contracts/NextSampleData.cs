using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>When the next sample is due.</summary>
public sealed class NextSampleData : ContractPart
{
    /// <summary>When.</summary>
    [JsonRequired]
    public DateTimeOffset At { get; set; }

    /// <summary>Why then.</summary>
    [JsonRequired]
    [Words(KnownWords.NextSampleReason)]
    public string Reason { get; set; } = "";

    /// <summary>Whether that has passed.</summary>
    [JsonRequired]
    public bool Overdue { get; set; }
}
