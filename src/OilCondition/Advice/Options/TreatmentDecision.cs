using OilCondition.Text;
using OilCondition.Treatment;

namespace OilCondition;

/// <summary>From a finding to a decision: what can be done with what the plant has, what each way reaches, by when, at what cost, and which one to take.</summary>
/// <remarks>
/// <para>
/// One decision for what is in the oil, water and dirt together, and one for its ageing. It is advice: the plant decides, and the limits of the makers of machine,
/// oil and equipment, local codes and licensed practice come first.
/// </para>
/// <para>
/// The task is the machine's own oil as it is now. Each way is planned in 31 cases that differ by what the inputs may be out by (<see cref="InputErrors"/>).
/// What the plan does not know, such as an oil that foams, is in none of them.
/// </para>
/// </remarks>
/// <example>
/// <code>
/// foreach (var decision in TreatmentDecision.Of(assessment, station))
/// {
///     Console.WriteLine(decision);              // the recommendation in a sentence, the options as a table
///     foreach (var option in decision.Options) { /* option.Verdict, option.DoneP90, option.Cost, option.RuledOut */ }
/// }
/// </code>
/// </example>
public sealed partial class TreatmentDecision
{
    private readonly Lazy<SampleValue?> sampleValue;
    private readonly Lazy<IReadOnlyList<Words>> needs;

    internal TreatmentDecision(
        ConditionAssessment assessment,
        IReadOnlyList<Problem> problems,
        DecisionOptions options,
        Func<SampleValue?> sampleValue,
        Func<IReadOnlyList<Words>> needs
    )
    {
        Assessment = assessment;
        Problems = problems;
        DecisionOptions = options;
        this.sampleValue = new Lazy<SampleValue?>(sampleValue);
        this.needs = new Lazy<IReadOnlyList<Words>>(needs);
    }

    /// <summary>The assessment that it rests on.</summary>
    public ConditionAssessment Assessment { get; }

    /// <summary>The problems of the assessment that ask for it: water, dirt or both; or ageing.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>What is to be treated.</summary>
    public IReadOnlyList<ProblemTopic> Topics => [.. Problems.Select(one => one.Topic)];

    /// <summary>How it was decided.</summary>
    public DecisionOptions DecisionOptions { get; }

    /// <summary>What is to be reached; for ageing what is to be kept.</summary>
    public TargetProposal Target { get; internal init; } = null!;

    /// <summary>By when it must be done.</summary>
    public DateTimeOffset RiskDate { get; internal init; }

    /// <summary>Why then.</summary>
    public string RiskReason => Sentences.English.RiskReason(this);

    /// <summary>What happens if nothing is done.</summary>
    public WaitingOutlook Waiting { get; internal init; } = null!;

    /// <summary>The ways to treat it, waiting among them, best first by the rule; empty where a treatment is under way or the task is not known.</summary>
    public IReadOnlyList<TreatmentOption> Options { get; internal init; } = [];

    /// <summary>The one to take; null where nothing is to be treated now, or nothing at hand does it.</summary>
    public TreatmentOption? Choice => Options.Count > 0 && Options[0].IsPossible ? Options[0] : null;

    /// <summary>Whether the options are compared by cost; else by the hours for which they bind equipment, since a price is missing.</summary>
    public bool ByCost { get; internal init; }

    /// <summary>The treatment that is under way for this; null where there is none.</summary>
    public CleanupProgress? UnderWay { get; internal init; }

    /// <summary>Whether the oil meets the target now, so that only the way in is to be found.</summary>
    public bool IsMetAlready { get; internal init; }

    /// <summary>What must be known before anything can be planned; empty where all is.</summary>
    public string Missing => MissingWords?.Invoke(Sentences.English) ?? "";

    /// <summary>The task that was planned; null where something is missing or a treatment is under way.</summary>
    public TreatmentJob? Job { get; internal init; }

    /// <summary>The figures that it rests on, each with its source: plant, laboratory, or common practice.</summary>
    public IReadOnlyList<Figure> Figures { get; internal init; } = [];

    /// <summary>What such a task needs, worked out when first asked; empty where something at hand does it in time.</summary>
    public IReadOnlyList<string> Sizing => Sentences.English.Sizing(this);

    /// <summary>What one more sample before deciding would change; worked out when first asked. Null where nothing is to be chosen.</summary>
    public SampleValue? OneMoreSample => sampleValue.Value;

    /// <summary>Decides for the assessed machines of a station with what it has.</summary>
    /// <remarks>
    /// All machines together: a unit that was used on one of them, by the equipment named in its treatment, is planned on the others as it worked there.
    /// </remarks>
    /// <param name="assessments">The assessments of its machines, in any number.</param>
    /// <param name="station">The station, with the machines' oils, tanks and sites, its equipment and prices.</param>
    /// <param name="options">How to decide; null for the defaults.</param>
    /// <returns>For each machine one decision for water and dirt and one for ageing, as far as findings ask for them; in the order of the machines.</returns>
    /// <exception cref="ArgumentNullException">Assessments or station are null.</exception>
    /// <exception cref="ArgumentException">The station has no machine of such an id.</exception>
    public static IReadOnlyList<TreatmentDecision> Of(
        IReadOnlyList<ConditionAssessment> assessments,
        Station station,
        DecisionOptions? options = null
    )
    {
        Guard.NotNull(station);
        var experience = UnitExperience.Of(Guard.NotNull(assessments), station);
        var inUse = new EquipmentInUse(assessments);
        StationMachine MachineOf(ConditionAssessment assessment) =>
            station.TryMachine(Guard.NotNull(assessment, nameof(assessments)).History.Machine.Id, out var machine)
                ? machine
                : throw new ArgumentException(
                    $"station has no machine '{assessment.History.Machine.Id}'; it has {string.Join(", ", station.Machines.Select(one => one.Machine.Id))}.",
                    nameof(station)
                );
        return
        [
            .. assessments.SelectMany(one =>
                DecisionMaker.Of(one, MachineOf(one), station, options ?? new DecisionOptions(), experience, inUse)
            ),
        ];
    }

    /// <summary>Decides for one assessed machine: <see cref="Of(IReadOnlyList{ConditionAssessment}, Station, DecisionOptions)"/>.</summary>
    /// <param name="assessment">The assessment of the machine.</param>
    /// <param name="station">The station.</param>
    /// <param name="options">How to decide; null for the defaults.</param>
    /// <returns>One decision for water and dirt, one for ageing, as far as findings ask for them; none where nothing does.</returns>
    /// <exception cref="ArgumentNullException">Assessment or station is null.</exception>
    /// <exception cref="ArgumentException">The station has no machine of that id.</exception>
    public static IReadOnlyList<TreatmentDecision> Of(
        ConditionAssessment assessment,
        Station station,
        DecisionOptions? options = null
    ) => Of([Guard.NotNull(assessment)], station, options);

    /// <summary>Cautions of the job that is recommended, or under way; empty where none is.</summary>
    public IReadOnlyList<Caution> Cautions => UnderWay?.Cautions ?? Choice?.Assessment?.Cautions ?? [];

    /// <summary>What stands with every decision that is shown: who decides, and what comes first.</summary>
    public static string Notice => Sentences.English.Notice;

    /// <summary>What is recommended, in one sentence or two.</summary>
    public string Recommendation => Sentences.English.Recommendation(this);

    /// <summary>The decision as JSON, the same bytes for the same input.</summary>
    /// <returns>Indented JSON.</returns>
    public string ToJson() => DecisionJson.Of(this).ToString();

    /// <summary>Writes the document of <see cref="ToJson"/> in UTF-8 on one line, so that a file or a queue of many has one a line.</summary>
    /// <param name="stream">Where to; it is written to at once, line end and all, and stays open.</param>
    public void WriteJson(Stream stream) => DecisionJson.Of(this).WriteTo(stream);

    /// <summary>Machine, recommendation, options as a table, what waiting means; at most 100 columns wide.</summary>
    /// <returns>Several lines.</returns>
    public override string ToString() => DecisionPage.Of(this);

    internal Words RiskWords { get; init; } = null!;

    internal Words? MissingWords { get; init; }

    internal IReadOnlyList<Words> Needs => needs.Value;

    /// <summary>One figure that a decision rests on, and where it comes from.</summary>
    public sealed record Figure
    {
        internal Figure(EvidenceItem item, Source source)
        {
            Item = item;
            Source = source;
        }

        /// <summary>The figure.</summary>
        public EvidenceItem Item { get; }

        /// <summary>Where it comes from; common practice where nobody stated it.</summary>
        public Source Source { get; }

        /// <summary>Whether nobody stated it: common practice stands in.</summary>
        public bool IsAssumed => Source.Kind == SourceKind.CommonPractice;

        /// <summary>Figure and source.</summary>
        /// <returns>For example <c>density at 15 °C 870 kg/m³ (common practice, no source: a mineral oil)</c>.</returns>
        public override string ToString() => $"{Item} ({Source})";
    }
}
