using OilCondition.Cleanup;

namespace OilCondition;

/// <summary>A treatment that is under way, as far as its readings tell.</summary>
public sealed class CleanupProgress
{
    internal CleanupProgress(TreatmentRun run, CleanupStatus status)
    {
        Run = run;
        Status = status;
    }

    /// <summary>The treatment.</summary>
    public TreatmentRun Run { get; }

    /// <summary>Where it stands: phase, curve, arrival, stall, contradiction. The same as a <see cref="CleanupMonitor"/> that takes its readings.</summary>
    public CleanupStatus Status { get; }

    /// <summary>Treatment and status.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        $"{Run.Measurand.Name} to {Text.PlainText.Number(Run.Target)} {Run.Measurand.Unit}: {Status}";
}
