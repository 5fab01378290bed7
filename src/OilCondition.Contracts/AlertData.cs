using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A problem that belongs into the maintenance system.</summary>
public sealed class AlertData : ContractPart
{
    /// <summary>The same for the same problem on every day.</summary>
    [JsonRequired]
    public string Key { get; set; } = "";

    /// <summary>The problem, by its subject.</summary>
    [JsonRequired]
    public string Subject { get; set; } = "";

    /// <summary>Alert or alarm.</summary>
    [JsonRequired]
    [Words(KnownWords.SeverityButInformation)]
    public string Severity { get; set; } = "";

    /// <summary>What is wrong, in one sentence.</summary>
    [JsonRequired]
    public string Statement { get; set; } = "";
}
