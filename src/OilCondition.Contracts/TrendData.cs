using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Whether the readings of a measurand move.</summary>
public sealed class TrendData : ContractPart
{
    /// <summary>Rising, falling, neither, or too few readings.</summary>
    [JsonRequired]
    [Words(KnownWords.TrendVerdict)]
    public string Verdict { get; set; } = "";

    /// <summary>The method that judged.</summary>
    [JsonRequired]
    [Words(KnownWords.TrendMethod)]
    public string Method { get; set; } = "";

    /// <summary>Why that method, and what is odd about the readings.</summary>
    [JsonRequired]
    [Words(KnownWords.TrendReason)]
    public IReadOnlyList<string> Reasons { get; set; } = [];

    /// <summary>Whether time is counted by the calendar or by oil hours.</summary>
    [JsonRequired]
    [Words(KnownWords.Axis)]
    public string Axis { get; set; } = "";

    /// <summary>Mean duty, where time is counted by oil hours.</summary>
    public double? OilHoursPerDay { get; set; }

    /// <summary>The slope.</summary>
    [JsonRequired]
    public RateData Slope { get; set; } = new();

    /// <summary>Probability of a slope as clear by scatter alone.</summary>
    [JsonRequired]
    public double ChanceByScatter { get; set; }

    /// <summary>Readings used.</summary>
    [JsonRequired]
    public int ReadingsUsed { get; set; }

    /// <summary>Readings left out.</summary>
    [JsonRequired]
    public IReadOnlyList<LeftOutData> LeftOut { get; set; } = [];
}
