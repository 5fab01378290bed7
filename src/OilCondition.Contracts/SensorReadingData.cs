using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>What the sensors read at one moment.</summary>
public sealed class SensorReadingData : ContractPart
{
    /// <summary>When.</summary>
    [JsonRequired]
    public DateTimeOffset At { get; set; }

    /// <summary>What was read.</summary>
    public IReadOnlyList<MeasuredData>? Readings { get; set; }
}
