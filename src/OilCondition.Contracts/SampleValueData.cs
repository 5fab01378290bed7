using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>What one more sample would change.</summary>
public sealed class SampleValueData : ContractPart
{
    /// <summary>Share of the cases in which it changes the choice.</summary>
    [JsonRequired]
    public double ChangesChoiceIn { get; set; }

    /// <summary>The same as a sentence.</summary>
    [JsonRequired]
    public string Sentence { get; set; } = "";
}
