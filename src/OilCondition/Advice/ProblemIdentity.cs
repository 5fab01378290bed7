using OilCondition.Text;

namespace OilCondition;

/// <summary>Which problem a finding belongs to: the one place that decides it, from what was found and of which measurand on which side.</summary>
/// <remarks>
/// Water, dirt, wear, ageing and varnish are one problem each, since 'worse' says the side. Too thick and too thin are two; so a side stands
/// where the topic is the oil's identity, where a measurand has no one worse side, and where the cause is not known. There every measurand is a
/// problem of its own. A latest sample in doubt asks for another one, and so does the next one in doubt: each is a problem of its own.
/// </remarks>
internal sealed record ProblemIdentity(
    ProblemTopic Topic,
    Measurand? Measurand = null,
    LimitSide? Side = null,
    string Record = ""
)
{
    public static ProblemIdentity Of(Finding finding) =>
        finding.Code switch
        {
            FindingCode.CleanupUnderWay
            or FindingCode.CleanupTargetReached
            or FindingCode.CleanupStalled
            or FindingCode.CleanupSourcesDisagree => new(ProblemTopic.Cleanup),
            FindingCode.SampleOverdue or FindingCode.NeverSampled => new(ProblemTopic.Sampling),
            FindingCode.SuspectSample or FindingCode.RecordFault => new(
                ProblemTopic.Records,
                Record: finding.Severity >= Severity.Alert ? RecordOf((RecordFinding)finding) : ""
            ),
            FindingCode.UnrecordedChange => new(ProblemTopic.Records),
            _ => Of(finding.Measurand, finding.Side),
        };

    private static string RecordOf(RecordFinding finding) =>
        finding.Issue.SampleNumber.Length == 0 ? "sensor" : finding.Issue.SampleNumber;

    /// <summary>The problem that a measurand beyond a limit on one side is, or is on the way to.</summary>
    public static ProblemIdentity Of(Measurand measurand, LimitSide side) =>
        TopicOf(measurand, side) switch
        {
            ProblemTopic.Other => new(ProblemTopic.Other, measurand, side),
            var topic => new(
                topic,
                null,
                topic == ProblemTopic.OilIdentity || measurand.Worse == LimitSide.Both ? side : null
            ),
        };

    private static ProblemTopic TopicOf(Measurand measurand, LimitSide side) =>
        measurand.Topic switch
        {
            _ when !measurand.IsWorse(side) => ProblemTopic.Other,
            MeasurandTopic.Water => ProblemTopic.Water,
            MeasurandTopic.Particles => ProblemTopic.Dirt,
            MeasurandTopic.Ageing => ProblemTopic.OilAgeing,
            MeasurandTopic.Varnish => ProblemTopic.Varnish,
            MeasurandTopic.OilIdentity => ProblemTopic.OilIdentity,
            MeasurandTopic.Wear => ProblemTopic.Wear,
            _ => ProblemTopic.Other,
        };

    /// <summary>As it stands in keys.</summary>
    /// <returns>For example <c>water</c>, <c>oil-identity/lower</c>, <c>other/oil-temperature/upper</c> or <c>records/S17</c>.</returns>
    public override string ToString() =>
        PlainText.Kebab(Topic)
        + (Measurand is null ? "" : "/" + AlertKey.Escaped(Measurand.Id))
        + (Record.Length == 0 ? "" : "/" + AlertKey.Escaped(Record))
        + (Side is { } side ? "/" + PlainText.Kebab(side) : "");
}
