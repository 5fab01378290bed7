using OilCondition.Cleanup;

namespace OilCondition;

/// <summary>A treatment that is under way, as far as its readings tell.</summary>
public sealed class CleanupProgress
{
    internal CleanupProgress(
        TreatmentRun run,
        CleanupCurve curve,
        TimeToTarget timeToTarget,
        IReadOnlyList<SeriesPoint> points
    )
    {
        Run = run;
        Curve = curve;
        TimeToTarget = timeToTarget;
        Points = [.. curve.UsedReadings.Select(i => points[i])];
    }

    /// <summary>The treatment.</summary>
    public TreatmentRun Run { get; }

    /// <summary>The fitted fall.</summary>
    public CleanupCurve Curve { get; }

    /// <summary>When the target is reached.</summary>
    public TimeToTarget TimeToTarget { get; }

    /// <summary>The readings used, in order of time.</summary>
    public IReadOnlyList<SeriesPoint> Points { get; }

    /// <summary>Readings of the run that are not used, those of a first stage that is no exponential; the curve says which and why.</summary>
    public int NotUsed => Curve.LeftOutReadings.Count;
}
