using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>All curves of each of four rates, one a lane, that are compatible with the readings: an ellipse in (start, change), cut off at the lowest floor.</summary>
/// <remarks>
/// Curve C + B d with the drop d = 1 − exp(−κ τ), floor C + B at d = 1. RSS = RSS_min + quadratic form, so that the ellipse is closed-form,
/// its extent in any direction too, and the drops at which its curves pass a target are those of Fieller's inequality
/// (C + B d − T)² ≤ q(d) (limit − RSS_min). In d, not in exp(−κ τ), since straight lines are curves of a tiny κ: d then keeps all of its digits.
/// What is known shrinks the ellipse to a line or a point.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct DecayEllipse
{
    private readonly Lanes start;
    private readonly Lanes change;
    private readonly Lanes startVariance;
    private readonly Lanes changeVariance;
    private readonly Lanes covariance;
    private readonly Lanes room;

    /// <summary>1 where no curve of that rate is compatible, else 0.</summary>
    private readonly Lanes isEmpty;

    // Lowest and highest start of the curves whose floor is the lowest allowed.
    private readonly Lanes lowStart;
    private readonly Lanes highStart;

    /// <summary>How far the floor reaches to either side of that of the best curve, were it free.</summary>
    private readonly Lanes floorReach;

    private readonly double lowestFloor;
    private readonly bool isOneCurve;

    /// <summary>Whether every floor of all four is above the lowest, which then cuts nothing off: half of the roots and divisions are spared.</summary>
    private readonly bool isWhole;

    /// <summary>The ellipses of four rates.</summary>
    /// <param name="weight">Sum of the weights.</param>
    /// <param name="shape">What is fixed.</param>
    /// <param name="d">Sums of the drop.</param>
    /// <param name="dd">Sums of its square.</param>
    /// <param name="dy">Sums of its product with the value.</param>
    /// <param name="limit">Limit of the residual sum of squares.</param>
    public DecayEllipse(double weight, in DecayShape shape, Lanes d, Lanes dd, Lanes dy, double limit)
    {
        var zero = LaneMath.Of(0);
        var one = LaneMath.Of(1);
        var left = LaneMath.Of(limit) - shape.Free(d, dd, dy, out start, out change);
        lowestFloor = shape.LowestFloor;
        isOneCurve = shape.KnowsStart && shape.KnowsFloor;
        startVariance = zero;
        changeVariance = zero;
        covariance = zero;
        if (shape.KnowsFloor)
        {
            startVariance = isOneCurve ? zero : one / (LaneMath.Of(weight) - d - d + dd);
            changeVariance = startVariance;
            covariance = zero - startVariance;
        }
        else if (shape.KnowsStart)
        {
            changeVariance = one / dd;
        }
        else
        {
            var mean = d * LaneMath.Of(1 / weight);
            changeVariance = one / (dd - d * mean);
            covariance = zero - mean * changeVariance;
            startVariance = LaneMath.Of(1 / weight) - mean * covariance;
        }

        // On the edge of the set of rates the room is zero but for rounding.
        var isNumber = LaneMath.WhereLess(left, LaneMath.Of(double.PositiveInfinity), zero, one);
        isEmpty = LaneMath.WhereLess(left, LaneMath.Of(-1e-9 * limit), one, isNumber);
        room = LaneMath.Max(zero, left);
        lowStart = start;
        highStart = start;
        var floorVariance = Variance(one);
        var floor = start + change;
        floorReach = LaneMath.Sqrt(floorVariance * room);
        isWhole = double.IsInfinity(lowestFloor) || LaneMath.AreLess(LaneMath.Of(lowestFloor), floor - floorReach);
        if (isWhole)
        {
            return;
        }

        isEmpty = LaneMath.WhereLess(floor + floorReach, LaneMath.Of(lowestFloor - 1e-9), one, isEmpty);
        var below = LaneMath.Of(lowestFloor) - floor;
        var withFloor = CovarianceWithFloor(zero);
        var lean = withFloor / floorVariance;
        var variance = LaneMath.Max(zero, startVariance - withFloor * lean);
        var half = LaneMath.Sqrt(variance * LaneMath.Max(zero, room - below * below / floorVariance));
        lowStart = LaneMath.WhereLess(zero, floorVariance, start + lean * below - half, start);
        highStart = LaneMath.WhereLess(zero, floorVariance, start + lean * below + half, start);
    }

    /// <summary>A quantity where any curve is compatible, else infinity.</summary>
    public Lanes WhereAny(Lanes quantity) =>
        LaneMath.WhereLess(isEmpty, LaneMath.Of(1), quantity, LaneMath.Of(double.PositiveInfinity));

    /// <summary>Least and largest floor.</summary>
    public void Floors(out Lanes least, out Lanes largest)
    {
        var lowest = LaneMath.Of(lowestFloor);
        least = LaneMath.Max(lowest, start + change - floorReach);
        largest = LaneMath.Max(lowest, start + change + floorReach);
    }

    /// <summary>Least and largest value of C + B d.</summary>
    public void Range(Lanes drop, out Lanes least, out Lanes largest)
    {
        var zero = LaneMath.Of(0);
        var q = Variance(drop);
        var half = LaneMath.Sqrt(q * room);
        var middle = start + change * drop;
        least = middle - half;
        largest = middle + half;
        if (isWhole)
        {
            return;
        }

        // Floor of the curve that is lowest, and of the one that is highest, at this drop.
        var lean = LaneMath.WhereLess(zero, q, CovarianceWithFloor(drop) * LaneMath.Sqrt(room / q), zero);
        var floor = start + change;
        var lowest = LaneMath.Of(lowestFloor);
        least = LaneMath.WhereLess(floor - lean, lowest, lowStart + (lowest - lowStart) * drop, least);
        largest = LaneMath.WhereLess(floor + lean, lowest, highStart + (lowest - highStart) * drop, largest);
    }

    /// <summary>The span of drops at which falling curves pass a target.</summary>
    /// <param name="target">The target, scaled.</param>
    /// <param name="first">Smallest drop, the earliest crossing; 0 if a curve is below the target from its start, 1 where none passes it.</param>
    /// <param name="last">Largest drop, the latest crossing; 0 where none passes it.</param>
    public void Cross(double target, out Lanes first, out Lanes last)
    {
        var zero = LaneMath.Of(0);
        var one = LaneMath.Of(1);
        var goal = LaneMath.Of(target);
        last = zero;
        var allFall = LaneMath.AreLess(change, zero) && LaneMath.AreLess(room * changeVariance, change * change);
        var lowestStart = allFall ? LowestStart() : LowestFallingStart();
        first = LaneMath.WhereLess(goal, lowestStart, one, zero);
        if (isOneCurve)
        {
            // One curve, whose discriminant would be zero but for rounding.
            Add(LaneMath.WhereLess(change, zero, (goal - start) / change, one), ref first, ref last);
        }
        else
        {
            var level = start - goal;
            var a = change * change - room * changeVariance;
            var halfB = level * change - room * covariance;
            var c = level * level - room * startVariance;

            // halfB² − a c, without its cancellation: an ellipse that is a point has one root and not, by rounding, none.
            var discriminant =
                room
                * (
                    change * change * startVariance
                    + level * (level * changeVariance - (change + change) * covariance)
                    + room * (covariance * covariance - changeVariance * startVariance)
                );
            var root = LaneMath.Sqrt(LaneMath.Max(zero, discriminant));
            var far = zero - halfB - LaneMath.WhereLess(halfB, zero, zero - root, root);
            var oneRoot = LaneMath.WhereLess(discriminant, zero, one, Ratio(far, a));
            var other = LaneMath.WhereLess(discriminant, zero, one, Ratio(c, far));
            if (!(allFall && isWhole))
            {
                oneRoot = WhereAllowed(oneRoot, goal);
                other = WhereAllowed(other, goal);
            }

            Add(oneRoot, ref first, ref last);
            Add(other, ref first, ref last);
            if (!isWhole && target > lowestFloor)
            {
                AddChord(goal, ref first, ref last);
            }
        }

        // Nowhere where there is no curve, or none that falls.
        var none = LaneMath.WhereLess(isEmpty, one, lowestStart, LaneMath.Of(double.PositiveInfinity));
        first = LaneMath.WhereLess(none, LaneMath.Of(double.PositiveInfinity), first, one);
        last = LaneMath.WhereLess(none, LaneMath.Of(double.PositiveInfinity), last, zero);
    }

    /// <summary>A root counts if the curve that touches the target there falls and has a floor that is allowed; else it is 1, and the chord speaks.</summary>
    private Lanes WhereAllowed(Lanes drop, Lanes target)
    {
        var zero = LaneMath.Of(0);
        var one = LaneMath.Of(1);
        var q = Variance(drop);
        var pull = LaneMath.WhereLess(zero, q, (start + change * drop - target) / q, zero);
        var fall = change - (covariance + changeVariance * drop) * pull;
        drop = LaneMath.WhereLess(zero, fall, one, drop);
        if (isWhole)
        {
            return drop;
        }

        var floor = start + change - CovarianceWithFloor(drop) * pull;
        return LaneMath.WhereLess(floor, LaneMath.Of(lowestFloor), one, drop);
    }

    /// <summary>The crossings of the curves whose floor is the lowest allowed, where there are any.</summary>
    private void AddChord(Lanes target, ref Lanes first, ref Lanes last)
    {
        var one = LaneMath.Of(1);
        var lowest = LaneMath.Of(lowestFloor);
        var deepest = start + change - floorReach;
        var low = LaneMath.WhereLess(lowest, lowStart, (lowStart - target) / (lowStart - lowest), one);
        var high = LaneMath.WhereLess(lowest, highStart, (highStart - target) / (highStart - lowest), one);
        Add(LaneMath.WhereLess(deepest, lowest, low, one), ref first, ref last);
        Add(LaneMath.WhereLess(deepest, lowest, high, one), ref first, ref last);
    }

    private Lanes LowestStart()
    {
        Range(default, out var lowest, out _);
        return lowest;
    }

    /// <summary>The lowest start of the curves that do not rise, infinity where all do; a rising one that begins below a target has not reached it.</summary>
    private Lanes LowestFallingStart()
    {
        var zero = LaneMath.Of(0);
        var lowest = LowestStart();
        var slope = LaneMath.WhereLess(
            zero,
            startVariance,
            change - covariance * LaneMath.Sqrt(room / startVariance),
            change - LaneMath.Sqrt(changeVariance * room)
        );

        // Where the curve of the lowest start rises: the lowest that does not is a constant, if there is one.
        var lean = covariance / changeVariance;
        var squares = change * change / changeVariance;
        var variance = LaneMath.Max(zero, startVariance - covariance * lean);
        var constant = LaneMath.Max(
            LaneMath.Of(lowestFloor),
            start - lean * change - LaneMath.Sqrt(variance * LaneMath.Max(zero, room - squares))
        );
        var none = LaneMath.WhereLess(zero, change, LaneMath.Of(double.PositiveInfinity), lowest);
        var level = LaneMath.WhereLess(
            zero,
            changeVariance,
            LaneMath.WhereLess(room * changeVariance, change * change, none, constant),
            none
        );
        return LaneMath.WhereLess(zero, slope, level, lowest);
    }

    private static void Add(Lanes drop, ref Lanes first, ref Lanes last)
    {
        var one = LaneMath.Of(1);
        var inside = LaneMath.Max(LaneMath.Of(0), drop);
        first = LaneMath.WhereLess(drop, one, LaneMath.Min(first, inside), first);
        last = LaneMath.WhereLess(drop, one, LaneMath.Max(last, inside), last);
    }

    /// <summary>x/y, or 1 where y is 0.</summary>
    private static Lanes Ratio(Lanes x, Lanes y) =>
        LaneMath.WhereLess(LaneMath.Of(0), LaneMath.Max(y, LaneMath.Of(0) - y), x / y, LaneMath.Of(1));

    /// <summary>Covariance of the curve at a drop with its floor.</summary>
    private Lanes CovarianceWithFloor(Lanes drop) =>
        startVariance + covariance * (LaneMath.Of(1) + drop) + changeVariance * drop;

    private Lanes Variance(Lanes drop) =>
        LaneMath.Max(LaneMath.Of(0), startVariance + (covariance + covariance) * drop + changeVariance * drop * drop);
}
