using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>One measured value.</summary>
public sealed class MeasuredData : ContractPart
{
    /// <summary>Id of the measurand.</summary>
    [JsonRequired]
    public string Measurand { get; set; } = "";

    /// <summary>The number, in the unit beside it.</summary>
    [JsonRequired]
    public double Value { get; set; }

    /// <summary>Its unit; left out for that of the measurand.</summary>
    public string? Unit { get; set; }

    /// <summary>How the number is to be read; left out for the value itself.</summary>
    [Words(KnownWords.Qualifier)]
    public string? Qualifier { get; set; }

    /// <summary>Test method or instrument.</summary>
    public string? Method { get; set; }
}
