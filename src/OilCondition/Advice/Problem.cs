namespace OilCondition;

/// <summary>Everything that was found about one topic, as one statement with its evidence.</summary>
/// <remarks>
/// Three particle sizes beyond their limits, or an alert, a forecast and a return of the same water, are one problem. Problems differ in their
/// topic; in the side where the side says something (oil too thick, oil too thin); in the measurand where the topic is
/// <see cref="ProblemTopic.Other"/>; and in the sample where it is in doubt and asks for another one.
/// </remarks>
public sealed class Problem
{
    private readonly ProblemIdentity identity;

    private Problem(ProblemIdentity identity, IReadOnlyList<Finding> findings)
    {
        this.identity = identity;
        Findings = findings;
        Subject = identity.ToString();
    }

    /// <summary>What it is about.</summary>
    public ProblemTopic Topic => identity.Topic;

    /// <summary>On which side, where the topic alone does not say it; null otherwise.</summary>
    public LimitSide? Side => identity.Side;

    /// <summary>
    /// The same word for the same problem on every day, whatever the readings and the order of limits: <c>water</c>,
    /// <c>oil-identity/lower</c>, <c>other/oil-temperature/upper</c>. Alerts and recommendations join by it.
    /// </summary>
    public string Subject { get; }

    /// <summary>What was found, gravest first; at least one.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Severity of the gravest finding.</summary>
    public Severity Severity => Findings[0].Severity;

    /// <summary>What is wrong, how bad it is, whether it comes back and when the next limit is reached, in one sentence.</summary>
    public string Statement => Sentences.English.Of(this);

    /// <summary>
    /// The figures of all findings by measurand, gravest first, none of them twice. What is said of records names its measurands itself, and is one
    /// group.
    /// </summary>
    public ILookup<Measurand, EvidenceItem> Evidence =>
        Findings
            .SelectMany(finding =>
                finding.Evidence.Select(item => (Of: IsOfRecords ? Findings[0] : finding, Item: item))
            )
            .Select(one => (one.Of.Measurand, one.Item))
            .Distinct()
            .ToLookup(one => one.Measurand, one => one.Item);

    /// <summary>The date by which a further limit may be reached, with one chance in ten; null where no forecast of that is part of the problem.</summary>
    public DateTimeOffset? NextLimitFrom =>
        Findings.OfType<RemainingLifeFinding>().Select(life => (DateTimeOffset?)life.Earliest).Min();

    private bool IsOfRecords => Topic is ProblemTopic.Records or ProblemTopic.Sampling;

    /// <summary>The statement.</summary>
    /// <returns>As <see cref="Sentences"/> says it.</returns>
    public override string ToString() => Statement;

    /// <summary>Findings, gravest first, as problems in order of severity, then of topic.</summary>
    internal static IReadOnlyList<Problem> Of(IReadOnlyList<Finding> findings) =>
        findings.Count == 0
            ? []
            :
            [
                .. findings
                    .GroupBy(ProblemIdentity.Of)
                    .Select(group => new Problem(group.Key, [.. group]))
                    .OrderByDescending(problem => problem.Severity)
                    .ThenBy(problem => problem.Topic)
                    .ThenBy(problem => problem.Subject, StringComparer.Ordinal),
            ];
}
