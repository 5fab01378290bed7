using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>What happens if nothing is done.</summary>
public sealed class WaitingData : ContractPart
{
    /// <summary>Hours with free water until now.</summary>
    public double? FreeWaterHoursSoFar { get; set; }

    /// <summary>Hours until now in which water separates when the machine stops.</summary>
    public double? FreeIfStoppedHoursSoFar { get; set; }

    /// <summary>What happens until certain moments.</summary>
    [JsonRequired]
    public IReadOnlyList<WaitingStepData> Until { get; set; } = [];
}
