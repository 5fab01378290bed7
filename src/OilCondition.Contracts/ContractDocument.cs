using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A whole document. Its root says which it is and of which version; those that people write may leave that out.</summary>
public abstract class ContractDocument : ContractPart
{
    /// <summary>Address of the schema, for editors; the library passes it over.</summary>
    [JsonPropertyName("$schema")]
    [JsonPropertyOrder(-3)]
    public string? Schema { get; set; }

    /// <summary>Which document it is.</summary>
    [JsonPropertyOrder(-2)]
    public string? Format { get; set; }

    /// <summary>Its version. The first figure rises when an old reader would misread it, the second when fields or words are added.</summary>
    [JsonPropertyOrder(-1)]
    public string? Version { get; set; }
}
