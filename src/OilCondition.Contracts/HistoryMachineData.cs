using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A machine with one oil charge in it.</summary>
public sealed class HistoryMachineData : ContractPart
{
    /// <summary>Stable identifier, as in the maintenance system.</summary>
    [JsonRequired]
    public string Id { get; set; } = "";

    /// <summary>What people call it.</summary>
    [JsonRequired]
    public string Name { get; set; } = "";

    /// <summary>The oil in it.</summary>
    [JsonRequired]
    public OilData Oil { get; set; } = new();

    /// <summary>Volume of the oil charge.</summary>
    [JsonRequired]
    public double OilLitres { get; set; }

    /// <summary>Usual oil temperature in operation.</summary>
    [JsonRequired]
    public double RunningCelsius { get; set; }

    /// <summary>Lowest oil temperature after the machine has cooled down.</summary>
    [JsonRequired]
    public double StandstillCelsius { get; set; }
}
