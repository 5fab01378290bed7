using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The readings seen through up to four movements at once: sums of squares and products about their level, and the level at the last reading.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly struct FourReadings
{
    private readonly int count;
    private readonly Lanes logDeterminant;
    private readonly (Lanes Clock, Lanes Both, Lanes Values) sums;
    private readonly (Lanes Value, Lanes Reach, Lanes Variance) level;
    private readonly Lanes walk;
    private readonly Lanes reading;

    private FourReadings(
        int count,
        Lanes logDeterminant,
        (Lanes Clock, Lanes Both, Lanes Values) sums,
        (Lanes Value, Lanes Reach, Lanes Variance) level,
        Lanes walk,
        Lanes reading
    )
    {
        this.count = count;
        this.logDeterminant = logDeterminant;
        this.sums = sums;
        this.level = level;
        this.walk = walk;
        this.reading = reading;
    }

    /// <summary>Whether two movements may stand side by side.</summary>
    public static bool AreAlike(Movement one, Movement other) =>
        one.Kind != MovementKind.DriftWalks
        && other.Kind != MovementKind.DriftWalks
        && one.Ratio > 0 == other.Ratio > 0
        && FourCourses.ShapeOf(one.Course) == FourCourses.ShapeOf(other.Course);

    /// <summary>Reads the readings through movements that are alike.</summary>
    /// <param name="movements">One to four; the last one fills up.</param>
    /// <param name="clocks">Their clocks at each reading.</param>
    /// <param name="values">The readings.</param>
    public static FourReadings Of(
        ReadOnlySpan<Movement> movements,
        ReadOnlySpan<Lanes> clocks,
        ReadOnlySpan<double> values
    ) => movements[0].Ratio > 0 ? Walked(movements, clocks, values) : Scattered(clocks, values);

    /// <summary>One of the movements.</summary>
    public DegradationMember Member(int index, Movement movement, double leastSquares)
    {
        double At(Lanes lanes) => LaneMath.At(lanes, index);
        var (walked, read) = (At(walk), At(reading));
        return DegradationMember.Of(
            count,
            movement,
            At(logDeterminant),
            (At(sums.Clock), At(sums.Both), At(sums.Values)),
            (At(level.Value), At(level.Reach), At(level.Variance)),
            walked,
            read > 0 ? 0 : walked,
            leastSquares / (read + walked)
        );
    }

    /// <summary>Scattered independently about a course: least squares.</summary>
    private static FourReadings Scattered(ReadOnlySpan<Lanes> clocks, ReadOnlySpan<double> values)
    {
        var n = values.Length;
        Lanes middle = default;
        double mean = 0;
        for (var i = 0; i < n; i++)
        {
            middle += clocks[i];
            mean += values[i];
        }

        var (one, count) = (LaneMath.Of(1), LaneMath.Of(n));
        middle /= count;
        mean /= n;
        Lanes tt = default;
        Lanes ty = default;
        double yy = 0;
        for (var i = 0; i < n; i++)
        {
            var t = clocks[i] - middle;
            var y = values[i] - mean;
            tt = LaneMath.MultiplyAdd(t, t, tt);
            ty = LaneMath.MultiplyAdd(t, LaneMath.Of(y), ty);
            yy += y * y;
        }

        return new FourReadings(
            n,
            LaneMath.Of(Math.Log(n)),
            (tt, ty, LaneMath.Of(yy)),
            (LaneMath.Of(mean), one - middle, one / count),
            default,
            one
        );
    }

    /// <summary>Walks on a clock: one Kalman pass, exact for any spacing, gives the mean that stands and the one that moves.</summary>
    private static FourReadings Walked(
        ReadOnlySpan<Movement> movements,
        ReadOnlySpan<Lanes> clocks,
        ReadOnlySpan<double> values
    )
    {
        // The variances of the walk over one mean interval and of a reading add up to 1: both ends of the family are finite.
        var n = values.Length;
        Span<double> shares = stackalloc double[LaneMath.Width];
        for (var i = 0; i < shares.Length; i++)
        {
            var ratio = movements[Math.Min(i, movements.Length - 1)].Ratio;
            shares[i] = ratio == Movement.PureWalk ? 1 : ratio / (1 + ratio);
        }

        var one = LaneMath.Of(1);
        var share = LaneMath.Load(shares, 0);
        var perClock = share * LaneMath.Of(n - 1);
        var scatter = one - share;
        var state = LaneMath.Of(values[0]);
        Lanes elapsed = default;
        var variance = scatter;
        var product = one;
        Lanes logs = default;
        Lanes tt = default;
        Lanes ty = default;
        Lanes yy = default;
        for (var i = 1; i < n; i++)
        {
            variance += perClock * (clocks[i] - clocks[i - 1]);
            var f = variance + scatter;
            var vy = LaneMath.Of(values[i]) - state;
            var vt = clocks[i] - elapsed;
            var gain = variance / f;
            state += gain * vy;
            elapsed += gain * vt;
            variance = gain * scatter;
            product *= f;
            if (LaneMath.Largest(product) > 1e200 || LaneMath.Largest(one / product) > 1e200)
            {
                logs += Logs(product);
                product = one;
            }

            var weighted = vt / f;
            tt = LaneMath.MultiplyAdd(vt, weighted, tt);
            ty = LaneMath.MultiplyAdd(vy, weighted, ty);
            yy += vy * vy / f;
        }

        return new FourReadings(
            n,
            logs + Logs(product),
            (tt, ty, yy),
            (state, one - elapsed, variance),
            perClock,
            scatter
        );
    }

    private static Lanes Logs(Lanes lanes)
    {
        Span<double> four = stackalloc double[LaneMath.Width];
        LaneMath.Store(lanes, four, 0);
        for (var i = 0; i < four.Length; i++)
        {
            four[i] = Math.Log(four[i]);
        }

        return LaneMath.Load(four, 0);
    }
}
