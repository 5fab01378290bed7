namespace OilCondition;

/// <summary>Something wrong with the records.</summary>
internal sealed class RecordFinding : Finding
{
    internal RecordFinding(HistoryIssue issue, Measurand measurand, bool isLatest)
        : base(
            issue.Kind == HistoryIssueKind.SuspectSample ? FindingCode.SuspectSample : FindingCode.RecordFault,
            // A latest sample that is suspect or contradicts itself leaves the machine unwatched: another one is due. An old one has been
            // overtaken.
            (isLatest && issue.Kind is HistoryIssueKind.SuspectSample or HistoryIssueKind.ConflictingSample)
            || issue.Kind == HistoryIssueKind.DatedLater
                ? Severity.Alert
                : Severity.Information,
            measurand
        ) => Issue = issue;

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

    internal override string Said(Sentences sentences) => sentences.Record(Issue);
}
