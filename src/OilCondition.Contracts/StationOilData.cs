using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>An oil of a station.</summary>
public sealed class StationOilData : ContractPart
{
    /// <summary>Identifier that machines name.</summary>
    [JsonRequired]
    public string Id { get; set; } = "";

    /// <summary>Its name.</summary>
    [JsonRequired]
    public string Name { get; set; } = "";

    /// <summary>New-oil values by measurand id, each in its measurand's unit.</summary>
    public IReadOnlyDictionary<string, double>? New { get; set; }

    /// <summary>Its water saturation, where it was measured.</summary>
    public SaturationData? Saturation { get; set; }

    /// <summary>Highest temperature at which it may be treated; left out, no treatment is planned for it.</summary>
    public double? HighestCelsius { get; set; }

    /// <summary>Whether it holds water in fine droplets.</summary>
    public bool? HasDetergents { get; set; }

    /// <summary>Its pour point.</summary>
    public double? PourPointCelsius { get; set; }

    /// <summary>Its flash point.</summary>
    public double? FlashPointCelsius { get; set; }
}
