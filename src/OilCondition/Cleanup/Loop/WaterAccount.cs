using OilCondition.Statistics;
using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>The water of a charge in litres: what left it, what is still to leave, what comes in. For a curve in mg/kg.</summary>
/// <remarks>
/// Water in the charge: V ρ c with V: volume of oil, ρ: its density at the temperature at which V is stated, c: content by mass; litres of
/// water at 20 °C, 998.2 kg/m³ (<see cref="WaterContent.WaterDensity"/>). Water that comes in while the purifier runs leaves as well without
/// showing in the content: <see cref="DrawnOff"/> counts it, <see cref="FallBetween"/> does not.
/// </remarks>
/// <example>
/// <code>
/// var water = new WaterAccount(curve, Volume.FromLiters(2000), Density.FromKilogramsPerCubicMeter(870));
/// var gone = water.FallBetween(curve.Origin, asOf);                               // litres, with an interval
/// var ingress = water.Ingress(MassFraction.FromPartsPerMillion(20));              // g/h above a physical floor of 20 mg/kg
/// </code>
/// </example>
internal sealed class WaterAccount
{
    /// <summary>A curve of water content beside the charge that it was observed on.</summary>
    /// <param name="curve">The fitted fall, in mg/kg.</param>
    /// <param name="charge">Volume of oil that circulates, above 0.</param>
    /// <param name="oilDensity">Density of the oil, 500 to 1500 kg/m³.</param>
    /// <exception cref="ArgumentNullException">There is no curve.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Volume or density lies outside its range.</exception>
    public WaterAccount(CleanupCurve curve, Volume charge, Density oilDensity)
    {
        Curve = Guard.NotNull(curve);
        Guard.InRange(charge.Liters, CleanupLoop.Smallest, CleanupLoop.Largest, "L", nameof(charge));
        PhysicalRange.OilDensity(oilDensity);
        Charge = charge;
        OilDensity = oilDensity;
    }

    /// <summary>The fitted fall, in mg/kg.</summary>
    public CleanupCurve Curve { get; }

    /// <summary>Volume of oil that circulates.</summary>
    public Volume Charge { get; }

    /// <summary>Density of the oil.</summary>
    public Density OilDensity { get; }

    /// <summary>Mass of the oil.</summary>
    public Mass OilMass => Mass.FromKilograms(OilKilograms);

    private double OilKilograms => Charge.CubicMeters * OilDensity.KilogramsPerCubicMeter;

    /// <summary>Water that comes in, k (floor − p) V ρ. Profile.</summary>
    /// <param name="floorWithoutIngress">Content that the purifier would reach without ingress, p: saturation, vacuum and sweep air set it.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>Mass of water per time, 0 or more, with its interval; an ingress of 0 inside it is not excluded.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The content or the level lies outside its range.</exception>
    public CleanupFigure<MassFlow> Ingress(
        MassFraction floorWithoutIngress,
        double confidence = 0.9,
        IntervalSide side = IntervalSide.Both
    ) =>
        LoopPerformance.Ingress(
            Curve,
            floorWithoutIngress.PartsPerMillion,
            perHour => MassFlow.FromGramsPerHour(perHour * OilKilograms / 1000),
            confidence,
            side
        );

    /// <summary>What the water of the charge falls by between two moments, litres. Delta.</summary>
    /// <param name="from">The earlier moment, not before the origin of the curve.</param>
    /// <param name="to">The later moment.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>Volume of water with its interval; negative where the content rises.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The moments are not in order, or the first lies before the origin.</exception>
    public CleanupFigure<Volume> FallBetween(
        DateTimeOffset from,
        DateTimeOffset to,
        double confidence = 0.9,
        IntervalSide side = IntervalSide.Both
    )
    {
        var interval = Fall(from, to, confidence, side, out var estimate);
        return FigureOf.Interval(
            Curve,
            interval,
            estimate,
            Litres,
            CleanupFigureMethod.Delta,
            to > Curve.LastReadingAt
        );
    }

    /// <summary>What the water of the charge has fallen by from a stated content until a moment, litres: with an initial phase included. Profile.</summary>
    /// <param name="before">Content before the run, 0 to 10⁶ mg/kg, taken as exact.</param>
    /// <param name="to">The moment, not before the origin of the curve.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>Volume of water with its interval; negative where the content has risen.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The content lies outside its range, or the moment before the origin.</exception>
    public CleanupFigure<Volume> FallSince(
        MassFraction before,
        DateTimeOffset to,
        double confidence = 0.9,
        IntervalSide side = IntervalSide.Both
    )
    {
        var content = PhysicalRange.Water(before);
        var now = Curve.Fall.ValueInterval((to - Curve.Origin).TotalHours, confidence, Mirrored(side));
        var interval =
            now.Outcome is IntervalOutcome.TooFewReadings
                ? Interval.Without(now.Outcome, confidence, side)
                : Interval.Between(content - now.Upper, content - now.Lower, confidence, side, now.CoverageInDoubt);
        return FigureOf.Interval(
            Curve,
            interval,
            Curve.HasCurve ? content - Curve.ValueAt(to) : null,
            Litres,
            CleanupFigureMethod.Profile,
            to > Curve.LastReadingAt
        );
    }

    /// <summary>What the water of the charge still has to fall by from a moment until a target, litres. Profile.</summary>
    /// <param name="asOf">The moment, not before the origin of the curve.</param>
    /// <param name="target">The content to reach.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>Volume of water with its interval, 0 where the curve is at the target or below. Whether it is reached is what <see cref="CleanupCurve.TimeTo"/> says.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The content lies outside its range, or the moment before the origin.</exception>
    public CleanupFigure<Volume> FallTo(
        DateTimeOffset asOf,
        MassFraction target,
        double confidence = 0.9,
        IntervalSide side = IntervalSide.Both
    )
    {
        var content = PhysicalRange.Water(target);
        return FigureOf.Interval(
            Curve,
            Curve.Fall.ValueInterval((asOf - Curve.Origin).TotalHours, confidence, side),
            Curve.HasCurve ? Curve.ValueAt(asOf) : null,
            now => Litres(Math.Max(0, now - content)),
            CleanupFigureMethod.Profile,
            asOf > Curve.LastReadingAt
        );
    }

    /// <summary>
    /// Water that the purifier takes out between two moments, litres: the fall of the charge and what came in meanwhile. It should stand
    /// in the condensate vessel; what is missing left with the sweep air.
    /// </summary>
    /// <param name="from">The earlier moment, not before the origin of the curve.</param>
    /// <param name="to">The later moment.</param>
    /// <param name="floorWithoutIngress">Content that the purifier would reach without ingress.</param>
    /// <param name="confidence">Confidence level, above 0 and below 1; above 0.5 for one side.</param>
    /// <param name="side">Both ends, or one.</param>
    /// <returns>Volume of water with its interval, from those of fall and ingress at half the uncertainty each.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The moments are not in order, the first lies before the origin, or the content lies outside its range.</exception>
    public CleanupFigure<Volume> DrawnOff(
        DateTimeOffset from,
        DateTimeOffset to,
        MassFraction floorWithoutIngress,
        double confidence = 0.9,
        IntervalSide side = IntervalSide.Both
    )
    {
        var half = 1 - (1 - confidence) / 2;
        var fall = Fall(from, to, half, side, out var fallen);
        var hours = (to - from).TotalHours;
        var ingress = LoopPerformance.Ingress(
            Curve,
            floorWithoutIngress.PartsPerMillion,
            perHour => perHour * hours,
            half,
            side
        );
        if (ingress.Outcome == CleanupFigureOutcome.FloorContradicted)
        {
            return new CleanupFigure<Volume>(
                ingress.Outcome,
                CleanupFigureMethod.TwoIntervals,
                null,
                null,
                null,
                confidence,
                ingress.CoverageInDoubt,
                isExtrapolated: false
            );
        }

        var interval = Curve.HasCurve
            ? Interval.Between(
                ingress.Lower is { } least ? fall.Lower + least : null,
                ingress.Upper is { } most ? fall.Upper + most : null,
                confidence,
                side,
                fall.CoverageInDoubt
            )
            : Interval.Without(IntervalOutcome.TooFewReadings, confidence, side);
        return FigureOf.Interval(
            Curve,
            interval,
            ingress.Estimate is { } entered ? fallen + entered : null,
            Litres,
            CleanupFigureMethod.TwoIntervals,
            to > Curve.LastReadingAt
        );
    }

    private static IntervalSide Mirrored(IntervalSide side) =>
        side switch
        {
            IntervalSide.Lower => IntervalSide.Upper,
            IntervalSide.Upper => IntervalSide.Lower,
            _ => side,
        };

    private Interval Fall(
        DateTimeOffset from,
        DateTimeOffset to,
        double confidence,
        IntervalSide side,
        out double? estimate
    )
    {
        var first = Guard.NotNegative((from - Curve.Origin).TotalHours, "h from the origin", nameof(from));
        var last = first + Guard.NotNegative((to - from).TotalHours, "h after the earlier moment", nameof(to));
        var quantile = Curve.Fall.Quantile(confidence, side);
        if (!Curve.HasCurve)
        {
            estimate = null;
            return Interval.Without(IntervalOutcome.TooFewReadings, confidence, side);
        }

        var fall = Curve.ValueAt(from) - Curve.ValueAt(to);
        var half = quantile * Curve.Fall.FallStandardError(first, last);
        estimate = fall;
        return Interval.Between(fall - half, fall + half, confidence, side, Curve.CoverageInDoubt);
    }

    private Volume Litres(double milligramsPerKilogram) =>
        Volume.FromCubicMeters(
            milligramsPerKilogram * 1e-6 * OilKilograms / WaterContent.WaterDensity.KilogramsPerCubicMeter
        );
}
