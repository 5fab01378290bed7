using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The exponential fall through the readings of a run.</summary>
public sealed class FitData : ContractPart
{
    /// <summary>How the fit ended.</summary>
    [JsonRequired]
    [Words(KnownWords.ExponentialDecayStatus)]
    public string Status { get; set; } = "";

    /// <summary>Readings used.</summary>
    [JsonRequired]
    public int Readings { get; set; }

    /// <summary>Readings of an initial phase.</summary>
    [JsonRequired]
    public int LeftOut { get; set; }

    /// <summary>Origin of its time.</summary>
    public DateTimeOffset? Origin { get; set; }

    /// <summary>Where it starts.</summary>
    public double? StartMgPerKg { get; set; }

    /// <summary>Where it levels off.</summary>
    public double? FloorMgPerKg { get; set; }

    /// <summary>Lower end of the floor.</summary>
    public double? FloorLowerMgPerKg { get; set; }

    /// <summary>Upper end of the floor.</summary>
    public double? FloorUpperMgPerKg { get; set; }

    /// <summary>Its rate.</summary>
    public double? RatePerHour { get; set; }

    /// <summary>Lower end of the rate.</summary>
    public double? RateLowerPerHour { get; set; }

    /// <summary>Upper end of the rate.</summary>
    public double? RateUpperPerHour { get; set; }

    /// <summary>Scatter of the readings at the end.</summary>
    public double? ScatterMgPerKg { get; set; }

    /// <summary>Whether its intervals are too narrow, since readings follow one another.</summary>
    public bool? CoverageInDoubt { get; set; }

    /// <summary>Confidence of the intervals.</summary>
    [JsonRequired]
    public double Confidence { get; set; }
}
