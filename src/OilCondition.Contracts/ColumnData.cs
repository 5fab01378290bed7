using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A column of readings.</summary>
public sealed class ColumnData : ContractPart
{
    /// <summary>Headers under which it stands.</summary>
    [JsonRequired]
    public IReadOnlyList<string> Names { get; set; } = [];

    /// <summary>Id of what is read.</summary>
    [JsonRequired]
    public string Measurand { get; set; } = "";

    /// <summary>Unit of its numbers; left out for that of the header or of the measurand.</summary>
    public string? Unit { get; set; }

    /// <summary>Below it a number is a bound.</summary>
    public double? DetectionLimit { get; set; }

    /// <summary>Test method.</summary>
    public string? Method { get; set; }

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }
}
