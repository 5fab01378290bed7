namespace OilCondition.Contracts;

/// <summary>A stage of a train: a piece of equipment, or a heater in the tank.</summary>
[Variant("heaterKilowatts", VariantAttribute.IsThere, "heaterKilowatts heatedSquareMetres celsius", "")]
[Variant("heaterKilowatts", VariantAttribute.IsLeftOut, "equipment", "hours waterMgPerKg code")]
public sealed class StageData : ContractPart
{
    /// <summary>Identifier of the equipment.</summary>
    public string? Equipment { get; set; }

    /// <summary>How long it works.</summary>
    public double? Hours { get; set; }

    /// <summary>Water content at which it ends.</summary>
    public double? WaterMgPerKg { get; set; }

    /// <summary>ISO 4406 code at which it ends.</summary>
    public string? Code { get; set; }

    /// <summary>Power of a heater in the tank.</summary>
    public double? HeaterKilowatts { get; set; }

    /// <summary>Surface of that heater.</summary>
    public double? HeatedSquareMetres { get; set; }

    /// <summary>Temperature to which it heats.</summary>
    public double? Celsius { get; set; }

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }
}
