using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>An oil as it is delivered.</summary>
public sealed class OilData : ContractPart
{
    /// <summary>Its name.</summary>
    [JsonRequired]
    public string Name { get; set; } = "";

    /// <summary>Readings of the new oil.</summary>
    public IReadOnlyList<MeasuredData>? NewReadings { get; set; }

    /// <summary>Its water saturation, where it was measured.</summary>
    public SaturationData? Saturation { get; set; }
}
