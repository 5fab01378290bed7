using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The options of an assessment, as far as they change its outcome.</summary>
public sealed class AssessmentOptionsData : ContractPart
{
    /// <summary>How far ahead maintenance is planned.</summary>
    [JsonRequired]
    public double PlanningHorizonDays { get; set; }

    /// <summary>Confidence of intervals, above 0 and below 1.</summary>
    [JsonRequired]
    public double Confidence { get; set; }

    /// <summary>Largest probability of a slope by scatter alone at which a trend counts.</summary>
    [JsonRequired]
    public double TrendSignificance { get; set; }

    /// <summary>Whether trends run over oil hours, where samples have them.</summary>
    [JsonRequired]
    public bool OverOilHours { get; set; }

    /// <summary>Accepted chance of passing a limit before the next sample.</summary>
    [JsonRequired]
    public double SamplingRisk { get; set; }

    /// <summary>Shortest interval of sampling.</summary>
    [JsonRequired]
    public double ShortestSamplingDays { get; set; }

    /// <summary>Longest interval of sampling.</summary>
    [JsonRequired]
    public double LongestSamplingDays { get; set; }

    /// <summary>Ids of the measurands for which other machines taught about remaining life.</summary>
    [JsonRequired]
    public IReadOnlyList<string> FleetMeasurands { get; set; } = [];
}
