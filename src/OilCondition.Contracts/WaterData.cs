using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The water in the oil at running and standstill temperature.</summary>
public sealed class WaterData : ContractPart
{
    /// <summary>Whether it could be split into dissolved and free.</summary>
    [JsonRequired]
    [Words(KnownWords.WaterOutcome)]
    public string Outcome { get; set; } = "";

    /// <summary>The reading that was split.</summary>
    public ReadingData? Total { get; set; }

    /// <summary>At running temperature.</summary>
    public WaterStateData? Running { get; set; }

    /// <summary>After the machine has cooled down.</summary>
    public WaterStateData? Standstill { get; set; }

    /// <summary>Whether water separates when the oil cools.</summary>
    [Words(KnownWords.Separation)]
    public string? Separation { get; set; }

    /// <summary>Temperature at which the oil is just saturated.</summary>
    public double? SeparationCelsius { get; set; }

    /// <summary>Free water of the whole charge at standstill.</summary>
    public double? FreeAtStandstillLitres { get; set; }

    /// <summary>Name of the saturation curve.</summary>
    public string? Curve { get; set; }

    /// <summary>Where the curve comes from.</summary>
    public SourceData? CurveSource { get; set; }
}
