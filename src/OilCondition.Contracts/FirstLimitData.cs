using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A limit that may be the first to be crossed.</summary>
public sealed class FirstLimitData : ContractPart
{
    /// <summary>Id of the measurand.</summary>
    [JsonRequired]
    public string Measurand { get; set; } = "";

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

    /// <summary>The chance.</summary>
    [JsonRequired]
    public double ChanceOfBeingFirst { get; set; }
}
