using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A figure that a decision rests on, with its source.</summary>
public sealed class FigureData : EvidenceData
{
    /// <summary>Where it comes from.</summary>
    [JsonRequired]
    public SourceData Source { get; set; } = new();

    /// <summary>Whether nobody stated it and common practice stands in.</summary>
    [JsonRequired]
    public bool Assumed { get; set; }
}
