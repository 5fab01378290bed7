using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>One laboratory sample.</summary>
public sealed class SampleData : ContractPart
{
    /// <summary>The laboratory's number; left out where it gave none.</summary>
    public string? SampleNumber { get; set; }

    /// <summary>When the sample was taken from the machine.</summary>
    [JsonRequired]
    public DateTimeOffset TakenAt { get; set; }

    /// <summary>What was measured.</summary>
    public IReadOnlyList<MeasuredData>? Readings { get; set; }

    /// <summary>What the laboratory wrote besides, by the header it stood under.</summary>
    public IReadOnlyDictionary<string, string>? Texts { get; set; }
}
