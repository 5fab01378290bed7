using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>When the crew can connect a unit and take it off.</summary>
public sealed class CrewData : ContractPart
{
    /// <summary>Begin of the shift after midnight.</summary>
    [JsonRequired]
    public double FromHour { get; set; }

    /// <summary>Its end after midnight.</summary>
    [JsonRequired]
    public double ToHour { get; set; }

    /// <summary>The days; left out for every day.</summary>
    [Words(KnownWords.WeekDay)]
    public IReadOnlyList<string>? Days { get; set; }

    /// <summary>What people should know of it.</summary>
    public string? Note { get; set; }
}
