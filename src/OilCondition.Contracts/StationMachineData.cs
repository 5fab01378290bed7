using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A machine of a station.</summary>
public sealed class StationMachineData : ContractPart
{
    /// <summary>Stable identifier, as in the maintenance system.</summary>
    [JsonRequired]
    public string Id { get; set; } = "";

    /// <summary>What people call it.</summary>
    [JsonRequired]
    public string Name { get; set; } = "";

    /// <summary>Identifier of its oil.</summary>
    [JsonRequired]
    public string Oil { get; set; } = "";

    /// <summary>Volume of the oil charge.</summary>
    [JsonRequired]
    public double OilLitres { get; set; }

    /// <summary>Usual oil temperature in operation.</summary>
    [JsonRequired]
    public double RunningCelsius { get; set; }

    /// <summary>Lowest oil temperature after the machine has cooled down.</summary>
    [JsonRequired]
    public double StandstillCelsius { get; set; }

    /// <summary>Name of its limit set.</summary>
    public string? Limits { get; set; }

    /// <summary>Files of its sensor logs.</summary>
    public IReadOnlyList<string>? SensorLogs { get; set; }

    /// <summary>Its tank.</summary>
    public TankData? Tank { get; set; }

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }

    /// <summary>Where it stands; travel names places.</summary>
    public string? Place { get; set; }

    /// <summary>When it stands.</summary>
    public IReadOnlyList<OutageData>? Outages { get; set; }

    /// <summary>Electric power at hand for a unit.</summary>
    public double? PowerKilowatts { get; set; }

    /// <summary>Hours of a day in which somebody can stand by.</summary>
    public double? ReachableHoursPerDay { get; set; }

    /// <summary>Share of the free water that does not settle, 0 to 1.</summary>
    public double? EmulsifiedShare { get; set; }
}
