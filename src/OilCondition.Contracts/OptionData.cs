using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>One way to treat the oil, or waiting.</summary>
public sealed class OptionData : ContractPart
{
    /// <summary>Its id in the station file.</summary>
    [JsonRequired]
    public string Id { get; set; } = "";

    /// <summary>Its name.</summary>
    [JsonRequired]
    public string Name { get; set; } = "";

    /// <summary>Whether it meets the target in time, and if not what rules it out.</summary>
    [JsonRequired]
    [Words(KnownWords.OptionVerdict)]
    public string Verdict { get; set; } = "";

    /// <summary>What rules it out, in words.</summary>
    public string? RuledOut { get; set; }

    /// <summary>The experience by which it is planned.</summary>
    public string? PlannedBy { get; set; }

    /// <summary>Why the physics does not reach the target.</summary>
    [Words(KnownWords.WhyNot)]
    public string? WhyNot { get; set; }

    /// <summary>Chance that it reaches the target.</summary>
    [JsonRequired]
    public double Probability { get; set; }

    /// <summary>Chance that it does so in time.</summary>
    [JsonRequired]
    public double ProbabilityInTime { get; set; }

    /// <summary>When it can begin.</summary>
    public DateTimeOffset? Begins { get; set; }

    /// <summary>Done by then in one case of ten.</summary>
    public DateTimeOffset? DoneP10 { get; set; }

    /// <summary>Done by then in half of the cases.</summary>
    public DateTimeOffset? DoneP50 { get; set; }

    /// <summary>Done by then in nine cases of ten.</summary>
    public DateTimeOffset? DoneP90 { get; set; }

    /// <summary>Hours of treatment, tenth percentile.</summary>
    public double? HoursP10 { get; set; }

    /// <summary>Hours of treatment, median.</summary>
    public double? HoursP50 { get; set; }

    /// <summary>Hours of treatment, ninetieth percentile.</summary>
    public double? HoursP90 { get; set; }

    /// <summary>For how long it binds the equipment.</summary>
    public double? BoundHours { get; set; }

    /// <summary>Lowest water content that it reaches, median.</summary>
    public double? FloorP50MgPerKg { get; set; }

    /// <summary>Energy that it takes.</summary>
    public double? EnergyKilowattHours { get; set; }

    /// <summary>Elements that it takes.</summary>
    public double? Elements { get; set; }

    /// <summary>New oil that it takes.</summary>
    public double? NewOilLitres { get; set; }

    /// <summary>Cost, tenth percentile, in the currency beside it.</summary>
    public double? CostP10 { get; set; }

    /// <summary>Cost, median.</summary>
    public double? CostP50 { get; set; }

    /// <summary>Cost, ninetieth percentile.</summary>
    public double? CostP90 { get; set; }

    /// <summary>The currency of the station file.</summary>
    public string? Currency { get; set; }

    /// <summary>Whether every price was known.</summary>
    [JsonRequired]
    public bool CostComplete { get; set; }

    /// <summary>When the alert is expected back after it.</summary>
    public DateTimeOffset? AlertBack { get; set; }

    /// <summary>The option as a sentence.</summary>
    [JsonRequired]
    public string Sentence { get; set; } = "";
}
