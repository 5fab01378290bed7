using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>One reading with where it comes from.</summary>
public sealed class ReadingData : ContractPart
{
    /// <summary>The number, in the unit beside it.</summary>
    [JsonRequired]
    public double Value { get; set; }

    /// <summary>Its unit; empty for a plain number.</summary>
    [JsonRequired]
    public string Unit { get; set; } = "";

    /// <summary>How the number is to be read.</summary>
    [JsonRequired]
    [Words(KnownWords.Qualifier)]
    public string Qualifier { get; set; } = "";

    /// <summary>When the sample was taken or the sensor read.</summary>
    [JsonRequired]
    public DateTimeOffset At { get; set; }

    /// <summary>Whether a laboratory sample or a sensor gave it.</summary>
    [JsonRequired]
    [Words(KnownWords.Origin)]
    public string Origin { get; set; } = "";

    /// <summary>The laboratory's number; left out for a sensor.</summary>
    public string? SampleNumber { get; set; }
}
