using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>One alert.</summary>
public sealed class JournalAlertData : ContractPart
{
    /// <summary>Machine, charge and subject of the problem.</summary>
    [JsonRequired]
    public string Key { get; set; } = "";

    /// <summary>The machine's id.</summary>
    public string? Machine { get; set; }

    /// <summary>Alert or alarm, as last assessed.</summary>
    [JsonRequired]
    [Words(KnownWords.SeverityButInformation)]
    public string Severity { get; set; } = "";

    /// <summary>Where it stands.</summary>
    [JsonRequired]
    [Words(KnownWords.AlertState)]
    public string State { get; set; } = "";

    /// <summary>The latest assessment that found it.</summary>
    [JsonRequired]
    public DateTimeOffset LastSeenAt { get; set; }

    /// <summary>The statement of its problem, as last assessed.</summary>
    [JsonRequired]
    public string Sentence { get; set; } = "";

    /// <summary>Reference of the work order.</summary>
    public string? WorkOrder { get; set; }

    /// <summary>What happened to it, in order.</summary>
    [JsonRequired]
    public IReadOnlyList<JournalChangeData> Changes { get; set; } = [];
}
