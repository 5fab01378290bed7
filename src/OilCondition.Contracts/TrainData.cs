using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>Equipment that works one after another as one job.</summary>
public sealed class TrainData : ContractPart
{
    /// <summary>Identifier.</summary>
    [JsonRequired]
    public string Id { get; set; } = "";

    /// <summary>Its name.</summary>
    [JsonRequired]
    public string Name { get; set; } = "";

    /// <summary>The stages, in order.</summary>
    [JsonRequired]
    public IReadOnlyList<StageData> Stages { get; set; } = [];

    /// <summary>Identifiers of the machines that it can be connected to; left out for all.</summary>
    public IReadOnlyList<string>? ConnectsTo { get; set; }

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }
}
