using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>What a run does beside what was planned: removal per pass, water that comes in, and where it levels off.</summary>
/// <remarks>
/// Observed: η = k V / Q, g = k (floor − p) V ρ, and the floor of the curve (<see cref="LoopPerformance"/>, <see cref="WaterAccount"/>), each with the
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
/// if (beside.RemovalPerPass.Agreement == PlanAgreement.Worse) { }      // poor contact, a bypass, a short circuit, less flow than stated
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

        var removal = new LoopPerformance(curve, planned.Loop).RemovalPerPass(confidence);
        RemovalPerPass = new ComparedFigure<Ratio>(
            removal,
            planned.RemovalPerPass,
            Judge(
                removal,
                one => one.DecimalFractions,
                planned.RemovalPerPass.DecimalFractions,
                planned.RemovalPerPass.DecimalFractions,
                moreIsBetter: true
            )
        );

        var ingress = new WaterAccount(curve, planned.Loop.Charge, planned.OilDensity).Ingress(
            planned.FloorWithoutIngress,
            confidence
        );
        var ingressScale = Math.Max(
            planned.WaterIngress.KilogramsPerHour,
            planned.RatePerHour * planned.OilKilograms * planned.Level.DecimalFractions
        );
        WaterIngress = new ComparedFigure<MassFlow>(
            ingress,
            planned.WaterIngress,
            ingress.Outcome == CleanupFigureOutcome.FloorContradicted
                ? PlanAgreement.Better
                : Judge(
                    ingress,
                    one => one.KilogramsPerHour,
                    planned.WaterIngress.KilogramsPerHour,
                    ingressScale,
                    moreIsBetter: false
                )
        );

        var level = FigureOf.Interval(
            curve,
            curve.FloorInterval(confidence),
            curve.HasCurve ? curve.Floor : null,
            ppm => MassFraction.FromPartsPerMillion(ppm),
            CleanupFigureMethod.Profile
        );
        Level = new ComparedFigure<MassFraction>(
            level,
            planned.Level,
            Judge(
                level,
                one => one.PartsPerMillion,
                planned.Level.PartsPerMillion,
                Math.Max(1, planned.Level.PartsPerMillion),
                moreIsBetter: false
            )
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
    public ComparedFigure<Ratio> RemovalPerPass { get; }

    /// <summary>Water that comes in, above the planned floor without ingress. Better also where the readings exclude so high a floor.</summary>
    public ComparedFigure<MassFlow> WaterIngress { get; }

    /// <summary>Where the content levels off; planned with the planned ingress.</summary>
    public ComparedFigure<MassFraction> Level { get; }

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
        if (observed.HasLower && number(observed.Lower) > planned + slack)
        {
            return moreIsBetter ? PlanAgreement.Better : PlanAgreement.Worse;
        }

        if (observed.HasUpper && number(observed.Upper) < planned - slack)
        {
            return moreIsBetter ? PlanAgreement.Worse : PlanAgreement.Better;
        }

        return
            observed.HasLower
            && observed.HasUpper
            && number(observed.Lower) >= planned - scale
            && number(observed.Upper) <= planned + scale
            ? PlanAgreement.Agrees
            : PlanAgreement.NotDetermined;
    }
}
