using OilCondition.Statistics;
using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>Whether a cleanup stalls, and the likely causes with their evidence, the likeliest first.</summary>
/// <remarks>
/// The observed level L is the sum of what vacuum and sweep air allow with warm oil, p_w; what the cold adds, p − p_w; what the water that comes in adds at
/// the planned rate, g / k_plan; and what the missing rate adds, g (1/k − 1/k_plan); with g = k (L − p). The causes are ranked by their shares of L.
/// Where the readings do not bound k, the last two cannot be told apart and share L − p equally. Derived from the balance of a well-mixed tank.
/// <para>
/// Stalled: the readings exclude a level at the target or below; or in three planned time constants the content has not fallen by one, and stands above
/// the target. Slow: the target is within reach and the readings exclude nine tenths of the planned rate. Shares under 5 % are left out. These limits are ours.
/// </para>
/// <para>Caution: hot oil, vacuum, electricity (<see cref="Cautions"/>): the makers' instructions, local codes and licensed practice come first.</para>
/// </remarks>
/// <example>
/// <code>
/// var diagnosis = StallDiagnosis.Of(curve, target, planned, RunConditions.Of(plan, processTemperature, chamberPressure));
/// var likeliest = diagnosis.Causes.Count > 0 ? diagnosis.Causes[0].Kind : default;
/// </code>
/// </example>
public sealed partial class StallDiagnosis
{
    private const double LeastShare = 0.05;
    private const double SlowBelow = 0.9;

    private StallDiagnosis(
        StallVerdict verdict,
        IReadOnlyList<StallDiagnosis.Cause> causes,
        IReadOnlyList<EvidenceItem> evidence,
        IReadOnlyList<StallCheck> checks
    )
    {
        Verdict = verdict;
        Causes = causes;
        Evidence = evidence;
        CheckCodes = checks;
        Checks = [.. checks.Select(StallWords.Of)];
    }

    /// <summary>Whether it stalls.</summary>
    public StallVerdict Verdict { get; }

    /// <summary>The causes, the likeliest first; none where there is nothing to explain.</summary>
    public IReadOnlyList<StallDiagnosis.Cause> Causes { get; }

    /// <summary>The figures behind the verdict.</summary>
    public IReadOnlyList<EvidenceItem> Evidence { get; }

    /// <summary>What to check for the verdict itself; each cause has its own.</summary>
    public IReadOnlyList<string> Checks { get; }

    internal IReadOnlyList<StallCheck> CheckCodes { get; }

    /// <summary>What can hurt someone.</summary>
    public IReadOnlyList<Caution> Cautions { get; } = CautionsOf.Vacuum;

    /// <summary>Diagnoses a run.</summary>
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
    )
    {
        Guard.NotNull(curve);
        Guard.NotNull(planned);
        Guard.NotNull(conditions);
        var ppm = PhysicalRange.Water(target);
        var oneSided = 0.5 + Guard.OpenUnitInterval(confidence) / 2;

        if (IsSaturated(curve))
        {
            return new StallDiagnosis(
                StallVerdict.SensorAtSaturation,
                [],
                [EvidenceItem.Number("readings up to saturation", curve.LeftOutReadings.Count, "")],
                [StallCheck.TitrationBesideSensor, StallCheck.StandingWater]
            );
        }

        if (!curve.HasCurve)
        {
            return new StallDiagnosis(
                StallVerdict.NotDetermined,
                [],
                [EvidenceItem.Number("readings", curve.Count, "")],
                [StallCheck.MoreReadings]
            );
        }

        List<EvidenceItem> evidence =
        [
            EvidenceItem.Number("target", ppm, "mg/kg"),
            EvidenceItem.Number(
                "content by the curve at the last reading",
                curve.ValueAt(curve.LastReadingAt),
                "mg/kg"
            ),
        ];
        if (curve.TimeTo(ppm, confidence) is Arrival<DateTimeOffset>.Already { IsDemonstrated: true })
        {
            return new StallDiagnosis(StallVerdict.Done, [], evidence, []);
        }

        var lowest = curve.Fall.FloorInterval(oneSided, IntervalSide.Lower);
        if (lowest.Lower is { } floor && floor > ppm)
        {
            evidence.Add(EvidenceItem.Number("lower end of the level", floor, "mg/kg"));
            return new StallDiagnosis(
                StallVerdict.Stalled,
                LevelCauses.Of(curve, curve.Floor, planned, conditions, confidence, LeastShare),
                evidence,
                [StallCheck.TitrationBesideSensor]
            );
        }

        if (IsFlat(curve, ppm, planned, oneSided))
        {
            evidence.Add(EvidenceItem.Number("planned time constants passed", PlannedConstants(curve, planned), ""));
            return new StallDiagnosis(
                StallVerdict.Stalled,
                LevelCauses.Of(curve, curve.ValueAt(curve.LastReadingAt), planned, conditions, confidence, LeastShare),
                evidence,
                [StallCheck.TitrationBesideSensor]
            );
        }

        var highest = curve.Fall.RateInterval(oneSided, IntervalSide.Upper);
        var isSlow = highest.Upper < SlowBelow * planned.RatePerHour;
        if (curve.TimeTo(ppm, confidence) is Arrival<DateTimeOffset>.Expected or Arrival<DateTimeOffset>.Already)
        {
            if (!isSlow)
            {
                return new StallDiagnosis(StallVerdict.NotStalled, [], evidence, []);
            }

            evidence.Add(EvidenceItem.Number("upper end of the rate", highest.Upper!.Value, "1/h"));
            return new StallDiagnosis(
                StallVerdict.Slow,
                [LevelCauses.SlowRate(curve, planned, conditions)],
                evidence,
                []
            );
        }

        var suspects =
            curve.Floor > ppm ? LevelCauses.Of(curve, curve.Floor, planned, conditions, confidence, LeastShare) : [];
        return new StallDiagnosis(StallVerdict.NotDetermined, suspects, evidence, [StallCheck.MoreReadings]);
    }

    /// <summary>Verdict, causes and checks as sentences.</summary>
    /// <returns>One line for the verdict, two for each cause, one of caution.</returns>
    public string ToText() => StallWords.Text(this);

    /// <summary>The verdict and the likeliest cause.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        StallWords.Of(Verdict) + (Causes.Count == 0 ? "" : $" Likeliest: {Causes[0]}.");

    private static bool IsSaturated(CleanupCurve curve) =>
        curve.UsedReadings.Count == 0
        && curve.LeftOutReasons.Count > 0
        && curve.LeftOutReasons[curve.LeftOutReasons.Count - 1] == InitialPhaseReason.UpToLastSaturated;

    private static double PlannedConstants(CleanupCurve curve, PlannedPerformance planned) =>
        planned.RatePerHour * (curve.LastReadingAt - curve.FirstReadingAt).TotalHours;

    /// <summary>Less than one time constant's fall in three planned ones, and above the target.</summary>
    private static bool IsFlat(CleanupCurve curve, double ppm, PlannedPerformance planned, double oneSided)
    {
        var level = planned.Level.PartsPerMillion;
        var expected = level + Math.Exp(-1) * Math.Max(0, curve.ValueAt(curve.FirstReadingAt) - level);

        // A flat run has no rate, and then the profile of its curve is open; it must stand above by more than a single reading scatters.
        var last = curve.ValueAt(curve.LastReadingAt);
        var lower = last - curve.Fall.Quantile(oneSided, IntervalSide.Lower) * curve.ScatterAt(last);
        return PlannedConstants(curve, planned) >= 3 && lower > Math.Max(ppm, expected);
    }
}
