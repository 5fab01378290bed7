using OilCondition.Statistics;
using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>Whether a cleanup stalls, and the likely causes with their evidence, the likeliest first.</summary>
/// <remarks>
/// The observed level is set beside the planned one, and each cause has its share of the difference. Gauges that read other than planned explain what the physics
/// of the plan makes of their readings. What they leave has one more cause: water that comes in, sweep air that does not flow, too little oil flow, or a gauge that
/// reads wrong. Each is asked which level and rate it would give (<see cref="RunConditions.Of"/> a plan). Where more than one fits,
/// <see cref="IsCauseTold"/> is false and <see cref="ToTellApart"/> names the readings that would tell. Derived from the balance of a well-mixed tank.
/// <para>
/// Where the water does not leave at all (titrations that rise or stand above saturation, a sensor that stands at saturation), what comes in follows from the balance:
/// what the oil shows and what the unit takes out at that content.
/// </para>
/// <para>
/// Stalled: the readings exclude a level at the target or below, however often they are looked at; or in three planned time constants the content has not
/// fallen by one, and stands above the target; or titrations, one turnover after the oil was warm, show no fall where the plan has one. Slow: the target is within reach and the readings exclude nine tenths of the planned rate. Shares under 5 % are left out. These limits are ours.
/// </para>
/// <para>Caution: hot oil, vacuum, electricity (<see cref="Cautions"/>): the makers' instructions, local codes and licensed practice come first.</para>
/// </remarks>
/// <example>
/// <code>
/// var diagnosis = StallDiagnosis.Of(status, RunConditions.Of(plan, processTemperature, chamberPressure));
/// if (!diagnosis.IsCauseTold) { Console.WriteLine(string.Join("; ", diagnosis.ToTellApart)); }
/// </code>
/// </example>
public sealed partial class StallDiagnosis
{
    private const double SlowBelow = 0.9;

    private StallDiagnosis(
        StallVerdict verdict,
        IReadOnlyList<EvidenceItem> evidence,
        IReadOnlyList<StallCheck> checks,
        StallCauses? causes = null
    )
    {
        Verdict = verdict;
        Evidence = evidence;
        CheckCodes = checks;
        Checks = [.. checks.Select(StallWords.Of)];
        var found = causes ?? StallCauses.None;
        Causes = found.Causes;
        IsCauseTold = found.IsTold;
        Alternatives = found.Alternatives;
        ToTellApart = [.. found.Telling.Select(StallWords.Of)];
        WaterIngress = found.WaterIngress;
    }

    /// <summary>Whether it stalls.</summary>
    public StallVerdict Verdict { get; }

    /// <summary>The causes, the likeliest first; none where there is nothing to explain.</summary>
    public IReadOnlyList<StallDiagnosis.Cause> Causes { get; }

    /// <summary>Whether the readings tell the cause; false where several causes fit them alike, and where there is none.</summary>
    public bool IsCauseTold { get; }

    /// <summary>The readings that would tell causes apart that fit alike; none where the cause is told.</summary>
    public IReadOnlyList<string> ToTellApart { get; }

    /// <summary>Water that comes in, if that is the cause: a sensor at saturation gives only the least; null where nothing is to be explained.</summary>
    public CleanupFigure<MassFlow>? WaterIngress { get; }

    /// <summary>The figures behind the verdict.</summary>
    public IReadOnlyList<EvidenceItem> Evidence { get; }

    /// <summary>What to check for the verdict itself; each cause has its own.</summary>
    public IReadOnlyList<string> Checks { get; }

    internal IReadOnlyList<StallCheck> CheckCodes { get; }

    /// <summary>Causes that fit alike.</summary>
    internal IReadOnlyList<StallCauseKind> Alternatives { get; }

    /// <summary>What can hurt someone.</summary>
    public IReadOnlyList<Caution> Cautions { get; private set; } = CautionsOf.Vacuum;

    /// <summary>Diagnoses a run that is followed: also one whose water does not fall at all, which has no curve.</summary>
    /// <param name="status">Where the run stands; it must follow water to a content, with its plan (<see cref="CleanupMonitorOptions.Planned"/>).</param>
    /// <param name="conditions">How the unit runs now.</param>
    /// <param name="confidence">Two-sided confidence level of the ends that decide, above 0 and below 1.</param>
    /// <returns>Verdict and causes.</returns>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    /// <exception cref="ArgumentException">The run has no target for water, or no plan.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level lies outside its range.</exception>
    public static StallDiagnosis Of(CleanupStatus status, RunConditions conditions, double confidence = 0.9)
    {
        Guard.NotNull(status);
        Guard.NotNull(conditions);
        Guard.OpenUnitInterval(confidence);
        return Under(conditions, status.HasFreeWater, Diagnosed(status, conditions, confidence));
    }

    private static StallDiagnosis Diagnosed(CleanupStatus status, RunConditions conditions, double confidence)
    {
        if (status.Options is not { IsWater: true, Target: { } ppm })
        {
            throw new ArgumentException("The run must follow water to a content in mg/kg.", nameof(status));
        }

        if (status.Options.Planned is not { } planned)
        {
            throw new ArgumentException(
                "The run was followed without a plan; state it in the options of its monitor.",
                nameof(status)
            );
        }

        if (status.IsMet)
        {
            return new StallDiagnosis(StallVerdict.Done, [EvidenceItem.Number("target", ppm, "mg/kg")], []);
        }

        // What circulation stirs up from the bottom looks like a leak until one turnover has mixed it.
        if (status is { HasFreeWater: true, FollowsSensor: false, IsStalled: false, TurnedOver: null, Tank: { } tank })
        {
            return new StallDiagnosis(
                StallVerdict.NotDetermined,
                [
                    EvidenceItem.Number("warm-for", tank.SettledHours, "h"),
                    EvidenceItem.Number("time-of-one-turnover", 1 / planned.Loop.TurnoversPerHour, "h"),
                ],
                [StallCheck.MoreReadings]
            );
        }

        if (status is { StallSign: StallSign.Rises or StallSign.BehindThePlan, Stretch: { } stretch })
        {
            return OfBalance(WaterBalanceNow.OfStretch(stretch, planned, conditions, confidence), stretch);
        }

        if (
            status.SensorAtSaturation is { } pinned
            && (status.FollowsSensor || status.StallSign == StallSign.AtSaturation)
        )
        {
            return AtSaturation(status, pinned.Since, pinned.Ppm, ppm, planned, conditions, confidence);
        }

        return Of(status.Curve, ppm, planned, conditions, confidence, status.IsStalled, status.Tank);

        StallDiagnosis OfBalance(WaterBalanceNow balance, RunStretch over) =>
            new(
                StallVerdict.Stalled,
                [
                    EvidenceItem.Number("target", ppm, "mg/kg"),
                    EvidenceItem.Number("mean", over.MeanValue, "mg/kg"),
                    EvidenceItem.Number("change-by-a-straight-line", -over.Fall, "mg/kg"),
                    EvidenceItem.Number("observed-for", over.Hours, "h"),
                ],
                status.FollowsSensor ? [StallCheck.TitrationBesideSensor] : [],
                BalanceCauses.Of(balance, planned, conditions)
            );
    }

    /// <summary>Diagnoses a run by its curve alone.</summary>
    /// <param name="curve">The fitted fall, in mg/kg.</param>
    /// <param name="target">The content to reach, 0 to 500 000 mg/kg.</param>
    /// <param name="planned">What was planned.</param>
    /// <param name="conditions">How the unit runs now.</param>
    /// <param name="confidence">Two-sided confidence level of the ends that decide, above 0 and below 1.</param>
    /// <returns>Verdict and causes.</returns>
    /// <exception cref="ArgumentNullException">An argument is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The target or the level lies outside its range.</exception>
    public static StallDiagnosis Of(
        CleanupCurve curve,
        MassFraction target,
        PlannedPerformance planned,
        RunConditions conditions,
        double confidence = 0.9
    ) =>
        Under(
            Guard.NotNull(conditions),
            hasFreeWater: null,
            Of(
                Guard.NotNull(curve),
                PhysicalRange.Water(target),
                Guard.NotNull(planned),
                conditions,
                Guard.OpenUnitInterval(confidence),
                isShownToStall: null,
                tank: null
            )
        );

    /// <summary>Verdict, causes and checks as sentences.</summary>
    /// <returns>One line for the verdict, two for each cause, one of caution.</returns>
    public string ToText() => StallWords.Text(this);

    /// <summary>The verdict and the likeliest cause.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        StallWords.Of(Verdict)
        + (Causes.Count == 0 ? "" : $" Likeliest: {Causes[0]}.")
        + (Alternatives.Count == 0 ? "" : $" {StallWords.NotTold(this)}");

    /// <summary>The cautions of the work as it runs: those of a plan under the same conditions.</summary>
    private static StallDiagnosis Under(RunConditions conditions, bool? hasFreeWater, StallDiagnosis diagnosis)
    {
        diagnosis.Cautions = CautionsOf.Treatment(
            TreatmentKind.VacuumDehydration,
            new WorkConditions(
                Math.Max(conditions.ProcessTemperature.DegreesCelsius, conditions.WorkingTemperature.DegreesCelsius),
                conditions.ChamberPressure?.Pascals,
                HasFreeWater: hasFreeWater
            )
        );
        return diagnosis;
    }

    private static StallDiagnosis Of(
        CleanupCurve curve,
        double ppm,
        PlannedPerformance planned,
        RunConditions conditions,
        double confidence,
        bool? isShownToStall,
        TankReading? tank
    )
    {
        var oneSided = 0.5 + confidence / 2;
        if (IsSaturated(curve))
        {
            return new StallDiagnosis(
                StallVerdict.SensorAtSaturation,
                [EvidenceItem.Number("readings-up-to-saturation", curve.LeftOutReadings.Count, "")],
                [StallCheck.TitrationBesideSensor, StallCheck.StandingWater]
            );
        }

        if (!curve.HasCurve)
        {
            return new StallDiagnosis(
                StallVerdict.NotDetermined,
                [EvidenceItem.Number("readings", curve.Count, "")],
                [StallCheck.MoreReadings]
            );
        }

        var now = curve.ValueAt(curve.LastReadingAt);
        List<EvidenceItem> evidence =
        [
            EvidenceItem.Number("target", ppm, "mg/kg"),
            EvidenceItem.Number("content-by-the-curve-at-the-last-reading", now, "mg/kg"),
        ];
        StallCauses Causes(double level) =>
            new LevelHypotheses(curve, level, planned, conditions, confidence, tank).ToCauses();
        StallDiagnosis Stalled(double level) =>
            new(StallVerdict.Stalled, evidence, [StallCheck.TitrationBesideSensor], Causes(level));
        if (SequentialLevel.ShowsBelow(curve, ppm, confidence))
        {
            return new StallDiagnosis(StallVerdict.Done, evidence, []);
        }

        // A run that is followed has been looked at before: what its monitor says of the stall counts.
        var leastLevel = SequentialLevel.LowestFloor(curve, confidence);
        if (isShownToStall != false && leastLevel is { } floor && floor > ppm)
        {
            evidence.Add(EvidenceItem.Number("lower-end-of-the-level", floor, "mg/kg"));
            return Stalled(curve.Floor);
        }

        if (isShownToStall ?? StallLook.IsFlat(curve, ppm, planned, confidence))
        {
            evidence.Add(
                EvidenceItem.Number("planned-time-constants-passed", StallLook.PlannedConstants(curve, planned), "")
            );
            return Stalled(now);
        }

        var highest = curve.Fall.RateInterval(oneSided, IntervalSide.Upper);
        if (curve.TimeTo(ppm, confidence) is Arrival<DateTimeOffset>.Expected or Arrival<DateTimeOffset>.Already)
        {
            if (!(highest.Upper < SlowBelow * planned.RatePerHour))
            {
                return new StallDiagnosis(StallVerdict.NotStalled, evidence, []);
            }

            evidence.Add(EvidenceItem.Number("upper-end-of-the-rate", highest.Upper!.Value, "1/h"));
            return new StallDiagnosis(
                StallVerdict.Slow,
                evidence,
                [],
                StallCauses.SlowRate(curve, planned, conditions)
            );
        }

        return new StallDiagnosis(
            StallVerdict.NotDetermined,
            evidence,
            [StallCheck.MoreReadings],
            curve.Floor > ppm ? Causes(curve.Floor) : null
        );
    }

    /// <summary>A sensor that sees only that the oil is saturated: what was there before bounds what has come in since.</summary>
    private static StallDiagnosis AtSaturation(
        CleanupStatus status,
        DateTimeOffset since,
        double saturationPpm,
        double targetPpm,
        PlannedPerformance planned,
        RunConditions conditions,
        double confidence
    )
    {
        List<EvidenceItem> evidence =
        [
            EvidenceItem.Number("target", targetPpm, "mg/kg"),
            EvidenceItem.Number("at-saturation-for", (status.AsOf - since).TotalHours, "h"),
            EvidenceItem.Number("saturation", saturationPpm, "mg/kg"),
        ];
        StallCheck[] checks = [StallCheck.TitrationBesideSensor, StallCheck.StandingWater];
        var verdict = status.IsStalled ? StallVerdict.Stalled : StallVerdict.SensorAtSaturation;
        if (
            status.WarmAndMixedSince is not { } warm
            || WaterBalanceNow.AtSaturation(status, warm, planned, conditions, confidence) is not { } balance
        )
        {
            return new StallDiagnosis(verdict, evidence, checks);
        }

        evidence.AddRange(balance.Evidence);
        return status.IsStalled
            ? new StallDiagnosis(StallVerdict.Stalled, evidence, checks, BalanceCauses.Of(balance, planned, conditions))
            : new StallDiagnosis(verdict, evidence, checks);
    }

    private static bool IsSaturated(CleanupCurve curve) =>
        curve.UsedReadings.Count == 0
        && curve.LeftOutReasons.Count > 0
        && curve.LeftOutReasons[curve.LeftOutReasons.Count - 1] == InitialPhaseReason.UpToLastSaturated;
}
