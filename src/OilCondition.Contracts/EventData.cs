using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Something that was done to an oil.</summary>
[Variant("kind", "oil-change", "", "")]
[Variant("kind", "top-up", "litres", "")]
[Variant("kind", KnownWords.TreatmentKindButDrainAndRefill, "measurand target", "endedAt unit equipment planned")]
public class EventData : ContractPart
{
    /// <summary>What was done.</summary>
    [JsonRequired]
    [Words(KnownWords.EventKind)]
    public string Kind { get; set; } = "";

    /// <summary>When, or when it was begun.</summary>
    [JsonRequired]
    public DateTimeOffset At { get; set; }

    /// <summary>New oil of a top-up.</summary>
    public double? Litres { get; set; }

    /// <summary>End of a treatment; left out while it runs.</summary>
    public DateTimeOffset? EndedAt { get; set; }

    /// <summary>Id of what a treatment is to bring down.</summary>
    public string? Measurand { get; set; }

    /// <summary>The value to reach, in the unit beside it.</summary>
    public double? Target { get; set; }

    /// <summary>Its unit; left out for that of the measurand.</summary>
    public string? Unit { get; set; }

    /// <summary>Identifier of the equipment, as in the station file.</summary>
    public string? Equipment { get; set; }

    /// <summary>What was planned for a treatment of water; left out where it is not known.</summary>
    public PlannedData? Planned { get; set; }
}
