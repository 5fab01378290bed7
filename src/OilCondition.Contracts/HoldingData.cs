using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>How long a target must hold and has held.</summary>
public sealed class HoldingData : ContractPart
{
    /// <summary>How long it must hold.</summary>
    [JsonRequired]
    public double RequiredHours { get; set; }

    /// <summary>Since when it has held.</summary>
    public DateTimeOffset? Since { get; set; }

    /// <summary>When it had held long enough.</summary>
    public DateTimeOffset? MetAt { get; set; }

    /// <summary>When it was lost again.</summary>
    public DateTimeOffset? ReboundAt { get; set; }

    /// <summary>When to look whether the water comes back.</summary>
    public DateTimeOffset? ReboundCheckDue { get; set; }
}
