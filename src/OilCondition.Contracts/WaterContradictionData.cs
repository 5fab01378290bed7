using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Sensor and titrations that contradict each other.</summary>
public sealed class WaterContradictionData : ContractPart
{
    /// <summary>Mean by the titrations.</summary>
    [JsonRequired]
    public double SampleMgPerKg { get; set; }

    /// <summary>Mean by the sensor.</summary>
    [JsonRequired]
    public double SensorMgPerKg { get; set; }

    /// <summary>Uncertainty of their difference.</summary>
    [JsonRequired]
    public double UncertaintyMgPerKg { get; set; }

    /// <summary>Readings compared.</summary>
    [JsonRequired]
    public int Readings { get; set; }
}
