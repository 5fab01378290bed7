using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>The machines, oils and equipment of one station, as <c>Station.Parse</c> reads them.</summary>
public sealed class StationDocument : ContractDocument
{
    /// <summary>Its name.</summary>
    [JsonRequired]
    public string Name { get; set; } = "";

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }

    /// <summary>The moment that the file describes.</summary>
    public DateTimeOffset? AsOf { get; set; }

    /// <summary>The oils.</summary>
    [JsonRequired]
    public IReadOnlyList<StationOilData> Oils { get; set; } = [];

    /// <summary>Limit sets that machines name.</summary>
    public IReadOnlyList<LimitSetData>? LimitSets { get; set; }

    /// <summary>The machines.</summary>
    [JsonRequired]
    public IReadOnlyList<StationMachineData> Machines { get; set; } = [];

    /// <summary>What was done to their oils.</summary>
    public IReadOnlyList<StationEventData>? Events { get; set; }

    /// <summary>What can treat the oils.</summary>
    public IReadOnlyList<EquipmentData>? Equipment { get; set; }

    /// <summary>Equipment that works one after another as one job.</summary>
    public IReadOnlyList<TrainData>? Trains { get; set; }

    /// <summary>What things cost.</summary>
    public PricesData? Prices { get; set; }

    /// <summary>How long the ways between places take.</summary>
    public IReadOnlyList<WayData>? Travel { get; set; }

    /// <summary>When the crew connects units.</summary>
    public CrewData? Crew { get; set; }
}
