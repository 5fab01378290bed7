using System.Buffers;
using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>Up to four movements over the dates of some readings: all that reading them takes and that does not depend on what was read.</summary>
/// <remarks>Measurands of one sample have the same dates, and ask for it once. What it takes row by row lies beside it, where there is room.</remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct FourDesign
{
    private const int WalkedColumns = 3;
    private const int MostOnStack = 128;

    private readonly int count;
    private readonly bool walks;

    /// <summary>ln |V| and all else that does not depend on the size of the scatter, with what a drift pays.</summary>
    private readonly Lanes logDeterminant;

    /// <summary>Degrees of freedom of the scatter.</summary>
    private readonly Lanes freedom;

    /// <summary>How far the level at the last reading moves with the drift.</summary>
    private readonly Lanes reach;

    /// <summary>Variance of the state, v0 + c1 x + c2 x², in units of s²; c2 is that of the drift.</summary>
    private readonly Lanes v0;
    private readonly Lanes c1;
    private readonly Lanes c2;

    /// <summary>Variance that a walk adds per clock unit.</summary>
    private readonly Lanes walk;

    /// <summary>Variance of a reading: its part of s².</summary>
    private readonly Lanes reading;

    private FourDesign(
        ReadOnlySpan<Movement> movements,
        int count,
        Lanes logDeterminant,
        Lanes clock,
        Lanes reach,
        Lanes variance,
        Lanes walk,
        Lanes reading
    )
    {
        // 1 for a mean that moves, 0 for one that stands.
        Span<double> moving = stackalloc double[LaneMath.Width];
        for (var i = 0; i < moving.Length; i++)
        {
            moving[i] = movements[Math.Min(i, movements.Length - 1)].Kind == MovementKind.Still ? 0 : 1;
        }

        var free = LaneMath.Load(moving, 0);
        this.count = count;
        walks = movements[0].Ratio > 0;
        (this.reach, this.walk, this.reading) = (reach, walk, reading);
        this.logDeterminant = LaneMath.MultiplyAdd(free, LaneMath.Of(Math.Log(count + 1)), logDeterminant);
        freedom = LaneMath.Of(count - 1) - free;
        c2 = free / clock;
        c1 = LaneMath.MultiplyAdd(reach + reach, c2, walk);
        v0 = LaneMath.MultiplyAdd(reach * reach, c2, variance);
    }

    /// <summary>Whether two movements may stand side by side.</summary>
    public static bool AreAlike(Movement one, Movement other) =>
        one.Kind != MovementKind.DriftWalks
        && other.Kind != MovementKind.DriftWalks
        && one.Ratio > 0 == other.Ratio > 0
        && FourCourses.ShapeOf(one.Course) == FourCourses.ShapeOf(other.Course);

    /// <summary>How many rows movements need.</summary>
    public static int RowsOf(ReadOnlySpan<Movement> movements, int count) =>
        movements[0].Ratio > 0 ? WalkedColumns * (count - 1) : count;

    /// <summary>Movements that are alike over the times of some readings.</summary>
    /// <param name="movements">One to four; the last one fills up.</param>
    /// <param name="positions">The times, as parts of that from the first to the last.</param>
    /// <param name="rows">Room for <see cref="RowsOf"/> rows, by which readings are read.</param>
    public static FourDesign Of(ReadOnlySpan<Movement> movements, ReadOnlySpan<double> positions, Span<Lanes> rows)
    {
        Span<Course> courses = stackalloc Course[movements.Length];
        for (var i = 0; i < movements.Length; i++)
        {
            courses[i] = movements[i].Course;
        }

        var four = new FourCourses(courses);
        Span<Lanes> clocks =
            positions.Length <= MostOnStack ? stackalloc Lanes[positions.Length] : new Lanes[positions.Length];
        for (var i = 0; i < clocks.Length; i++)
        {
            clocks[i] = four.At(positions[i]);
        }

        return Of(movements, clocks, rows);
    }

    /// <summary>The same from the clocks at each reading.</summary>
    public static FourDesign Of(ReadOnlySpan<Movement> movements, ReadOnlySpan<Lanes> clocks, Span<Lanes> rows) =>
        movements[0].Ratio > 0 ? Walked(movements, clocks, rows) : Scattered(movements, clocks, rows);

    /// <summary>Reads readings through movements that are asked for once.</summary>
    public static FourReadings Read(
        ReadOnlySpan<Movement> movements,
        ReadOnlySpan<double> positions,
        ReadOnlySpan<double> values,
        out FourDesign design
    )
    {
        var rows = ArrayPool<Lanes>.Shared.Rent(RowsOf(movements, positions.Length));
        design = Of(movements, positions, rows);
        var readings = design.Read(rows, values);
        ArrayPool<Lanes>.Shared.Return(rows);
        return readings;
    }

    /// <summary>Reads the readings.</summary>
    /// <param name="rows">What was laid down when the design was made.</param>
    /// <param name="values">What was read.</param>
    public FourReadings Read(ReadOnlySpan<Lanes> rows, ReadOnlySpan<double> values) =>
        walks ? ReadWalked(rows, values) : ReadScattered(rows, values);

    /// <summary>The logarithms of the likelihood.</summary>
    /// <param name="readings">What was read.</param>
    /// <param name="least">Least sum of squares.</param>
    /// <param name="readingVariance">Variance of one reading by its method, below which none scatters; 0 where it is not known.</param>
    public Lanes LogLikelihood(in FourReadings readings, double least, double readingVariance)
    {
        var floor = LaneMath.Of(least) / (reading + walk);
        if (readingVariance > 0)
        {
            floor = LaneMath.WhereLess(
                default,
                reading,
                LaneMath.Max(floor, freedom * LaneMath.Of(readingVariance) / reading),
                floor
            );
        }

        var log = LaneMath.Log(LaneMath.Max(floor, readings.Squares));
        return LaneMath.Of(-0.5) * LaneMath.MultiplyAdd(LaneMath.Of(count - 1), log, logDeterminant);
    }

    /// <summary>The readings seen through one of the movements.</summary>
    public DegradationMember Member(in FourReadings readings, int index, Course course, double leastSquares)
    {
        double At(in Lanes lanes) => LaneMath.At(lanes, index);
        var (walked, read) = (At(walk), At(reading));
        return new DegradationMember(
            course,
            At(logDeterminant),
            Math.Max(At(readings.Squares), leastSquares / (read + walked)),
            count,
            At(freedom),
            At(readings.Level),
            At(readings.Drift),
            (At(v0), At(c1), At(c2), 0),
            walked,
            read
        );
    }

    /// <summary>Scattered independently about a course: least squares about the middle of the clock.</summary>
    private static FourDesign Scattered(ReadOnlySpan<Movement> movements, ReadOnlySpan<Lanes> clocks, Span<Lanes> rows)
    {
        Lanes middle = default;
        foreach (var clock in clocks)
        {
            middle += clock;
        }

        var (one, count) = (LaneMath.Of(1), LaneMath.Of(clocks.Length));
        middle /= count;
        Lanes squares = default;
        for (var i = 0; i < clocks.Length; i++)
        {
            rows[i] = clocks[i] - middle;
            squares = LaneMath.MultiplyAdd(rows[i], rows[i], squares);
        }

        var logs = LaneMath.Of(Math.Log(clocks.Length));
        return new(movements, clocks.Length, logs, squares, one - middle, one / count, default, one);
    }

    /// <summary>
    /// Walks on a clock: one Kalman pass, exact for any spacing, gives the mean that stands and the one that moves. A row has the gain, 1/f and the clock's part in it over f.
    /// </summary>
    private static FourDesign Walked(ReadOnlySpan<Movement> movements, ReadOnlySpan<Lanes> clocks, Span<Lanes> rows)
    {
        // The variances of the walk over one mean interval and of a reading add up to 1: both ends of the family are finite.
        Span<double> shares = stackalloc double[LaneMath.Width];
        for (var i = 0; i < shares.Length; i++)
        {
            var ratio = movements[Math.Min(i, movements.Length - 1)].Ratio;
            shares[i] = ratio == Movement.PureWalk ? 1 : ratio / (1 + ratio);
        }

        var one = LaneMath.Of(1);
        var share = LaneMath.Load(shares, 0);
        var step = share * LaneMath.Of(clocks.Length - 1);
        var error = one - share;
        var variance = error;
        Lanes elapsed = default;
        Lanes squares = default;
        Lanes logs = default;
        for (var i = 1; i < clocks.Length; i++)
        {
            variance += step * (clocks[i] - clocks[i - 1]);
            var f = variance + error;
            var (gain, over) = (variance / f, one / f);
            var behind = clocks[i] - elapsed;
            var row = rows.Slice(WalkedColumns * (i - 1), WalkedColumns);
            (row[0], row[1], row[2]) = (gain, over, behind * over);
            elapsed = LaneMath.MultiplyAdd(gain, behind, elapsed);
            variance = gain * error;
            logs += LaneMath.Log(f);
            squares = LaneMath.MultiplyAdd(behind, row[2], squares);
        }

        return new(movements, clocks.Length, logs, squares, one - elapsed, variance, step, error);
    }

    private FourReadings ReadScattered(ReadOnlySpan<Lanes> rows, ReadOnlySpan<double> values)
    {
        double mean = 0;
        foreach (var value in values)
        {
            mean += value;
        }

        mean /= values.Length;
        Lanes both = default;
        double squares = 0;
        for (var i = 0; i < values.Length; i++)
        {
            var y = values[i] - mean;
            both = LaneMath.MultiplyAdd(rows[i], LaneMath.Of(y), both);
            squares += y * y;
        }

        return Found(both, LaneMath.Of(squares), LaneMath.Of(mean));
    }

    private FourReadings ReadWalked(ReadOnlySpan<Lanes> rows, ReadOnlySpan<double> values)
    {
        var state = LaneMath.Of(values[0]);
        Lanes both = default;
        Lanes squares = default;
        for (var i = 1; i < values.Length; i++)
        {
            var row = rows.Slice(WalkedColumns * (i - 1), WalkedColumns);
            var off = LaneMath.Of(values[i]) - state;
            state = LaneMath.MultiplyAdd(row[0], off, state);
            both = LaneMath.MultiplyAdd(off, row[2], both);
            squares = LaneMath.MultiplyAdd(off * off, row[1], squares);
        }

        return Found(both, squares, state);
    }

    /// <summary>From the weighted sums of products of clock and readings and of squares of the readings, and the level where nothing drifts.</summary>
    private FourReadings Found(Lanes both, Lanes squares, Lanes level)
    {
        var drift = both * c2;
        return new FourReadings(squares - drift * both, LaneMath.MultiplyAdd(drift, reach, level), drift);
    }
}
