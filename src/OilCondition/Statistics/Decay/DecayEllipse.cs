using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>All curves of one rate that are compatible with the readings: an ellipse in (floor, amplitude), cut off at the lowest floor.</summary>
/// <remarks>
/// Curve F + A z with z = exp(−κ τ). RSS = RSS_min + quadratic form, so that the ellipse is closed-form, its extent in any direction too,
/// and the z at which its curves pass a target are those of Fieller's inequality (F + A z − T)² ≤ q(z) (limit − RSS_min).
/// What is known shrinks it to a line or a point.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct DecayEllipse
{
    private readonly double floor;
    private readonly double amplitude;
    private readonly double floorVariance;
    private readonly double amplitudeVariance;
    private readonly double covariance;
    private readonly double room;
    private readonly double lowestFloor;

    public DecayEllipse(double weight, in DecayShape shape, in DecaySums sums, double scaledRate, double limit)
    {
        var free = shape.Unbounded.Best(sums, scaledRate);
        floor = free.Floor;
        amplitude = free.Start - free.Floor;
        lowestFloor = shape.LowestFloor;
        if (shape.KnowsFloor)
        {
            amplitudeVariance = shape.KnowsStart ? 0 : 1 / (weight - 2 * sums.D + sums.DD);
        }
        else if (shape.KnowsStart)
        {
            floorVariance = 1 / sums.DD;
            amplitudeVariance = floorVariance;
            covariance = -floorVariance;
        }
        else
        {
            var mean = sums.D / weight;
            var v = sums.DD - sums.D * mean;
            amplitudeVariance = 1 / v;
            covariance = -(1 - mean) / v;
            floorVariance = 1 / weight + (1 - mean) * (1 - mean) / v;
        }

        room = limit - free.ResidualSumOfSquares;

        // On the edge of the set of rates the room is zero but for rounding.
        if (room < 0 && room > -1e-9 * limit)
        {
            room = 0;
        }

        IsEmpty = !(room >= 0) || floor + Math.Sqrt(floorVariance * room) < lowestFloor - 1e-9;
    }

    /// <summary>Whether no curve of this rate is compatible.</summary>
    public bool IsEmpty { get; }

    /// <summary>Least and largest value of F + A z.</summary>
    public void Range(double z, out double least, out double largest)
    {
        var q = Variance(z);
        var half = Math.Sqrt(q * room);
        var middle = floor + amplitude * z;
        var lean = q > 0 ? (floorVariance + covariance * z) * Math.Sqrt(room / q) : 0;
        Chord(out var lowAmplitude, out var highAmplitude);
        least = floor - lean >= lowestFloor ? middle - half : lowestFloor + z * lowAmplitude;
        largest = floor + lean >= lowestFloor ? middle + half : lowestFloor + z * highAmplitude;
    }

    /// <summary>The span of z at which falling curves pass a target.</summary>
    /// <param name="target">The target, scaled.</param>
    /// <param name="first">Largest z, the earliest crossing; 1 if a curve is below the target from its start.</param>
    /// <param name="last">Smallest z, the latest crossing.</param>
    /// <returns>Whether any compatible curve passes the target.</returns>
    public bool TryCross(double target, out double first, out double last)
    {
        first = 0;
        last = 1;
        var any = false;
        if (IsEmpty)
        {
            return false;
        }

        Range(1, out var lowestStart, out _);
        if (lowestStart <= target)
        {
            first = 1;
            any = true;
        }

        var a = amplitude * amplitude - room * amplitudeVariance;
        var level = floor - target;
        var halfB = level * amplitude - room * covariance;
        var c = level * level - room * floorVariance;
        var discriminant = halfB * halfB - a * c;
        if (discriminant >= 0)
        {
            var root = Math.Sqrt(discriminant);
            var far = -halfB - (halfB >= 0 ? root : -root);
            AddTangent(a != 0 ? far / a : 0, target, ref any, ref first, ref last);
            AddTangent(far != 0 ? c / far : 0, target, ref any, ref first, ref last);
        }

        if (floor - Math.Sqrt(floorVariance * room) < lowestFloor && target > lowestFloor)
        {
            Chord(out var low, out var high);
            Add(low > 0 ? (target - lowestFloor) / low : 0, ref any, ref first, ref last);
            Add(high > 0 ? (target - lowestFloor) / high : 0, ref any, ref first, ref last);
        }

        return any;
    }

    /// <summary>A root counts if the curve that touches the target there has a floor that is allowed; else the chord speaks.</summary>
    private void AddTangent(double z, double target, ref bool any, ref double first, ref double last)
    {
        var q = Variance(z);
        var at = q > 0 ? floor - (floorVariance + covariance * z) * (floor + amplitude * z - target) / q : floor;
        if (at >= lowestFloor)
        {
            Add(z, ref any, ref first, ref last);
        }
    }

    private static void Add(double z, ref bool any, ref double first, ref double last)
    {
        if (z > 0)
        {
            var inside = Math.Min(1, z);
            first = Math.Max(first, inside);
            last = Math.Min(last, inside);
            any = true;
        }
    }

    /// <summary>Amplitudes of the compatible curves whose floor is the lowest allowed.</summary>
    private void Chord(out double low, out double high)
    {
        if (!(floorVariance > 0) || double.IsInfinity(lowestFloor))
        {
            low = amplitude;
            high = amplitude;
            return;
        }

        var below = lowestFloor - floor;
        var middle = amplitude + covariance / floorVariance * below;
        var variance = Math.Max(0, amplitudeVariance - covariance * covariance / floorVariance);
        var half = Math.Sqrt(variance * Math.Max(0, room - below * below / floorVariance));
        low = middle - half;
        high = middle + half;
    }

    private double Variance(double z) => Math.Max(0, floorVariance + 2 * covariance * z + amplitudeVariance * z * z);
}
