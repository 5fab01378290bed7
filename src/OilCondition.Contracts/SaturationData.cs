using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A water saturation curve, by its constants or by two measured points.</summary>
[Variant("points", VariantAttribute.IsThere, "points", "")]
[Variant("points", VariantAttribute.IsLeftOut, "a bKelvin lowestCelsius highestCelsius", "basis ageingFactor")]
public sealed class SaturationData : ContractPart
{
    /// <summary>Its name; left out for that of the oil.</summary>
    public string? Name { get; set; }

    /// <summary>Two measured points.</summary>
    public IReadOnlyList<SaturationPointData>? Points { get; set; }

    /// <summary>Constant A, for mg/kg and the logarithm to base 10.</summary>
    public double? A { get; set; }

    /// <summary>Constant B.</summary>
    public double? BKelvin { get; set; }

    /// <summary>Lowest temperature at which the constants hold.</summary>
    public double? LowestCelsius { get; set; }

    /// <summary>Highest temperature at which the constants hold.</summary>
    public double? HighestCelsius { get; set; }

    /// <summary>Where the curve comes from.</summary>
    [JsonRequired]
    public SourceData Source { get; set; } = new();

    /// <summary>How the curve came about, in words.</summary>
    public string? Basis { get; set; }

    /// <summary>The factor by which ageing multiplied the saturation.</summary>
    public double? AgeingFactor { get; set; }
}
