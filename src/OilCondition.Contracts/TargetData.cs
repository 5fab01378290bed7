using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>What a treatment is to reach.</summary>
public sealed class TargetData : ContractPart
{
    /// <summary>Water content to reach.</summary>
    public double? WaterMgPerKg { get; set; }

    /// <summary>What sets it.</summary>
    [Words(KnownWords.WaterBound)]
    public string? WaterSetBy { get; set; }

    /// <summary>What the oil holds dissolved at standstill.</summary>
    public double? SaturationAtStandstillMgPerKg { get; set; }

    /// <summary>Target of the latest treatment on record.</summary>
    public double? RecordedTargetMgPerKg { get; set; }

    /// <summary>Whether water at that target separates at standstill.</summary>
    [JsonRequired]
    public bool StandstillBreaksRecordedTarget { get; set; }

    /// <summary>Whether water at the limit separates at standstill.</summary>
    [JsonRequired]
    public bool StandstillBreaksLimit { get; set; }

    /// <summary>ISO 4406 code to reach.</summary>
    public string? Code { get; set; }

    /// <summary>The target as a sentence.</summary>
    [JsonRequired]
    public string Sentence { get; set; } = "";
}
