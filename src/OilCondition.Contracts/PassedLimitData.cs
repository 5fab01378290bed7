using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The limit that a finding is about.</summary>
public sealed class PassedLimitData : ContractPart
{
    /// <summary>What its figures are measured from.</summary>
    [JsonRequired]
    [Words(KnownWords.LimitKind)]
    public string Kind { get; set; } = "";

    /// <summary>Whether the figure is that of the alert or of the alarm.</summary>
    [JsonRequired]
    [Words(KnownWords.LimitStateButNotDeterminedAndNormal)]
    public string Zone { get; set; } = "";

    /// <summary>The figure, in the unit beside it.</summary>
    [JsonRequired]
    public double Value { get; set; }

    /// <summary>Its unit; of a rate, per the span beside it.</summary>
    [JsonRequired]
    public string Unit { get; set; } = "";

    /// <summary>Span of a rate of change in days.</summary>
    public double? PerDays { get; set; }

    /// <summary>Span of a rate of change in oil hours.</summary>
    public double? PerOilHours { get; set; }

    /// <summary>Where the figure comes from.</summary>
    [JsonRequired]
    public SourceData Source { get; set; } = new();
}
