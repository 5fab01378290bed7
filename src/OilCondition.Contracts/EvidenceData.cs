using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>One figure, moment or word on which something rests.</summary>
public class EvidenceData : ContractPart
{
    /// <summary>What it is; the ids are listed in docs/contract.md and stay as they are.</summary>
    [JsonRequired]
    public string Id { get; set; } = "";

    /// <summary>The number, in the unit beside it.</summary>
    public double? Value { get; set; }

    /// <summary>Unit of the number; empty for a plain one.</summary>
    public string? Unit { get; set; }

    /// <summary>How the number is to be read, where it is not the value itself.</summary>
    [Words(KnownWords.QualifierButNone)]
    public string? Qualifier { get; set; }

    /// <summary>The moment.</summary>
    public DateTimeOffset? At { get; set; }

    /// <summary>The word.</summary>
    public string? Text { get; set; }
}
