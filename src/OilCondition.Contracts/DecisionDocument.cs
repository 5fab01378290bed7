using System.Text.Json.Serialization;

namespace OilCondition.Contracts;

/// <summary>What to do about one machine's oil with what the plant has, as <c>TreatmentDecision.ToJson</c> writes it.</summary>
public sealed class DecisionDocument : ContractDocument
{
    /// <summary>The machine's id.</summary>
    [JsonRequired]
    public string Machine { get; set; } = "";

    /// <summary>Now.</summary>
    [JsonRequired]
    public DateTimeOffset AsOf { get; set; }

    /// <summary>How the decision was made.</summary>
    [JsonRequired]
    public DecisionOptionsData DecisionOptions { get; set; } = new();

    /// <summary>The problems that it is about, by their subjects.</summary>
    [JsonRequired]
    public IReadOnlyList<string> Subjects { get; set; } = [];

    /// <summary>What is recommended, in a sentence or two.</summary>
    [JsonRequired]
    public string Recommendation { get; set; } = "";

    /// <summary>Id of the option to take; left out where none is.</summary>
    public string? Choice { get; set; }

    /// <summary>By when it must be done.</summary>
    [JsonRequired]
    public DateTimeOffset RiskDate { get; set; }

    /// <summary>Why then.</summary>
    [JsonRequired]
    public string RiskReason { get; set; } = "";

    /// <summary>What must be known before anything can be planned.</summary>
    public string? Missing { get; set; }

    /// <summary>Whether a treatment for it is under way.</summary>
    [JsonRequired]
    public bool UnderWay { get; set; }

    /// <summary>Whether the oil meets the target now.</summary>
    [JsonRequired]
    public bool MetAlready { get; set; }

    /// <summary>What is to be reached.</summary>
    [JsonRequired]
    public TargetData Target { get; set; } = new();

    /// <summary>Whether options are compared by cost or by hours.</summary>
    [JsonRequired]
    [Words(KnownWords.RankedBy)]
    public string RankedBy { get; set; } = "";

    /// <summary>The ways to treat it, waiting among them, best first.</summary>
    [JsonRequired]
    public IReadOnlyList<OptionData> Options { get; set; } = [];

    /// <summary>What happens if nothing is done.</summary>
    [JsonRequired]
    public WaitingData Waiting { get; set; } = new();

    /// <summary>What one more sample before deciding would change.</summary>
    public SampleValueData? OneMoreSample { get; set; }

    /// <summary>What such a task needs, where nothing at hand does it in time.</summary>
    [JsonRequired]
    public IReadOnlyList<string> Needs { get; set; } = [];

    /// <summary>The figures that it rests on, each with its source.</summary>
    [JsonRequired]
    public IReadOnlyList<FigureData> Figures { get; set; } = [];

    /// <summary>Cautions of the job that is recommended.</summary>
    [JsonRequired]
    public IReadOnlyList<CautionData> Cautions { get; set; } = [];

    /// <summary>Who decides.</summary>
    [JsonRequired]
    public string Notice { get; set; } = "";
}
