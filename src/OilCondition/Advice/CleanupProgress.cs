using OilCondition.Purification;
using OilCondition.Sampling;

namespace OilCondition.Advice;

/// <summary>A treatment that is under way, as far as its readings tell.</summary>
public sealed class CleanupProgress
{
    internal CleanupProgress(
        TreatmentRun run,
        CleanupCurve curve,
        TimeToTarget timeToTarget,
        IReadOnlyList<SeriesPoint> points,
        int notUsed
    )
    {
        Run = run;
        Curve = curve;
        TimeToTarget = timeToTarget;
        Points = points;
        NotUsed = notUsed;
    }

    /// <summary>The treatment.</summary>
    public TreatmentRun Run { get; }

    /// <summary>The fitted fall.</summary>
    public CleanupCurve Curve { get; }

    /// <summary>When the target is reached.</summary>
    public TimeToTarget TimeToTarget { get; }

    /// <summary>The readings used, in order of time.</summary>
    public IReadOnlyList<SeriesPoint> Points { get; }

    /// <summary>Readings of the run that are not used: those up to the last sensor reading at saturation (the free-water stage), and bounds.</summary>
    public int NotUsed { get; }
}
