using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Something that was done to the oil of one machine.</summary>
public sealed class StationEventData : EventData
{
    /// <summary>Identifier of the machine.</summary>
    [JsonRequired]
    public string Machine { get; set; } = "";

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }
}
