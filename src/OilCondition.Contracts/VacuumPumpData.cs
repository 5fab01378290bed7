using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A vacuum pump.</summary>
[Variant("kind", "liquid-ring", "ringWaterCelsius", "")]
[Variant("kind", "dry", "", "ultimateMillibar")]
[Variant("kind", "oil-sealed", "vapourToleranceMillibar", "ultimateMillibar gasBallast")]
public sealed class VacuumPumpData : ContractPart
{
    /// <summary>How it works.</summary>
    [JsonRequired]
    [Words(KnownWords.PumpKind)]
    public string Kind { get; set; } = "";

    /// <summary>Its capacity.</summary>
    [JsonRequired]
    public double CubicMetresPerHour { get; set; }

    /// <summary>Temperature of the ring water.</summary>
    public double? RingWaterCelsius { get; set; }

    /// <summary>Lowest pressure that it reaches.</summary>
    public double? UltimateMillibar { get; set; }

    /// <summary>Highest pressure of water vapour that it takes.</summary>
    public double? VapourToleranceMillibar { get; set; }

    /// <summary>Whether it runs with gas ballast.</summary>
    public bool? GasBallast { get; set; }
}
