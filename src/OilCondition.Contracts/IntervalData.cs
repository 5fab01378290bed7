using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A figure with its interval.</summary>
public sealed class IntervalData : ContractPart
{
    /// <summary>The estimate.</summary>
    public double? Estimate { get; set; }

    /// <summary>Lower end.</summary>
    public double? Lower { get; set; }

    /// <summary>Upper end.</summary>
    public double? Upper { get; set; }

    /// <summary>Confidence of the interval.</summary>
    [JsonRequired]
    public double Confidence { get; set; }

    /// <summary>How far it could be found.</summary>
    [JsonRequired]
    [Words(KnownWords.CleanupFigureOutcome)]
    public string Outcome { get; set; } = "";
}
