using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Where a figure, a curve or a limit comes from.</summary>
public sealed class SourceData : ContractPart
{
    /// <summary>What stands behind it.</summary>
    [JsonRequired]
    [Words(KnownWords.SourceKind)]
    public string Kind { get; set; } = "";

    /// <summary>The document, or the practice in words.</summary>
    [JsonRequired]
    public string Text { get; set; } = "";

    /// <summary>Clause, table or equation within the document.</summary>
    public string? Locator { get; set; }
}
