using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The limits of one measurand.</summary>
[AnyOf("upper lower")]
[Variant("kind", "rate-of-change", "perDays/perOilHours", "perDays perOilHours")]
[Variant("kind", KnownWords.LimitKindButRateOfChange, "", "")]
public sealed class LimitData : ContractPart
{
    /// <summary>Id of what is limited.</summary>
    [JsonRequired]
    public string Measurand { get; set; } = "";

    /// <summary>What the figures are measured from.</summary>
    [JsonRequired]
    [Words(KnownWords.LimitKind)]
    public string Kind { get; set; } = "";

    /// <summary>Unit of the figures; left out for that of the measurand, or for %.</summary>
    public string? Unit { get; set; }

    /// <summary>Figures not to be exceeded.</summary>
    public BandData? Upper { get; set; }

    /// <summary>Figures not to be undercut.</summary>
    public BandData? Lower { get; set; }

    /// <summary>How far inside a figure a reading must come back before the state falls again.</summary>
    public double? DeadBand { get; set; }

    /// <summary>Successive readings beyond a figure that it takes to believe it.</summary>
    public int? Confirmations { get; set; }

    /// <summary>Span of a rate of change in days.</summary>
    public double? PerDays { get; set; }

    /// <summary>Span of a rate of change in oil hours.</summary>
    public double? PerOilHours { get; set; }

    /// <summary>Where the figures come from.</summary>
    [JsonRequired]
    public SourceData Source { get; set; } = new();

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }
}
