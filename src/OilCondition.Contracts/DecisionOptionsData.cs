using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The options of a decision.</summary>
public sealed class DecisionOptionsData : ContractPart
{
    /// <summary>Share of the cases in which a way must meet its target.</summary>
    [JsonRequired]
    public double Confidence { get; set; }

    /// <summary>Chance of passing the alarm figure at which a treatment must be done.</summary>
    [JsonRequired]
    public double AcceptedRisk { get; set; }

    /// <summary>How long an alarm may stand.</summary>
    [JsonRequired]
    public double AlarmResponseDays { get; set; }

    /// <summary>How long an alert without a forecast may stand.</summary>
    [JsonRequired]
    public double AlertResponseDays { get; set; }

    /// <summary>Share of a figure at which a target is set.</summary>
    [JsonRequired]
    public double Margin { get; set; }

    /// <summary>The rule by which the options are ranked.</summary>
    [JsonRequired]
    public string Rule { get; set; } = "";
}
