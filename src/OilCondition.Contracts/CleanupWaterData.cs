using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The balance of the water of a run.</summary>
public sealed class CleanupWaterData : ContractPart
{
    /// <summary>Whose readings it follows.</summary>
    [JsonRequired]
    [Words(KnownWords.WaterSource)]
    public string Source { get; set; } = "";

    /// <summary>Before the run.</summary>
    [JsonRequired]
    public double BeforeMgPerKg { get; set; }

    /// <summary>At its end.</summary>
    public double? LastMgPerKg { get; set; }

    /// <summary>To be reached.</summary>
    [JsonRequired]
    public double TargetMgPerKg { get; set; }

    /// <summary>What the oil lost.</summary>
    public IntervalData? RemovedByBalanceLitres { get; set; }

    /// <summary>What came in meanwhile.</summary>
    public IntervalData? CameInLitres { get; set; }

    /// <summary>What the unit drew off.</summary>
    public IntervalData? DrawnOffLitres { get; set; }

    /// <summary>Share of the vapour that leaves with the exhaust.</summary>
    public double? ExhaustShare { get; set; }

    /// <summary>What was to be condensed.</summary>
    public IntervalData? CondensateExpectedLitres { get; set; }

    /// <summary>What was collected.</summary>
    public double? CondensateLitres { get; set; }

    /// <summary>Collected less expected.</summary>
    public double? CondensateDifferenceLitres { get; set; }

    /// <summary>Whether the condensate agrees with the balance.</summary>
    [JsonRequired]
    [Words(KnownWords.CondensateAgreement)]
    public string Condensate { get; set; } = "";

    /// <summary>What a difference can come from.</summary>
    [JsonRequired]
    [Words(KnownWords.CondensateReason)]
    public IReadOnlyList<string> CondensateReasons { get; set; } = [];
}
