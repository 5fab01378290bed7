using OilCondition.Cleanup;

namespace OilCondition;

/// <summary>Where a treatment that is under way stands.</summary>
public sealed class CleanupFinding : Finding
{
    internal CleanupFinding(CleanupProgress progress)
        : base(CodeOf(progress), SeverityOf(progress), progress.Run.Measurand) => Progress = progress;

    /// <summary>The treatment and its fitted fall.</summary>
    public CleanupProgress Progress { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<EvidenceItem> Evidence
    {
        get
        {
            var evidence = new List<EvidenceItem>
            {
                EvidenceItem.Moment("started", Progress.Run.At),
                EvidenceItem.Number("target", Progress.Run.Target, Measurand.Unit),
                EvidenceItem.Number("readings used", Progress.Points.Count, ""),
                EvidenceItem.Number("readings of a first stage, not used", Progress.NotUsed, ""),
            };
            if (Progress.Curve.HasCurve)
            {
                evidence.Add(EvidenceItem.Number("rate", Progress.Curve.RatePerHour, "per h"));
                evidence.Add(EvidenceItem.Number("floor", Progress.Curve.Floor, Measurand.Unit));
                evidence.Add(EvidenceItem.Number("time constants observed", Progress.Curve.ObservedTimeConstants, ""));
            }

            if (Progress.TimeToTarget is TimeToTarget.Expected expected)
            {
                evidence.Add(EvidenceItem.Moment("earliest", expected.Earliest));
                evidence.Add(EvidenceItem.Moment("expected", expected.Estimate));
                evidence.Add(EvidenceItem.Moment("latest", expected.Latest));
            }

            return evidence;
        }
    }

    private static FindingCode CodeOf(CleanupProgress progress) =>
        progress.TimeToTarget switch
        {
            TimeToTarget.Reached => FindingCode.CleanupTargetReached,
            TimeToTarget.OutOfReach => FindingCode.CleanupStalled,
            _ => FindingCode.CleanupUnderWay,
        };

    private static Severity SeverityOf(CleanupProgress progress) =>
        progress.TimeToTarget is TimeToTarget.OutOfReach ? Severity.Alert : Severity.Information;
}
