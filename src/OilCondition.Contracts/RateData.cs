using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A rate of change, or the slope of a trend.</summary>
public sealed class RateData : ContractPart
{
    /// <summary>The rate, in the unit beside it per the span beside it.</summary>
    [JsonRequired]
    public double Value { get; set; }

    /// <summary>Lower end of its interval, at the confidence of the options.</summary>
    public double? Lower { get; set; }

    /// <summary>Upper end of its interval.</summary>
    public double? Upper { get; set; }

    /// <summary>Unit of the change; empty on the logarithmic scale.</summary>
    [JsonRequired]
    public string Unit { get; set; } = "";

    /// <summary>Linear, or logarithmic: then it is a rate of the natural logarithm.</summary>
    [JsonRequired]
    [Words(KnownWords.NaturalScale)]
    public string Scale { get; set; } = "";

    /// <summary>The span in days; over oil hours, days at the mean duty.</summary>
    public double? PerDays { get; set; }

    /// <summary>The span in oil hours.</summary>
    public double? PerOilHours { get; set; }
}
