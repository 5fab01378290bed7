using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>What things cost, in one currency.</summary>
public sealed class PricesData : ContractPart
{
    /// <summary>The currency.</summary>
    [JsonRequired]
    public string Currency { get; set; } = "";

    /// <summary>An hour of work.</summary>
    public double? PerHour { get; set; }

    /// <summary>Electricity.</summary>
    public double? PerKilowattHour { get; set; }

    /// <summary>An element.</summary>
    public double? PerElement { get; set; }

    /// <summary>New oil.</summary>
    public double? PerLitreOfNewOil { get; set; }

    /// <summary>Disposal of old oil.</summary>
    public double? PerLitreOfWaste { get; set; }

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }
}
