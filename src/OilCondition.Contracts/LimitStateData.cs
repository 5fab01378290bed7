using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>One limit, and how the readings compare with it.</summary>
public sealed class LimitStateData : ContractPart
{
    /// <summary>What its figures are measured from.</summary>
    [JsonRequired]
    [Words(KnownWords.LimitKind)]
    public string Kind { get; set; } = "";

    /// <summary>Where the reading stands.</summary>
    [JsonRequired]
    [Words(KnownWords.LimitState)]
    public string State { get; set; } = "";

    /// <summary>Why.</summary>
    [JsonRequired]
    [Words(KnownWords.LimitReason)]
    public string Reason { get; set; } = "";

    /// <summary>The upper figures that were compared with.</summary>
    public BandData? Upper { get; set; }

    /// <summary>The lower figures that were compared with.</summary>
    public BandData? Lower { get; set; }

    /// <summary>Unit of the figures; of a rate, per the span beside it.</summary>
    [JsonRequired]
    public string Unit { get; set; } = "";

    /// <summary>Span of a rate of change in days.</summary>
    public double? PerDays { get; set; }

    /// <summary>Span of a rate of change in oil hours.</summary>
    public double? PerOilHours { get; set; }

    /// <summary>The latest rate of change, for a limit of that kind.</summary>
    public RateData? Rate { get; set; }

    /// <summary>Side of the figure that was passed.</summary>
    [Words(KnownWords.LimitSideButBoth)]
    public string? Side { get; set; }

    /// <summary>The figure that was passed, or whose passing waits for confirmation.</summary>
    public double? Passed { get; set; }

    /// <summary>The first of the readings that made the state.</summary>
    public DateTimeOffset? Since { get; set; }

    /// <summary>The zone that waits for confirmation.</summary>
    [Words(KnownWords.LimitStateButNotDeterminedAndNormal)]
    public string? Pending { get; set; }

    /// <summary>Where the figures come from.</summary>
    [JsonRequired]
    public SourceData Source { get; set; } = new();

    /// <summary>Percentiles that the fleet did not give; left out where it gave all of them.</summary>
    public IReadOnlyList<MissingFigureData>? MissingFigures { get; set; }
}
