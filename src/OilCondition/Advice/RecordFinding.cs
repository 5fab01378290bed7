namespace OilCondition;

/// <summary>Something wrong with the records.</summary>
internal sealed class RecordFinding : Finding
{
    internal RecordFinding(HistoryIssue issue, Measurand measurand, bool isLatest, DateTimeOffset asOf)
        : base(
            issue.Kind == HistoryIssueKind.SuspectSample ? FindingCode.SuspectSample : FindingCode.RecordFault,
            // A latest sample that is suspect or contradicts itself leaves the machine unwatched: another one is due. An old one has been
            // overtaken.
            IsInDoubt(issue, isLatest) || (issue.Kind == HistoryIssueKind.DatedLater && !IsWithinClock(issue, asOf))
                ? Severity.Alert
                : Severity.Information,
            measurand
        )
    {
        Issue = issue;
        IsLatestInDoubt = IsInDoubt(issue, isLatest);
        IsOfToday = issue.Kind == HistoryIssueKind.DatedLater && IsWithinClock(issue, asOf);
    }

    /// <summary>Whether it is dated later by no more than a clock's error: the next assessment judges it.</summary>
    public bool IsOfToday { get; }

    /// <summary>Whether it is the latest sample, and another one must take its place.</summary>
    public bool IsLatestInDoubt { get; }

    /// <summary>The record.</summary>
    public HistoryIssue Issue { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence =>
        [
            EvidenceItem.Word("from", Issue.SampleNumber.Length == 0 ? "sensor" : $"sample {Issue.SampleNumber}"),
            EvidenceItem.Moment("read-at", Issue.At),
            .. Issue
                .Readings.OrderBy(pair => pair.Key.Id, StringComparer.Ordinal)
                .Select(pair => EvidenceItem.Reading(pair.Value, pair.Key)),
        ];

    private static bool IsInDoubt(HistoryIssue issue, bool isLatest) =>
        isLatest && issue.Kind is HistoryIssueKind.SuspectSample or HistoryIssueKind.ConflictingSample;

    private static bool IsWithinClock(HistoryIssue issue, DateTimeOffset asOf) =>
        !OilHistory.IsWrongDate(issue.At, asOf);

    internal override string Said(Sentences sentences) => sentences.Record(this);
}
