namespace OilCondition.Statistics;

/// <summary>Up to four movements over the dates of some readings: all that reading them takes and that does not depend on what was read.</summary>
/// <remarks>Measurands of one sample have the same dates, and ask for it once.</remarks>
internal sealed class FourDesign
{
    private const int WalkedColumns = 3;
    private const int MostOnStack = 128;

    // Of readings that only scatter the clock about its middle; of a walk, for each step, gain, 1/f and the clock's part in it over f.
    private readonly ReadOnlyMemory<Lanes> rows;
    private readonly bool walks;

    /// <summary>1 for a mean that moves, 0 for one that stands.</summary>
    private readonly Lanes free;

    private FourDesign(ReadOnlySpan<Movement> movements, ReadOnlySpan<Lanes> clocks, Memory<Lanes> room)
    {
        Count = clocks.Length;
        walks = movements[0].Ratio > 0;
        Span<double> moving = stackalloc double[LaneMath.Width];
        for (var i = 0; i < moving.Length; i++)
        {
            moving[i] = movements[Math.Min(i, movements.Length - 1)].Kind == MovementKind.Still ? 0 : 1;
        }

        free = LaneMath.Load(moving, 0);
        rows = room[..RowsOf(movements, Count)];
        if (walks)
        {
            Walked(movements, clocks, room.Span);
        }
        else
        {
            Scattered(clocks, room.Span);
        }
    }

    /// <summary>Number of readings.</summary>
    public int Count { get; }

    /// <summary>ln |V| and all else that does not depend on the size of the scatter, but for what a drift pays.</summary>
    public Lanes LogDeterminant { get; private set; }

    /// <summary>Weighted sum of squares of the clock about the level.</summary>
    public Lanes Clock { get; private set; }

    /// <summary>How far the level at the last reading moves with the drift.</summary>
    public Lanes Reach { get; private set; }

    /// <summary>Variance of the level at the last reading where the drift is known.</summary>
    public Lanes Variance { get; private set; }

    /// <summary>Variance that a walk adds per clock unit.</summary>
    public Lanes Walk { get; private set; }

    /// <summary>Variance of a reading.</summary>
    public Lanes Reading { get; private set; }

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
    public static FourDesign Of(ReadOnlySpan<Movement> movements, ReadOnlySpan<double> positions) =>
        Of(movements, positions, new Lanes[RowsOf(movements, positions.Length)]);

    /// <summary>The same with room for <see cref="RowsOf"/> rows.</summary>
    public static FourDesign Of(ReadOnlySpan<Movement> movements, ReadOnlySpan<double> positions, Memory<Lanes> room)
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

        return new FourDesign(movements, clocks, room);
    }

    /// <summary>The same from the clocks at each reading.</summary>
    public static FourDesign Of(ReadOnlySpan<Movement> movements, ReadOnlySpan<Lanes> clocks) =>
        new(movements, clocks, new Lanes[RowsOf(movements, clocks.Length)]);

    /// <summary>Reads the readings.</summary>
    public FourReadings Read(ReadOnlySpan<double> values) => walks ? ReadWalked(values) : ReadScattered(values);

    /// <summary>The logarithms of the likelihood.</summary>
    /// <param name="readings">What was read.</param>
    /// <param name="least">Least sum of squares.</param>
    /// <param name="readingVariance">Variance of one reading by its method, below which none scatters; 0 where it is not known.</param>
    public Lanes LogLikelihood(in FourReadings readings, double least, double readingVariance)
    {
        var freedom = LaneMath.Of(Count - 1) - free;
        var floor = LaneMath.Of(least) / (Reading + Walk);
        if (readingVariance > 0)
        {
            floor = LaneMath.WhereLess(
                default,
                Reading,
                LaneMath.Max(floor, freedom * LaneMath.Of(readingVariance) / Reading),
                floor
            );
        }

        var squares = LaneMath.Max(floor, readings.Values - free * readings.Both * readings.Both / Clock);
        var paid = LogDeterminant + free * LaneMath.Of(Math.Log(Count + 1));
        return LaneMath.Of(-0.5) * LaneMath.MultiplyAdd(LaneMath.Of(Count - 1), LaneMath.Log(squares), paid);
    }

    /// <summary>Scattered independently about a course: least squares.</summary>
    private void Scattered(ReadOnlySpan<Lanes> clocks, Span<Lanes> columns)
    {
        Lanes middle = default;
        foreach (var clock in clocks)
        {
            middle += clock;
        }

        var (one, count) = (LaneMath.Of(1), LaneMath.Of(Count));
        middle /= count;
        Lanes squares = default;
        for (var i = 0; i < clocks.Length; i++)
        {
            columns[i] = clocks[i] - middle;
            squares = LaneMath.MultiplyAdd(columns[i], columns[i], squares);
        }

        (LogDeterminant, Clock) = (LaneMath.Of(Math.Log(Count)), squares);
        (Reach, Variance, Reading) = (one - middle, one / count, one);
    }

    /// <summary>Walks on a clock: one Kalman pass, exact for any spacing, gives the mean that stands and the one that moves.</summary>
    private void Walked(ReadOnlySpan<Movement> movements, ReadOnlySpan<Lanes> clocks, Span<Lanes> columns)
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
        Walk = share * LaneMath.Of(Count - 1);
        Reading = one - share;
        Lanes elapsed = default;
        var variance = Reading;
        for (var i = 1; i < clocks.Length; i++)
        {
            variance += Walk * (clocks[i] - clocks[i - 1]);
            var f = variance + Reading;
            var (gain, over) = (variance / f, one / f);
            var behind = clocks[i] - elapsed;
            var at = WalkedColumns * (i - 1);
            (columns[at], columns[at + 1], columns[at + 2]) = (gain, over, behind * over);
            elapsed = LaneMath.MultiplyAdd(gain, behind, elapsed);
            variance = gain * Reading;
            LogDeterminant += LaneMath.Log(f);
            Clock = LaneMath.MultiplyAdd(behind, columns[at + 2], Clock);
        }

        (Reach, Variance) = (one - elapsed, variance);
    }

    private FourReadings ReadScattered(ReadOnlySpan<double> values)
    {
        double mean = 0;
        foreach (var value in values)
        {
            mean += value;
        }

        mean /= values.Length;
        var columns = rows.Span;
        Lanes both = default;
        double squares = 0;
        for (var i = 0; i < values.Length; i++)
        {
            var y = values[i] - mean;
            both = LaneMath.MultiplyAdd(columns[i], LaneMath.Of(y), both);
            squares += y * y;
        }

        return new FourReadings(this, both, LaneMath.Of(squares), LaneMath.Of(mean));
    }

    private FourReadings ReadWalked(ReadOnlySpan<double> values)
    {
        var columns = rows.Span;
        var state = LaneMath.Of(values[0]);
        Lanes both = default;
        Lanes squares = default;
        for (var i = 1; i < values.Length; i++)
        {
            var at = WalkedColumns * (i - 1);
            var off = LaneMath.Of(values[i]) - state;
            state = LaneMath.MultiplyAdd(columns[at], off, state);
            both = LaneMath.MultiplyAdd(off, columns[at + 2], both);
            squares = LaneMath.MultiplyAdd(off * off, columns[at + 1], squares);
        }

        return new FourReadings(this, both, squares, state);
    }
}
