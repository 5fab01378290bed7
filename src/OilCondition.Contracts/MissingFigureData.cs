using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A percentile that a fleet did not give, while it may have given the others of the limit.</summary>
public sealed class MissingFigureData : ContractPart
{
    /// <summary>Side of the limit.</summary>
    [JsonRequired]
    [Words(KnownWords.LimitSideButBoth)]
    public string Side { get; set; } = "";

    /// <summary>The zone that the figure would begin.</summary>
    [JsonRequired]
    [Words(KnownWords.LimitStateButNotDeterminedAndNormal)]
    public string Zone { get; set; } = "";

    /// <summary>The percentile that was asked for, in %.</summary>
    [JsonRequired]
    public double Percentile { get; set; }

    /// <summary>Why it is missing.</summary>
    [JsonRequired]
    [Words(KnownWords.LimitReason)]
    public string Reason { get; set; } = "";

    /// <summary>Oil charges of the fleet with a reading.</summary>
    [JsonRequired]
    public int Charges { get; set; }

    /// <summary>Oil charges with a reading that the percentile takes at least.</summary>
    [JsonRequired]
    public int ChargesNeeded { get; set; }
}
