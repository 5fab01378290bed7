using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>What was concluded about one machine's oil at one moment, as <c>ConditionAssessment.ToJson</c> writes it.</summary>
public sealed class AssessmentDocument : ContractDocument
{
    /// <summary>The machine's id, as in the maintenance system.</summary>
    [JsonRequired]
    public string Machine { get; set; } = "";

    /// <summary>What people call the machine.</summary>
    [JsonRequired]
    public string Name { get; set; } = "";

    /// <summary>Name of the oil.</summary>
    [JsonRequired]
    public string Oil { get; set; } = "";

    /// <summary>Now: records after it were not looked at.</summary>
    [JsonRequired]
    public DateTimeOffset AsOf { get; set; }

    /// <summary>The oil charge, by the word that stands in alert keys.</summary>
    [JsonRequired]
    public string Charge { get; set; } = "";

    /// <summary>When that charge went in, or the first record where that is not known.</summary>
    [JsonRequired]
    public DateTimeOffset ChargeSince { get; set; }

    /// <summary>Name of the limit set.</summary>
    [JsonRequired]
    public string LimitSet { get; set; } = "";

    /// <summary>Severity of the gravest finding; information where there is none.</summary>
    [JsonRequired]
    [Words(KnownWords.Severity)]
    public string Worst { get; set; } = "";

    /// <summary>How the assessment was made.</summary>
    [JsonRequired]
    public AssessmentOptionsData Options { get; set; } = new();

    /// <summary>ISO 4406 code of the latest particle counts; left out where there are none.</summary>
    public string? CleanlinessCode { get; set; }

    /// <summary>Dissolved and free water.</summary>
    [JsonRequired]
    public WaterData Water { get; set; } = new();

    /// <summary>The treatment that is under way; left out where there is none.</summary>
    public CleanupProgressData? Cleanup { get; set; }

    /// <summary>Where each limited measurand stands.</summary>
    [JsonRequired]
    public IReadOnlyList<StateData> States { get; set; } = [];

    /// <summary>Which limit is likely to be crossed first, the likeliest first.</summary>
    [JsonRequired]
    public IReadOnlyList<FirstLimitData> FirstLimit { get; set; } = [];

    /// <summary>When the next sample is due; left out without a laboratory sample, and while the oil is treated.</summary>
    public NextSampleData? NextSample { get; set; }

    /// <summary>What is wrong, each topic once, gravest first.</summary>
    [JsonRequired]
    public IReadOnlyList<ProblemData> Problems { get; set; } = [];

    /// <summary>The problems that belong into the maintenance system, each key once.</summary>
    [JsonRequired]
    public IReadOnlyList<AlertData> Alerts { get; set; } = [];

    /// <summary>What to do, most urgent first.</summary>
    [JsonRequired]
    public IReadOnlyList<RecommendationData> Recommendations { get; set; } = [];
}
