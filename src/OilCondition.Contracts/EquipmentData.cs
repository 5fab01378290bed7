using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A piece of equipment. Each kind has its own figures.</summary>
[Variant(
    "kind",
    "vacuum-dehydration",
    "flowLitresPerMinute highestViscosityCentistokes processCelsius chamberMillibar removalPerPass",
    "startViscosityCentistokes heaterKilowatts highestRiseKelvin motorKilowatts highestCelsius dryAirKilogramsPerHour pumpCubicMetresPerHour condenserCelsius removalViscosityCentistokes filter elements dischargePump vacuumPump"
)]
[Variant(
    "kind",
    "fine-filtration",
    "flowLitresPerMinute highestViscosityCentistokes filter",
    "startViscosityCentistokes workingCelsius heaterKilowatts highestRiseKelvin motorKilowatts elements"
)]
[Variant(
    "kind",
    "coalescer",
    "flowLitresPerMinute highestViscosityCentistokes removalPerPass",
    "startViscosityCentistokes workingCelsius heaterKilowatts highestRiseKelvin motorKilowatts elements"
)]
[Variant(
    "kind",
    "water-absorbing-elements",
    "flowLitresPerMinute highestViscosityCentistokes removalPerPass elementLitres",
    "startViscosityCentistokes workingCelsius heaterKilowatts highestRiseKelvin motorKilowatts"
)]
[Variant(
    "kind",
    "centrifuge",
    "flowLitresPerMinute highestViscosityCentistokes equivalentSquareMetres dropletMicrometres emulsionMicrometres",
    "startViscosityCentistokes workingCelsius heaterKilowatts highestRiseKelvin motorKilowatts particleKilogramsPerCubicMetre"
)]
[Variant(
    "kind",
    "settling-and-draining",
    "heightMetres dropletMicrometres",
    "fineDropletMicrometres celsius particleKilogramsPerCubicMetre"
)]
[Variant(
    "kind",
    "head-space-purge",
    "dryAirKilogramsPerHour airCelsius dewPointCelsius approach",
    "atmosphereMillibar motorKilowatts"
)]
[Variant(
    "kind",
    "drain-and-refill",
    "heel newWaterMgPerKg newParticlesPerMillilitre transferLitresPerMinute",
    "motorKilowatts"
)]
public sealed class EquipmentData : ContractPart
{
    /// <summary>Identifier.</summary>
    [JsonRequired]
    public string Id { get; set; } = "";

    /// <summary>Its name.</summary>
    [JsonRequired]
    public string Name { get; set; } = "";

    /// <summary>The kind of treatment that it does.</summary>
    [JsonRequired]
    [Words(KnownWords.TreatmentKind)]
    public string Kind { get; set; } = "";

    /// <summary>Identifiers of the machines that it can be connected to; left out for all.</summary>
    public IReadOnlyList<string>? ConnectsTo { get; set; }

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }

    /// <summary>From the order until it stands at the machine.</summary>
    public double? LeadDays { get; set; }

    /// <summary>What its hire costs; left out for the plant's own.</summary>
    public HireData? Hire { get; set; }

    /// <summary>To connect it, and again to take it off.</summary>
    public double? ConnectHours { get; set; }

    /// <summary>Whether the machine must stand while it works.</summary>
    public bool? NeedsStandstill { get; set; }

    /// <summary>Whether somebody must stand by.</summary>
    public bool? Attended { get; set; }

    /// <summary>Elements in the store.</summary>
    public int? ElementsInStock { get; set; }

    /// <summary>New oil in the store.</summary>
    public double? LitresInStock { get; set; }

    /// <summary>Oil flow of its pump.</summary>
    public double? FlowLitresPerMinute { get; set; }

    /// <summary>Highest viscosity at which the pump gives that flow.</summary>
    public double? HighestViscosityCentistokes { get; set; }

    /// <summary>Highest viscosity at which the pump starts.</summary>
    public double? StartViscosityCentistokes { get; set; }

    /// <summary>Temperature at which it works.</summary>
    public double? WorkingCelsius { get; set; }

    /// <summary>Its heater.</summary>
    public double? HeaterKilowatts { get; set; }

    /// <summary>Highest rise of the heater in one pass.</summary>
    public double? HighestRiseKelvin { get; set; }

    /// <summary>Its motors.</summary>
    public double? MotorKilowatts { get; set; }

    /// <summary>Temperature of the oil in the chamber.</summary>
    public double? ProcessCelsius { get; set; }

    /// <summary>Highest temperature of the oil in it.</summary>
    public double? HighestCelsius { get; set; }

    /// <summary>Pressure in the chamber, absolute.</summary>
    public double? ChamberMillibar { get; set; }

    /// <summary>Dry air that it draws in or blows.</summary>
    public double? DryAirKilogramsPerHour { get; set; }

    /// <summary>Capacity of its vacuum pump.</summary>
    public double? PumpCubicMetresPerHour { get; set; }

    /// <summary>Temperature of its condenser.</summary>
    public double? CondenserCelsius { get; set; }

    /// <summary>Share of the removable water taken out in one pass, 0 to 1.</summary>
    public double? RemovalPerPass { get; set; }

    /// <summary>Viscosity at which that share was found.</summary>
    public double? RemovalViscosityCentistokes { get; set; }

    /// <summary>Its filter.</summary>
    public FilterData? Filter { get; set; }

    /// <summary>Its elements.</summary>
    public int? Elements { get; set; }

    /// <summary>Water that one element takes up.</summary>
    public double? ElementLitres { get; set; }

    /// <summary>Equivalent area of a centrifuge.</summary>
    public double? EquivalentSquareMetres { get; set; }

    /// <summary>Size of the droplets of free water.</summary>
    public double? DropletMicrometres { get; set; }

    /// <summary>Size of the droplets of an emulsion.</summary>
    public double? EmulsionMicrometres { get; set; }

    /// <summary>Size of the finest droplets.</summary>
    public double? FineDropletMicrometres { get; set; }

    /// <summary>Density of the particles.</summary>
    public double? ParticleKilogramsPerCubicMetre { get; set; }

    /// <summary>Height through which droplets settle.</summary>
    public double? HeightMetres { get; set; }

    /// <summary>Temperature at which the oil settles.</summary>
    public double? Celsius { get; set; }

    /// <summary>Temperature of the air.</summary>
    public double? AirCelsius { get; set; }

    /// <summary>Dew point of the air.</summary>
    public double? DewPointCelsius { get; set; }

    /// <summary>Pressure of the atmosphere.</summary>
    public double? AtmosphereMillibar { get; set; }

    /// <summary>How near the leaving air comes to equilibrium, 0 to 1.</summary>
    public double? Approach { get; set; }

    /// <summary>Share of the old oil that stays, 0 to 1.</summary>
    public double? Heel { get; set; }

    /// <summary>Water content of the new oil.</summary>
    public double? NewWaterMgPerKg { get; set; }

    /// <summary>Particles of the new oil.</summary>
    public CountsData? NewParticlesPerMillilitre { get; set; }

    /// <summary>Flow of draining and filling.</summary>
    public double? TransferLitresPerMinute { get; set; }

    /// <summary>The pump that draws the oil from the chamber.</summary>
    public DischargePumpData? DischargePump { get; set; }

    /// <summary>The vacuum pump.</summary>
    public VacuumPumpData? VacuumPump { get; set; }
}
