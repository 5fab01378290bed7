using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>All curves of one rate that are compatible with the readings: an ellipse in (start, change), cut off at the lowest floor.</summary>
/// <remarks>
/// Curve C + B d with the drop d = 1 − exp(−κ τ), floor C + B at d = 1. RSS = RSS_min + quadratic form, so that the ellipse is closed-form,
/// its extent in any direction too, and the drops at which its curves pass a target are those of Fieller's inequality
/// (C + B d − T)² ≤ q(d) (limit − RSS_min). In d, not in exp(−κ τ), since straight lines are curves of a tiny κ: d then keeps all of its digits.
/// What is known shrinks the ellipse to a line or a point.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct DecayEllipse
{
    private readonly double start;
    private readonly double change;
    private readonly double startVariance;
    private readonly double changeVariance;
    private readonly double covariance;
    private readonly double room;
    private readonly double lowestFloor;

    public DecayEllipse(double weight, in DecayShape shape, in DecaySums sums, double scaledRate, double limit)
    {
        var free = shape.Unbounded.Best(sums, scaledRate);
        start = free.Start;
        change = free.Floor - free.Start;
        lowestFloor = shape.LowestFloor;
        if (shape.KnowsFloor)
        {
            startVariance = shape.KnowsStart ? 0 : 1 / (weight - 2 * sums.D + sums.DD);
            changeVariance = startVariance;
            covariance = -startVariance;
        }
        else if (shape.KnowsStart)
        {
            changeVariance = 1 / sums.DD;
        }
        else
        {
            var mean = sums.D / weight;
            changeVariance = 1 / (sums.DD - sums.D * mean);
            covariance = -mean * changeVariance;
            startVariance = 1 / weight - mean * covariance;
        }

        room = limit - free.ResidualSumOfSquares;

        // On the edge of the set of rates the room is zero but for rounding.
        if (room < 0 && room > -1e-9 * limit)
        {
            room = 0;
        }

        IsEmpty = !(room >= 0) || start + change + Math.Sqrt(Variance(1) * room) < lowestFloor - 1e-9;
    }

    /// <summary>Whether no curve of this rate is compatible.</summary>
    public bool IsEmpty { get; }

    /// <summary>Least and largest value of C + B d.</summary>
    public void Range(double drop, out double least, out double largest)
    {
        var q = Variance(drop);
        var half = Math.Sqrt(q * room);
        var middle = start + change * drop;
        least = middle - half;
        largest = middle + half;
        if (double.IsInfinity(lowestFloor))
        {
            return;
        }

        // Floor of the curve that is lowest, and of the one that is highest, at this drop.
        var lean = q > 0 ? CovarianceWithFloor(drop) * Math.Sqrt(room / q) : 0;
        var floor = start + change;
        if (floor - lean < lowestFloor || floor + lean < lowestFloor)
        {
            Chord(out var lowStart, out var highStart);
            least = floor - lean >= lowestFloor ? least : lowStart + (lowestFloor - lowStart) * drop;
            largest = floor + lean >= lowestFloor ? largest : highStart + (lowestFloor - highStart) * drop;
        }
    }

    /// <summary>The span of drops at which falling curves pass a target.</summary>
    /// <param name="target">The target, scaled.</param>
    /// <param name="first">Smallest drop, the earliest crossing; 0 if a curve is below the target from its start.</param>
    /// <param name="last">Largest drop, the latest crossing.</param>
    /// <returns>Whether any compatible curve passes the target.</returns>
    public bool TryCross(double target, out double first, out double last)
    {
        first = 1;
        last = 0;
        var any = false;
        if (IsEmpty)
        {
            return false;
        }

        if (!TryLowestFallingStart(out var lowestStart))
        {
            return false;
        }

        if (lowestStart <= target)
        {
            first = 0;
            any = true;
        }

        if (startVariance == 0 && changeVariance == 0)
        {
            // Start and floor are known: one curve, whose discriminant would be zero but for rounding.
            Add(change < 0 ? (target - start) / change : 1, ref any, ref first, ref last);
            return any;
        }

        var level = start - target;
        var a = change * change - room * changeVariance;
        var halfB = level * change - room * covariance;
        var c = level * level - room * startVariance;
        var discriminant = halfB * halfB - a * c;
        if (discriminant >= 0)
        {
            var root = Math.Sqrt(discriminant);
            var far = -halfB - (halfB >= 0 ? root : -root);
            AddTangent(a != 0 ? far / a : 1, target, ref any, ref first, ref last);
            AddTangent(far != 0 ? c / far : 1, target, ref any, ref first, ref last);
        }

        if (start + change - Math.Sqrt(Variance(1) * room) < lowestFloor && target > lowestFloor)
        {
            Chord(out var low, out var high);
            Add(low > lowestFloor ? (low - target) / (low - lowestFloor) : 1, ref any, ref first, ref last);
            Add(high > lowestFloor ? (high - target) / (high - lowestFloor) : 1, ref any, ref first, ref last);
        }

        return any;
    }

    /// <summary>A root counts if the curve that touches the target there falls and has a floor that is allowed; else the chord speaks.</summary>
    private void AddTangent(double drop, double target, ref bool any, ref double first, ref double last)
    {
        var q = Variance(drop);
        var pull = q > 0 ? (start + change * drop - target) / q : 0;
        if (
            change - (covariance + changeVariance * drop) * pull <= 0
            && start + change - CovarianceWithFloor(drop) * pull >= lowestFloor
        )
        {
            Add(drop, ref any, ref first, ref last);
        }
    }

    /// <summary>The lowest start of the curves that do not rise; a rising one that begins below a target has not reached it.</summary>
    private bool TryLowestFallingStart(out double lowest)
    {
        Range(0, out lowest, out _);
        var lean = startVariance > 0 ? covariance * Math.Sqrt(room / startVariance) : 0;
        if (startVariance > 0 ? change - lean <= 0 : change - Math.Sqrt(changeVariance * room) <= 0)
        {
            return true;
        }

        // The curve of the lowest start rises: the lowest that does not is a constant, if there is one.
        if (!(changeVariance > 0) || change * change > room * changeVariance)
        {
            return change <= 0;
        }

        var middle = start - covariance / changeVariance * change;
        var variance = Math.Max(0, startVariance - covariance * covariance / changeVariance);
        lowest = Math.Max(
            lowestFloor,
            middle - Math.Sqrt(variance * Math.Max(0, room - change * change / changeVariance))
        );
        return true;
    }

    private static void Add(double drop, ref bool any, ref double first, ref double last)
    {
        if (drop < 1)
        {
            var inside = Math.Max(0, drop);
            first = Math.Min(first, inside);
            last = Math.Max(last, inside);
            any = true;
        }
    }

    /// <summary>Starts of the compatible curves whose floor is the lowest allowed.</summary>
    private void Chord(out double low, out double high)
    {
        var floorVariance = Variance(1);
        if (!(floorVariance > 0))
        {
            low = start;
            high = start;
            return;
        }

        var below = lowestFloor - (start + change);
        var withFloor = CovarianceWithFloor(0);
        var middle = start + withFloor / floorVariance * below;
        var variance = Math.Max(0, startVariance - withFloor * withFloor / floorVariance);
        var half = Math.Sqrt(variance * Math.Max(0, room - below * below / floorVariance));
        low = middle - half;
        high = middle + half;
    }

    /// <summary>Covariance of the curve at a drop with its floor.</summary>
    private double CovarianceWithFloor(double drop) => startVariance + covariance * (1 + drop) + changeVariance * drop;

    private double Variance(double drop) =>
        Math.Max(0, startVariance + 2 * covariance * drop + changeVariance * drop * drop);
}
