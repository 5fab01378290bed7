using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>When a limit is likely to be crossed.</summary>
public sealed class RemainingLifeData : ContractPart
{
    /// <summary>Side of the limit.</summary>
    [JsonRequired]
    [Words(KnownWords.LimitSideButBoth)]
    public string Side { get; set; } = "";

    /// <summary>The figure, in the unit beside it.</summary>
    [JsonRequired]
    public double Limit { get; set; }

    /// <summary>Its unit.</summary>
    [JsonRequired]
    public string Unit { get; set; } = "";

    /// <summary>What can be said.</summary>
    [JsonRequired]
    [Words(KnownWords.LifeOutcome)]
    public string Outcome { get; set; } = "";

    /// <summary>Crossed by then in one case of ten.</summary>
    public DateTimeOffset? P10 { get; set; }

    /// <summary>Crossed by then in half of the cases.</summary>
    public DateTimeOffset? P50 { get; set; }

    /// <summary>Crossed by then in nine cases of ten.</summary>
    public DateTimeOffset? P90 { get; set; }
}
