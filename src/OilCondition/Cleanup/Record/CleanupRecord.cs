using OilCondition.Cleanliness;
using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>The record of a run: what was done, what it came to, and what is still to be checked.</summary>
/// <remarks>
/// Water removed by balance: V ρ (C_before − C_end), the content at the end from the fitted curve with its interval, litres at 20 °C. Water that came in and left
/// again is in the condensate and not in that: drawn off is V ρ (C_before − C_end) + g t, with the ingress g stated or, from a stated floor without ingress, that of
/// the curve, g = k (floor − p) V ρ, over the whole run t. What leaves as vapour with the exhaust is not in the vessel: the condensate agrees where the interval of
/// (1 − exhaust share) times what was drawn off overlaps condensate · (1 ± error). Where
/// the ingress is not known it is not counted. Volume passed is metered, else flow times duration, which is too much where a thick cold start held the flow down.
/// </remarks>
/// <example>
/// <code>
/// var record = CleanupRecord.Of(monitor.Status(), facts);
/// File.WriteAllText("record.json", record.ToJson());
/// </code>
/// </example>
public sealed class CleanupRecord
{
    private CleanupRecord(CleanupStatus status, CleanupRunFacts facts, StallDiagnosis? diagnosis)
    {
        Status = status;
        Facts = facts;
        Diagnosis = diagnosis;
        Length = Elapsed.FromHours((End - Start).TotalHours);
        IsVolumeMetered = facts.VolumePassed.HasValue;
        VolumePassed = facts.VolumePassed ?? Volume.FromLiters(facts.Loop.Flow.LitersPerHour * Length.TotalHours);
        Turnovers = VolumePassed.Liters / facts.Loop.Charge.Liters;
        Balance = new WaterBalance(status, facts, Length, End);
        Cautions = CautionsOf.Treatment(
            TreatmentKind.VacuumDehydration,
            new WorkConditions(status.HighestTemperature?.DegreesCelsius)
        );
        Verdict = VerdictOf(status);
        ReboundCheckDue = Verdict == CleanupVerdict.TargetMet ? End.AddHours(facts.ReboundCheckAfter.TotalHours) : null;
    }

    /// <summary>The state at the end: phase, temperatures, curve, holding.</summary>
    public CleanupStatus Status { get; }

    /// <summary>What was stated besides the readings.</summary>
    public CleanupRunFacts Facts { get; }

    /// <summary>The diagnosis, if one was made; or null.</summary>
    public StallDiagnosis? Diagnosis { get; }

    /// <summary>Start of the run.</summary>
    public DateTimeOffset Start => Status.Options.StartedAt;

    /// <summary>The last reading.</summary>
    public DateTimeOffset End => Status.AsOf;

    /// <summary>From start to end.</summary>
    public TimeSpan Length { get; }

    /// <summary>Whether the volume passed was metered.</summary>
    public bool IsVolumeMetered { get; }

    /// <summary>Oil that passed the purifier.</summary>
    public Volume VolumePassed { get; }

    /// <summary>Charges that passed the purifier.</summary>
    public double Turnovers { get; }

    /// <summary>Water that the oil lost, by balance.</summary>
    public CleanupFigure<Volume> WaterRemoved => Balance.Removed;

    /// <summary>Water that came in during the run, stated, or found from the curve and a stated floor; null where it is not known.</summary>
    public CleanupFigure<Volume>? WaterCameIn => Balance.CameIn;

    /// <summary>Water that the purifier drew off: lost by the oil, and come in.</summary>
    public CleanupFigure<Volume> WaterDrawnOff => Balance.DrawnOff;

    /// <summary>Water that should stand in the condensate vessel: drawn off, less the share that leaves with the exhaust where that is stated.</summary>
    public CleanupFigure<Volume> CondensateExpected => Balance.Expected;

    /// <summary>Whether the condensate tells the same as <see cref="CondensateExpected"/>; null where that cannot be said.</summary>
    public bool? CondensateAgrees =>
        Balance.Agreement switch
        {
            CondensateAgreement.Agrees => true,
            CondensateAgreement.LessCollected or CondensateAgreement.MoreCollected => false,
            _ => null,
        };

    /// <summary>Condensate less the estimate of <see cref="CondensateExpected"/>; null where one of them is missing.</summary>
    public Volume? CondensateDifference => Balance.Difference;

    /// <summary>Code of the first counts; null where there are none.</summary>
    public CleanlinessCode? CodeBefore => Status.FirstParticles?.Code;

    /// <summary>Code of the latest counts; null where there are none.</summary>
    public CleanlinessCode? CodeAfter => Status.LatestParticles?.Code;

    /// <summary>When to sample for rebound; null where the target was not met.</summary>
    public DateTimeOffset? ReboundCheckDue { get; }

    /// <summary>What can hurt someone, by the highest temperature of the run.</summary>
    public IReadOnlyList<Caution> Cautions { get; }

    internal WaterBalance Balance { get; }

    internal CleanupVerdict Verdict { get; }

    /// <summary>Makes the record of a run.</summary>
    /// <param name="status">The state at its end.</param>
    /// <param name="facts">What is known besides the readings.</param>
    /// <param name="diagnosis">A diagnosis to keep with it, or null.</param>
    /// <returns>The record.</returns>
    /// <exception cref="ArgumentNullException">State or facts are missing.</exception>
    public static CleanupRecord Of(CleanupStatus status, CleanupRunFacts facts, StallDiagnosis? diagnosis = null) =>
        new(Guard.NotNull(status), Guard.NotNull(facts), diagnosis);

    /// <summary>The record as JSON: numbers with their units in the names, moments as ISO 8601 with offset, words in lower case with hyphens.</summary>
    /// <returns>The text; a figure that does not exist is absent.</returns>
    public string ToJson() => CleanupRecordJson.Of(this).ToString();

    /// <summary>Writes the document of <see cref="ToJson"/> in UTF-8 on one line, so that a file or a queue of many has one a line.</summary>
    /// <param name="stream">Where to; it is written to at once, line end and all, and stays open.</param>
    public void WriteJson(Stream stream) => CleanupRecordJson.Of(this).WriteTo(stream);

    /// <summary>The record for people.</summary>
    /// <returns>Lines of plain text.</returns>
    public string ToText() => CleanupRecordText.Write(this);

    /// <summary>Machine, verdict and length.</summary>
    /// <returns>For example <c>HP-TGB1: target met and held, 59.7 h, 9.94 turnovers</c>.</returns>
    public override string ToString() =>
        $"{Facts.Machine}: {CleanupRecordText.Of(Verdict)}, {PlainText.Number(Length.TotalHours)} h, {PlainText.Number(Turnovers)} turnovers";

    private static CleanupVerdict VerdictOf(CleanupStatus status) =>
        status.Phase switch
        {
            CleanupPhase.AtTarget => CleanupVerdict.TargetMet,
            CleanupPhase.Holding => CleanupVerdict.HoldNotCompleted,
            CleanupPhase.Rebounded => CleanupVerdict.Rebounded,
            CleanupPhase.Stalled => CleanupVerdict.Stalled,
            CleanupPhase.NoReadings => CleanupVerdict.NotDetermined,
            _ => CleanupVerdict.NotReached,
        };
}
