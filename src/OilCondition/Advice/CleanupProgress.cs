using OilCondition.Cleanup;
using OilCondition.Treatment;

namespace OilCondition;

/// <summary>A treatment that is under way, as far as its readings tell.</summary>
public sealed class CleanupProgress
{
    internal CleanupProgress(TreatmentRun run, CleanupStatus status, DateTimeOffset asOf)
    {
        Run = run;
        Status = status;
        AsOf = asOf;
        Cautions = CautionsOf.Treatment(
            run.Kind,
            new WorkConditions(
                status.HighestTemperature?.DegreesCelsius,
                HasFreeWater: status.Curve.HasCurve ? status.HasFreeWater : null
            )
        );
    }

    /// <summary>The treatment.</summary>
    public TreatmentRun Run { get; }

    /// <summary>Where it stands: phase, curve, arrival, stall, contradiction. The same as a <see cref="CleanupMonitor"/> that takes its readings.</summary>
    public CleanupStatus Status { get; }

    /// <summary>The moment of the assessment, which may be long after the latest reading.</summary>
    public DateTimeOffset AsOf { get; }

    /// <summary>
    /// Whether the moment at which the target was expected to have held has passed, and no reading has come since that shows it. Sample again.
    /// </summary>
    public bool IsPastDue => Status.Arrival is Arrival<DateTimeOffset>.Expected expected && expected.Estimate < AsOf;

    /// <summary>What can hurt someone: the cautions of this kind of treatment as it runs.</summary>
    public IReadOnlyList<Caution> Cautions { get; }

    /// <summary>Treatment and status.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        $"{Run.Measurand.Name} to {Text.PlainText.Number(Run.Target)} {Run.Measurand.Unit}: {Status}";

    /// <summary>A moment by the clock of the assessment.</summary>
    internal DateTimeOffset Local(DateTimeOffset at) => at.ToOffset(AsOf.Offset);
}
