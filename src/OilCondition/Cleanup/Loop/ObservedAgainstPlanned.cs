using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>What a run does beside what was planned: removal per pass, water that comes in, and where it levels off.</summary>
/// <remarks>
/// Observed: η = k V / Q, g = k (floor − p) V ρ, and the floor of the curve, each with the
/// interval of the fit; the planned figures, volume, flow and density are taken as exact but for the tolerance.
/// <para>
/// A figure is better or worse where its whole interval lies beyond the planned one by more than the tolerance times a scale; it agrees where it
/// does not, both ends exist and lie within one scale of the plan. Anything wider is not determined. The scale is the planned figure itself; for
/// ingress it is what raises the level by as much as the planned level, k V ρ level, where that is more. The limits are ours.
/// </para>
/// </remarks>
/// <example>
/// <code>
/// var beside = ObservedAgainstPlanned.Of(curve, PlannedPerformance.Of(plan));
/// if (beside.RemovalAgreement == PlanAgreement.Worse) { }      // poor contact, a bypass, a short circuit, less flow than stated
/// </code>
/// </example>
public sealed class ObservedAgainstPlanned
{
    private ObservedAgainstPlanned(CleanupCurve curve, PlannedPerformance planned, double confidence, double tolerance)
    {
        Curve = curve;
        Planned = planned;
        Confidence = confidence;
        Tolerance = Ratio.FromDecimalFractions(tolerance);

        RemovalPerPass = new LoopPerformance(curve, planned.Loop).RemovalPerPass(confidence);
        var plannedRemoval = planned.RemovalPerPass.DecimalFractions;
        RemovalAgreement = Judge(
            RemovalPerPass,
            one => one.DecimalFractions,
            plannedRemoval,
            plannedRemoval,
            moreIsBetter: true
        );

        WaterIngress = new WaterAccount(curve, planned.Loop.Charge, planned.OilDensity).Ingress(
            planned.FloorWithoutIngress,
            confidence
        );
        var plannedIngress = planned.WaterIngress.KilogramsPerHour;
        IngressAgreement =
            WaterIngress.Outcome == CleanupFigureOutcome.FloorContradicted
                ? PlanAgreement.Better
                : Judge(
                    WaterIngress,
                    one => one.KilogramsPerHour,
                    plannedIngress,
                    Math.Max(
                        plannedIngress,
                        planned.RatePerHour * planned.OilKilograms * planned.Level.DecimalFractions
                    ),
                    moreIsBetter: false
                );

        Level = FigureOf.Interval(
            curve,
            curve.FloorInterval(confidence),
            curve.HasCurve ? curve.Floor : null,
            ppm => MassFraction.FromPartsPerMillion(ppm),
            CleanupFigureMethod.Profile
        );
        var plannedLevel = planned.Level.PartsPerMillion;
        LevelAgreement = Judge(
            Level,
            one => one.PartsPerMillion,
            plannedLevel,
            Math.Max(1, plannedLevel),
            moreIsBetter: false
        );
    }

    /// <summary>The fitted fall, in mg/kg.</summary>
    public CleanupCurve Curve { get; }

    /// <summary>What was planned.</summary>
    public PlannedPerformance Planned { get; }

    /// <summary>Confidence level of the intervals.</summary>
    public double Confidence { get; }

    /// <summary>What a plan may be out by and still agree.</summary>
    public Ratio Tolerance { get; }

    /// <summary>Removal per pass on the excess over the floor (effective single-pass efficiency).</summary>
    public CleanupFigure<Ratio> RemovalPerPass { get; }

    /// <summary>How the removal per pass compares with the plan.</summary>
    public PlanAgreement RemovalAgreement { get; }

    /// <summary>Water that comes in, above the planned floor without ingress.</summary>
    public CleanupFigure<MassFlow> WaterIngress { get; }

    /// <summary>How the ingress compares with the plan; better also where the readings exclude so high a floor.</summary>
    public PlanAgreement IngressAgreement { get; }

    /// <summary>Where the content levels off; planned with the planned ingress.</summary>
    public CleanupFigure<MassFraction> Level { get; }

    /// <summary>How the level compares with the plan.</summary>
    public PlanAgreement LevelAgreement { get; }

    /// <summary>Compares.</summary>
    /// <param name="curve">The fitted fall, in mg/kg.</param>
    /// <param name="planned">What was planned.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1.</param>
    /// <param name="tolerance">What a plan may be out by and still agree, 0 to 0.5; null for 0.1 (ours).</param>
    /// <returns>The figures side by side.</returns>
    /// <exception cref="ArgumentNullException">Curve or plan is missing.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level or the tolerance lies outside its range.</exception>
    public static ObservedAgainstPlanned Of(
        CleanupCurve curve,
        PlannedPerformance planned,
        double confidence = 0.9,
        Ratio? tolerance = null
    ) =>
        new(
            Guard.NotNull(curve),
            Guard.NotNull(planned),
            Guard.OpenUnitInterval(confidence),
            Guard.InRange(tolerance?.DecimalFractions ?? 0.1, 0, 0.5, "(ratio)", nameof(tolerance))
        );

    /// <summary>The three figures with what was planned.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        $"removal per pass {RemovalPerPass}, planned {PlainText.Number(Planned.RemovalPerPass.Percent)} %: {PlainText.Spaced(RemovalAgreement)}; "
        + $"water coming in {WaterIngress}, planned {PlainText.Number(Planned.WaterIngress.GramsPerHour)} g/h: {PlainText.Spaced(IngressAgreement)}; "
        + $"level {Level}, planned {PlainText.Number(Planned.Level.PartsPerMillion)} mg/kg: {PlainText.Spaced(LevelAgreement)}";

    private PlanAgreement Judge<T>(
        CleanupFigure<T> observed,
        Func<T, double> number,
        double planned,
        double scale,
        bool moreIsBetter
    )
        where T : struct
    {
        if (observed.Outcome == CleanupFigureOutcome.Known)
        {
            return PlanAgreement.NotDetermined;
        }

        var slack = Tolerance.DecimalFractions * scale;
        if (observed.Lower is { } lowest && number(lowest) > planned + slack)
        {
            return moreIsBetter ? PlanAgreement.Better : PlanAgreement.Worse;
        }

        if (observed.Upper is { } highest && number(highest) < planned - slack)
        {
            return moreIsBetter ? PlanAgreement.Worse : PlanAgreement.Better;
        }

        return
            observed.Lower is { } lower
            && observed.Upper is { } upper
            && number(lower) >= planned - scale
            && number(upper) <= planned + scale
            ? PlanAgreement.Agrees
            : PlanAgreement.NotDetermined;
    }
}
