using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>A treatment that is under way.</summary>
public sealed class CleanupProgressData : ContractPart
{
    /// <summary>The kind of treatment.</summary>
    [JsonRequired]
    [Words(KnownWords.TreatmentKindButDrainAndRefill)]
    public string Treatment { get; set; } = "";

    /// <summary>Id of what it is to bring down.</summary>
    [JsonRequired]
    public string Measurand { get; set; } = "";

    /// <summary>When it was started.</summary>
    [JsonRequired]
    public DateTimeOffset StartedAt { get; set; }

    /// <summary>The value to reach, in the unit beside it.</summary>
    [JsonRequired]
    public double Target { get; set; }

    /// <summary>Unit of target, floor and contradiction.</summary>
    [JsonRequired]
    public string Unit { get; set; } = "";

    /// <summary>Where the run stands.</summary>
    [JsonRequired]
    [Words(KnownWords.CleanupPhase)]
    public string Phase { get; set; } = "";

    /// <summary>Whose readings the forecast follows.</summary>
    [JsonRequired]
    [Words(KnownWords.Follows)]
    public string Follows { get; set; } = "";

    /// <summary>Readings that the fit rests on.</summary>
    [JsonRequired]
    public int ReadingsUsed { get; set; }

    /// <summary>Readings of an initial phase.</summary>
    [JsonRequired]
    public int ReadingsNotUsed { get; set; }

    /// <summary>How long the target must hold.</summary>
    [JsonRequired]
    public double HoldHours { get; set; }

    /// <summary>Whether and when the target is reached and held.</summary>
    [JsonRequired]
    [Words(KnownWords.Arrival)]
    public string Outcome { get; set; } = "";

    /// <summary>When it was reached.</summary>
    public DateTimeOffset? ReachedAt { get; set; }

    /// <summary>Earliest moment at which it is expected.</summary>
    public DateTimeOffset? Earliest { get; set; }

    /// <summary>Moment at which it is expected.</summary>
    public DateTimeOffset? Expected { get; set; }

    /// <summary>Latest moment at which it is expected.</summary>
    public DateTimeOffset? Latest { get; set; }

    /// <summary>Whether the expected moment has passed.</summary>
    public bool? PastDue { get; set; }

    /// <summary>Why nothing better can be said; left out where there is no reason.</summary>
    [Words(KnownWords.CompletionReasonButNone)]
    public string? Reason { get; set; }

    /// <summary>Rate of the exponential fall.</summary>
    public double? RatePerHour { get; set; }

    /// <summary>Where the readings level off.</summary>
    public double? Floor { get; set; }

    /// <summary>How much of the fall was observed.</summary>
    public double? ObservedTimeConstants { get; set; }

    /// <summary>What to beware of.</summary>
    [JsonRequired]
    public IReadOnlyList<CautionData> Cautions { get; set; } = [];

    /// <summary>That sensor and samples contradict each other; left out where they do not.</summary>
    public ContradictionData? Contradiction { get; set; }
}
