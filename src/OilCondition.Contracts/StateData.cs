using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Where one measurand stands.</summary>
public sealed class StateData : ContractPart
{
    /// <summary>Its id.</summary>
    [JsonRequired]
    public string Measurand { get; set; } = "";

    /// <summary>Its unit; empty for a plain number.</summary>
    [JsonRequired]
    public string Unit { get; set; } = "";

    /// <summary>The gravest comparison with a limit.</summary>
    [JsonRequired]
    [Words(KnownWords.LimitState)]
    public string State { get; set; } = "";

    /// <summary>Why.</summary>
    [JsonRequired]
    [Words(KnownWords.LimitReason)]
    public string Reason { get; set; } = "";

    /// <summary>The comparison with each of its limits.</summary>
    [JsonRequired]
    public IReadOnlyList<LimitStateData> Limits { get; set; } = [];

    /// <summary>The latest reading of this charge; left out where there is none.</summary>
    public ReadingData? Latest { get; set; }

    /// <summary>Whether top-ups were corrected in the readings of the trend.</summary>
    [JsonRequired]
    [Words(KnownWords.TopUpOutcome)]
    public string TopUps { get; set; } = "";

    /// <summary>Whether the readings move.</summary>
    [JsonRequired]
    public TrendData Trend { get; set; } = new();

    /// <summary>Remaining life on each limited side; empty while the measurand is treated.</summary>
    [JsonRequired]
    public IReadOnlyList<RemainingLifeData> RemainingLife { get; set; } = [];
}
