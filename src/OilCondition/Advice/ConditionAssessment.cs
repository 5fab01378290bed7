using OilCondition.Cleanliness;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Text;

namespace OilCondition;

/// <summary>Everything that was concluded about one oil charge at one moment.</summary>
public sealed class ConditionAssessment
{
    private readonly IReadOnlyList<RemainingLife> lives;
    private FirstCrossing? first;

    internal ConditionAssessment(
        OilHistory history,
        OilCharge charge,
        LimitSet limits,
        AssessmentOptions options,
        IReadOnlyList<MeasurandState> states,
        IReadOnlyList<RemainingLife> lives,
        WaterInOil water,
        CleanlinessCode? cleanliness,
        CleanupProgress? cleanup,
        NextSample? nextSample,
        IReadOnlyList<Finding> findings,
        IReadOnlyList<Problem> problems,
        IReadOnlyList<Recommendation> recommendations
    )
    {
        History = history;
        Charge = charge;
        Limits = limits;
        Options = options;
        States = states;
        this.lives = lives;
        Water = water;
        Cleanliness = cleanliness;
        Cleanup = cleanup;
        NextSample = nextSample;
        Findings = findings;
        Problems = problems;
        Recommendations = recommendations;
        Alerts = Alert.Of(history.Machine, charge, problems);
    }

    /// <summary>The records that were assessed.</summary>
    public OilHistory History { get; }

    /// <summary>The oil charge that was assessed.</summary>
    public OilCharge Charge { get; }

    /// <summary>The limits used.</summary>
    public LimitSet Limits { get; }

    /// <summary>How the assessment was made.</summary>
    public AssessmentOptions Options { get; }

    /// <summary>Where each limited measurand stands, once each, in the order of the limit set.</summary>
    public IReadOnlyList<MeasurandState> States { get; }

    /// <summary>Dissolved and free water at running and standstill temperature.</summary>
    public WaterInOil Water { get; }

    /// <summary>ISO 4406 code of the latest particle counts; null when this charge has none.</summary>
    public CleanlinessCode? Cleanliness { get; }

    /// <summary>The treatment that is under way; null when there is none.</summary>
    public CleanupProgress? Cleanup { get; }

    /// <summary>Which limit is likely to be crossed first, and when.</summary>
    public FirstCrossing First => first ??= FirstCrossing.Of(lives, Options.AsOf);

    /// <summary>When the next sample is due, and why then; null where only sensors watch this machine, and while it is being treated: then its readings say when.</summary>
    public NextSample? NextSample { get; }

    /// <summary>What is wrong, each topic once with its findings, gravest first.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>What was found, gravest first: the findings of all problems.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>The problems that belong into the maintenance system, gravest first, each key once.</summary>
    public IReadOnlyList<Alert> Alerts { get; }

    /// <summary>What to do, most urgent first.</summary>
    public IReadOnlyList<Recommendation> Recommendations { get; }

    /// <summary>The worst severity of all findings; information when there are none.</summary>
    public Severity Worst => Findings.Count == 0 ? Severity.Information : Findings.Max(finding => finding.Severity);

    /// <summary>Whether any limit could judge a reading; where none could, no finding does not mean that the oil is sound. True where no limit is set.</summary>
    public bool IsJudged => States.Count == 0 || States.Any(state => state.Worst.State != LimitState.NotDetermined);

    /// <summary>The assessment as JSON, the same bytes for the same input.</summary>
    /// <returns>Indented JSON.</returns>
    public string ToJson() => AssessmentJson.Of(this).ToString();

    /// <summary>Writes the document of <see cref="ToJson"/> in UTF-8 on one line, so that a file or a queue of many has one a line.</summary>
    /// <param name="stream">Where to; it is written to at once, line end and all, and stays open.</param>
    public void WriteJson(Stream stream) => AssessmentJson.Of(this).WriteTo(stream);

    /// <summary>Machine and moment, problems with their evidence, what to do and the next sample, at most 100 columns wide.</summary>
    /// <returns>Several lines.</returns>
    public override string ToString()
    {
        var machine = History.Machine;
        var word =
            Findings.Count == 0
                ? PlainText.Spaced(IsJudged ? LimitState.Normal : LimitState.NotDetermined)
                : PlainText.Spaced(Worst);
        List<string> lines =
        [
            .. PlainText.Wrap($"{machine.Id} {machine.Name}, {PlainText.Date(Options.AsOf)}: {word}", ""),
            .. Problems.SelectMany(one =>
                PlainText
                    .Wrap($"{PlainText.Spaced(one.Severity)}: {one}", "  ")
                    .Concat(Sentences.English.Evidence(one).SelectMany(line => PlainText.Wrap(line, "      ")))
            ),
            .. Recommendations.SelectMany(one => PlainText.Wrap($"-> {one}", "  ")),
            .. NextSample is { } next ? PlainText.Wrap(Sentences.English.Of(next), "  ") : [],
        ];
        return string.Join("\n", lines);
    }
}
