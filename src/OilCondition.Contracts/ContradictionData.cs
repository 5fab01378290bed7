using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Sensor and samples that contradict each other.</summary>
public sealed class ContradictionData : ContractPart
{
    /// <summary>Mean by the samples.</summary>
    [JsonRequired]
    public double Samples { get; set; }

    /// <summary>Mean by the sensor.</summary>
    [JsonRequired]
    public double Sensor { get; set; }

    /// <summary>Uncertainty of their difference.</summary>
    [JsonRequired]
    public double Uncertainty { get; set; }

    /// <summary>Readings compared.</summary>
    [JsonRequired]
    public int Readings { get; set; }
}
