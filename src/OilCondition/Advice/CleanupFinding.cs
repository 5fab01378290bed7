using OilCondition.Cleanup;

namespace OilCondition;

/// <summary>Where a treatment that is under way stands, or that its sensor and its samples contradict each other.</summary>
internal sealed class CleanupFinding : Finding
{
    private CleanupFinding(CleanupProgress progress, FindingCode code, Severity severity)
        : base(code, severity, progress.Run.Measurand) => Progress = progress;

    /// <summary>The treatment and its status.</summary>
    public CleanupProgress Progress { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence =>
        Code == FindingCode.CleanupSourcesDisagree ? OfSources(Progress.Status.Contradiction!) : OfProgress();

    internal static IEnumerable<CleanupFinding> Of(CleanupProgress? progress)
    {
        if (progress is null)
        {
            yield break;
        }

        yield return progress.Status.Arrival switch
        {
            Arrival<DateTimeOffset>.Already => new(progress, FindingCode.CleanupTargetReached, Severity.Information),
            Arrival<DateTimeOffset>.Never => new(progress, FindingCode.CleanupStalled, Severity.Alert),
            _ when progress.Status.Reason == CompletionReason.Stalled => new(
                progress,
                FindingCode.CleanupStalled,
                Severity.Alert
            ),
            _ => new(progress, FindingCode.CleanupUnderWay, Severity.Information),
        };
        if (progress.Status.Contradiction is not null)
        {
            yield return new(progress, FindingCode.CleanupSourcesDisagree, Severity.Alert);
        }
    }

    private static List<EvidenceItem> OfSources(SourceContradiction apart) =>
        [
            EvidenceItem.Number("mean-by-samples", apart.SampleMean, apart.Measurand.Unit, apart.Uncertainty),
            EvidenceItem.Number("mean-by-sensor", apart.SensorMean, apart.Measurand.Unit, apart.Uncertainty),
            EvidenceItem.Number("samples-less-sensor", apart.Difference, apart.Measurand.Unit, apart.Uncertainty),
            EvidenceItem.Number(
                "uncertainty-of-difference",
                apart.Uncertainty,
                apart.Measurand.Unit,
                apart.Uncertainty
            ),
            EvidenceItem.Number("readings-compared", apart.Count, ""),
        ];

    private List<EvidenceItem> OfProgress()
    {
        var status = Progress.Status;
        var curve = status.Curve;
        List<EvidenceItem> evidence =
        [
            EvidenceItem.Moment("started", Progress.Local(Progress.Run.At)),
            EvidenceItem.Number("target", Progress.Run.Target, Measurand.Unit),
            EvidenceItem.Number("holding-time", status.Options.HoldFor.TotalHours, "h"),
            EvidenceItem.Word("readings-of", status.FollowsSensor ? "sensor" : "samples"),
            EvidenceItem.Number("readings-used", curve.Count, ""),
            EvidenceItem.Number("readings-of-initial-phase", curve.LeftOutReadings.Count, ""),
        ];
        if (curve.HasCurve)
        {
            evidence.Add(EvidenceItem.Number("rate", curve.RatePerHour, "per h"));
            evidence.Add(EvidenceItem.Number("floor", curve.Floor, Measurand.Unit));
            evidence.Add(EvidenceItem.Number("time-constants-observed", curve.ObservedTimeConstants, ""));
        }

        switch (status.Arrival)
        {
            case Arrival<DateTimeOffset>.Already met:
                evidence.Add(EvidenceItem.Moment("met", Progress.Local(met.At)));
                break;
            case Arrival<DateTimeOffset>.Expected expected:
                evidence.Add(EvidenceItem.Moment("earliest", Progress.Local(expected.Earliest)));
                evidence.Add(EvidenceItem.Moment("expected", Progress.Local(expected.Estimate)));
                evidence.Add(EvidenceItem.Moment("latest", Progress.Local(expected.Latest)));
                if (Progress.IsPastDue)
                {
                    evidence.Add(EvidenceItem.Moment("past-due-at", Progress.AsOf));
                    evidence.Add(EvidenceItem.Moment("last-reading", Progress.Local(status.AsOf)));
                }

                break;
            case Arrival<DateTimeOffset>.NotBefore open:
                evidence.Add(EvidenceItem.Moment("earliest", Progress.Local(open.Earliest)));
                break;
        }

        if (status.MostOfPlannedPace is { } pace)
        {
            evidence.Add(EvidenceItem.Number("part-of-the-planned-pace-at-most", 100 * pace, "%"));
        }

        evidence.AddRange(status.StallEvidence.Where(item => item.Id != "target"));
        return evidence;
    }

    internal override string Said(Sentences sentences) => sentences.Cleanup(this);
}
