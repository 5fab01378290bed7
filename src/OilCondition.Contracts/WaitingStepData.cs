using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>What happens until one moment.</summary>
public sealed class WaitingStepData : ContractPart
{
    /// <summary>Until when, in words.</summary>
    [JsonRequired]
    public string Name { get; set; } = "";

    /// <summary>Until when.</summary>
    [JsonRequired]
    public DateTimeOffset At { get; set; }

    /// <summary>Chance of passing the alert figure.</summary>
    public double? ChanceOfAlert { get; set; }

    /// <summary>Chance of passing the alarm figure.</summary>
    public double? ChanceOfAlarm { get; set; }

    /// <summary>Hours with free water.</summary>
    public double? FreeWaterHours { get; set; }

    /// <summary>Hours in which water separates when the machine stops.</summary>
    public double? FreeIfStoppedHours { get; set; }
}
