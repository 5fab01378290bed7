using OilCondition.Cleanliness;
using OilCondition.Statistics;
using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>What a fitted fall says about the purifier and the charge: removal per pass, ingress, and time still to run.</summary>
/// <remarks>
/// Balance of a well-mixed tank, see <see cref="CleanupLoop"/>: k = η Q / V and floor = p + g / k, hence η = k V / Q and g = k (floor − p).
/// k: rate of the curve, Q: flow, V: charge, η: removal per pass on the excess over the floor, p: floor of the purifier without ingress
/// (for water from saturation, vacuum and sweep air; for particles usually 0), g: ingress as rise of the content per hour.
/// <para>
/// A low η can be a purifier that is poor, bypassed or slower than stated, or a charge that is not well mixed: a curve cannot tell which.
/// All intervals here are of the profile likelihood, except ingress with readings below a limit (<see cref="CleanupFigureMethod.TwoIntervals"/>).
/// </para>
/// </remarks>
/// <example>
/// <code>
/// var performance = new LoopPerformance(curve, new CleanupLoop(Volume.FromLiters(2000), VolumeFlow.FromLitersPerMinute(20)));
/// var perPass = performance.RemovalPerPass();          // estimate, ends, outcome
/// </code>
/// </example>
internal sealed class LoopPerformance
{
    /// <summary>A curve beside the loop that it was observed on.</summary>
    /// <param name="curve">The fitted fall.</param>
    /// <param name="loop">Charge and flow.</param>
    /// <exception cref="ArgumentNullException">Curve or loop is missing.</exception>
    public LoopPerformance(CleanupCurve curve, CleanupLoop loop)
    {
        Curve = Guard.NotNull(curve);
        Loop = Guard.NotNull(loop);
    }

    /// <summary>The fitted fall.</summary>
    public CleanupCurve Curve { get; }

    /// <summary>Charge and flow.</summary>
    public CleanupLoop Loop { get; }

    /// <summary>Removal per pass on the excess over the floor, η = k V / Q (effective single-pass efficiency). Profile.</summary>
    /// <remarks>Not clipped: above 1 the charge that circulates is smaller, or the flow larger, than stated.</remarks>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The share, with its interval.</returns>
    public CleanupFigure<Ratio> RemovalPerPass(double confidence = 0.9, IntervalSide side = IntervalSide.Both) =>
        OfRate(rate => Ratio.FromDecimalFractions(rate / Loop.TurnoversPerHour), confidence, side);

    /// <summary>Share of the excess over the floor that a turnover removes, 1 − exp(−k V / Q) (effective turnover efficiency). Profile.</summary>
    /// <remarks>A purifier that takes everything out in one pass comes to 63.2 %, since cleaned oil mixes with the rest.</remarks>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>The share, 0 to 1, with its interval.</returns>
    public CleanupFigure<Ratio> RemovalPerTurnover(double confidence = 0.9, IntervalSide side = IntervalSide.Both) =>
        OfRate(rate => Ratio.FromDecimalFractions(MixedTank.ShareGone(rate / Loop.TurnoversPerHour)), confidence, side);

    /// <summary>Whether the readings exclude a removal per pass of 1 or less, so that charge or flow cannot be as stated.</summary>
    /// <param name="confidence">One-sided confidence level, above 0.5 and below 1.</param>
    /// <returns>True where the lower end of the removal per pass is above 1.</returns>
    public bool ContradictsLoop(double confidence = 0.95)
    {
        var removal = RemovalPerPass(confidence, IntervalSide.Lower);
        return removal.Lower?.DecimalFractions > 1;
    }

    /// <summary>Ingress as rise of the content with the loop shut, g = k (floor − p). Profile.</summary>
    /// <param name="floorWithoutIngress">Floor of the purifier without ingress, p, 0 to 10¹², in the unit of the readings.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>In the unit of the readings per hour, 0 or more, with its interval; an ingress of 0 inside it is not excluded.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The floor or the level lies outside its range.</exception>
    public CleanupFigure<double> IngressPerHour(
        double floorWithoutIngress,
        double confidence = 0.9,
        IntervalSide side = IntervalSide.Both
    ) => Ingress(Curve, floorWithoutIngress, perHour => perHour, confidence, side);

    /// <summary>Particles that come in per minute, g V, from a curve of counts per mL. Profile.</summary>
    /// <param name="floorWithoutIngressPerMillilitre">Count that the loop would reach without ingress, usually 0, to 10¹².</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>Particles of the size and above per minute, 0 or more, with its interval.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The floor or the level lies outside its range.</exception>
    public CleanupFigure<double> ParticleIngressPerMinute(
        double floorWithoutIngressPerMillilitre = 0,
        double confidence = 0.9,
        IntervalSide side = IntervalSide.Both
    ) =>
        Ingress(
            Curve,
            floorWithoutIngressPerMillilitre,
            perHour => perHour * Loop.Charge.Milliliters / 60,
            confidence,
            side
        );

    internal static CleanupFigure<T> Ingress<T>(
        CleanupCurve curve,
        double floorWithoutIngress,
        Func<double, T> map,
        double confidence,
        IntervalSide side
    )
        where T : struct
    {
        Guard.InRange(floorWithoutIngress, 0, CleanupOptions.LargestContent, "");
        var slope = curve.Fall.SlopeInterval(floorWithoutIngress, confidence, side, out var method);
        var oneSided = side == IntervalSide.Both ? 0.5 + confidence / 2 : confidence;
        var highest = curve.Fall.SlopeInterval(floorWithoutIngress, oneSided, IntervalSide.Upper, out _);
        if (highest.Upper < 0)
        {
            return new CleanupFigure<T>(
                CleanupFigureOutcome.FloorContradicted,
                method,
                null,
                null,
                null,
                confidence,
                slope.CoverageInDoubt,
                isExtrapolated: false
            );
        }

        double? estimate = curve.Fall.HasRate
            ? Math.Max(0, curve.RatePerHour * (curve.Floor - floorWithoutIngress))
            : null;
        return FigureOf.Interval(curve, FigureOf.NotNegative(slope), estimate, map, method);
    }

    private CleanupFigure<Ratio> OfRate(Func<double, Ratio> map, double confidence, IntervalSide side) =>
        FigureOf.Interval(
            Curve,
            Curve.Fall.RateInterval(confidence, side),
            Curve.Fall.HasRate ? Curve.RatePerHour : null,
            map,
            CleanupFigureMethod.Profile
        );
}
