using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>The derivatives of a fitted curve by its free parts, each reading over its scatter, and what the residuals leave beside them.</summary>
/// <remarks>
/// Columns are made orthonormal (Gram and Schmidt), so that what one more column would explain is a product. With residuals r beside p columns of
/// n readings, a column z that is orthogonal to them has Student's t = z r / sqrt((r r − (z r)²)/(n − p − 1)); its square is the F test of one added
/// column (Seber and Wild 1989, Nonlinear Regression, section 5.3; Draper and Smith 1998; both from memory).
/// <para>
/// Residuals of a fit do not follow one another even where the scatter does not: with M = I − Q Q' and A half of both neighbours the lag-1 correlation r A r / r r
/// has the mean tr(MA)/(n − p) and a variance of 2 ((n − p) tr(MAMA) − tr(MA)²)/((n − p)² (n − p + 2)) (Durbin and Watson 1950; the bias is that of
/// Marriott and Pope 1954 and Kendall 1954; from memory). Exact for a linear model with normal scatter.
/// </para>
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct DecayDesign
{
    /// <summary>Below it the quick sum for Student's t loses its digits.</summary>
    private const double SmallByDifference = 1e-6;

    /// <summary>A column of which less is left beside the others is one of them.</summary>
    private const double Dependent = 1e-7;

    /// <summary>Of a sum of squares; less is taken twice, which is enough (Parlett 1980, The Symmetric Eigenvalue Problem, section 6.9, from memory).</summary>
    private const double LittleLeft = 1e-3;

    // A part that falls first is taken to be 4 times as fast as the fit, by two squarings of e; 2.5 to 8 find about the same. A dead time shows in
    // the first readings only: its column, 8 times as fast, falls within them.

    /// <summary>A second fall so much slower than the fit is what hides in a level (chosen by simulation: 1/4 sees no level in short runs, 4 hides one).</summary>
    private const double Slower = 0.4;

    /// <summary>Two columns more leave too little with fewer degrees of freedom.</summary>
    private const int FewestBesideWidened = 6;

    private const int MostOnStack = 512;

    /// <summary>Most columns that one calculation takes together: of three parts, and two more.</summary>
    private const int MostColumns = 5;

    /// <summary>x, e^−x, roots, residuals and three orthonormal columns.</summary>
    private const int Rows = 7;

    // Rows, each filled up to whole lanes with zeros; the array may be longer.
    private readonly double[] rows;
    private readonly int count;
    private readonly int columns;
    private readonly DecayParts parts;
    private readonly double squares;

    /// <summary>The curve at its optimum.</summary>
    /// <param name="exponents">x = k (t − t_0) of each reading that counts, in order of time.</param>
    /// <param name="roots">Square root of the weight of each.</param>
    /// <param name="residuals">Reading less curve, times that root.</param>
    /// <param name="parts">Which parts were fitted.</param>
    public DecayDesign(double[] exponents, double[] roots, double[] residuals, DecayParts parts)
        : this(exponents.Length, Stored(exponents, roots, residuals), parts) { }

    /// <summary>Of rows whose exponents, roots and residuals are filled.</summary>
    private DecayDesign(int count, double[] rows, DecayParts parts)
    {
        this.count = count;
        this.rows = rows;
        this.parts = parts;
        for (var i = 0; i < Length; i += LaneMath.Width)
        {
            LaneMath.Store(LaneMath.Of(1) - LaneMath.Drop(LaneMath.Load(Exponents, i)), Remaining, i);
        }

        var made = 0;
        if (parts.Start)
        {
            LogSize += Add(Basis, ref made, Column.Start);
        }

        if (parts.Floor)
        {
            LogSize += Add(Basis, ref made, Column.Floor);
        }

        if (parts.Rate)
        {
            LogSize += Add(Basis, ref made, Column.Rate);
        }

        columns = made;
        squares = Reduce(Basis, columns, Residuals, out _);
    }

    /// <summary>What can be added to the fit: a part of the curve, or a second fall that is faster or slower.</summary>
    private enum Column
    {
        Start,
        Floor,
        Rate,
        Faster,
        MuchFaster,
        Slower,
    }

    /// <summary>Of the readings that count, of working values and weights in order of time; no weights are equal ones.</summary>
    public static DecayDesign Of(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<double> weights,
        in ExponentialDecay fit,
        ExponentialDecayOptions options,
        DecayStore store
    )
    {
        var length = PaddedLength(fit.Count);
        var filled = store.Rows(Rows * length);
        var powers = Row(filled, 0, length);
        var weighing = Row(filled, 2, length);
        var rests = Row(filled, 3, length);
        var change = fit.Floor - fit.Start;
        var counted = 0;
        for (var i = 0; i < times.Length; i++)
        {
            var weight = weights.IsEmpty ? 1 : weights[i];
            if (weight > 0)
            {
                powers[counted] = fit.Rate * (times[i] - fit.StartTime);
                weighing[counted] = weights.IsEmpty ? 1 : Math.Sqrt(weight);
                rests[counted] = values[i] - fit.Start;
                counted++;
            }
        }

        for (var i = 0; i < length; i += LaneMath.Width)
        {
            var fall = LaneMath.Of(change) * LaneMath.Drop(LaneMath.Load(powers, i));
            LaneMath.Store(LaneMath.Load(weighing, i) * (LaneMath.Load(rests, i) - fall), rests, i);
        }

        return new DecayDesign(counted, filled, DecayParts.Of(fit.Status, options));
    }

    private int Degrees => count - columns;

    private int Length => PaddedLength(count);

    private Span<double> Exponents => Row(rows, 0, Length);

    private Span<double> Remaining => Row(rows, 1, Length);

    private Span<double> Roots => Row(rows, 2, Length);

    private Span<double> Residuals => Row(rows, 3, Length);

    /// <summary>The orthonormal columns, one after the other.</summary>
    private Span<double> Basis => rows.AsSpan(4 * Length, 3 * Length);

    /// <summary>Half the logarithm of the determinant of J'WJ, but for what depends on the units.</summary>
    public double LogSize { get; }

    /// <summary>Sum of squares, degrees of freedom and size beside the two columns of the check of the course, where enough readings are left.</summary>
    /// <remarks>Scatter that is told beside a course that is contradicted would take what contradicts it for scatter.</remarks>
    public (double Squares, int Degrees, double LogSize) Widened()
    {
        if (Degrees < FewestBesideWidened)
        {
            return (squares, Degrees, LogSize);
        }

        var need = (MostColumns + 1) * Length;
        var scratch = need <= MostOnStack ? stackalloc double[need] : new double[need];
        var rest = scratch.Slice(MostColumns * Length);
        Basis.Slice(0, columns * Length).CopyTo(scratch);
        Residuals.CopyTo(rest);
        var wide = columns;
        var logSize = LogSize + Add(scratch, ref wide, Column.Faster) + Add(scratch, ref wide, Column.MuchFaster);
        return (Reduce(scratch, wide, rest, out _), count - wide, logSize);
    }

    /// <summary>Lag-1 correlation of the residuals less what independent scatter would show, in its standard deviations.</summary>
    public double LagOneDeviate
    {
        get
        {
            var degrees = Degrees;
            if (degrees < 2 || !(squares > 0))
            {
                return 0;
            }

            var half = Length <= MostOnStack ? stackalloc double[Length] : new double[Length];
            double trace = 0;
            var traceOfSquare = 0.5 * (count - 1);
            for (var i = 0; i < columns; i++)
            {
                Neighbours(Of(Basis, i), half);
                trace -= Product(Of(Basis, i), half);
                traceOfSquare -= 2 * Product(half, half);
                for (var j = 0; j < columns; j++)
                {
                    var both = Product(Of(Basis, j), half);
                    traceOfSquare += both * both;
                }
            }

            var mean = trace / degrees;
            var variance = 2 * (degrees * traceOfSquare - trace * trace) / ((double)degrees * degrees * (degrees + 2));
            Neighbours(Residuals, half);
            var lagOne = Product(Residuals, half) / squares;
            return variance > 0 ? (lagOne - mean) / Math.Sqrt(variance) : 0;
        }
    }

    /// <summary>The check of the course.</summary>
    /// <param name="status">
    /// Of the fit. Beside a straight line, the slowest curve there is, the rate's own column, which bends, says whether the fall speeds up.
    /// </param>
    /// <param name="falls">Whether the curve falls; a rising one departs with the other sign.</param>
    public CourseChances Course(ExponentialDecayStatus status, bool falls)
    {
        if (status == ExponentialDecayStatus.FasterThanSampling || Degrees < 2 || !(squares > 0))
        {
            return CourseChances.Untested;
        }

        return status == ExponentialDecayStatus.StraightLine
            ? new CourseChances(1, TailAbove(Column.Rate, falls))
            : new CourseChances(TailAbove(Column.Faster, falls), TailAbove(Column.MuchFaster, !falls));
    }

    /// <summary>How far down the floor may lie where a second, slower fall is allowed beside the first; null where the readings do not tell.</summary>
    /// <remarks>One step of Gauss and Newton from the fit, and the error of the delta method there.</remarks>
    /// <param name="scatterQuantile">Student's quantile by degrees of freedom.</param>
    public double? FloorChange(Func<int, double> scatterQuantile)
    {
        if (!parts.Floor)
        {
            return 0;
        }

        if (Degrees < 2)
        {
            return null;
        }

        var others = new double[MostColumns * Length];
        var tried = 0;
        if (parts.Start)
        {
            Add(others, ref tried, Column.Start);
        }

        if (parts.Rate)
        {
            Add(others, ref tried, Column.Rate);
        }

        Add(others, ref tried, Column.Slower);
        var beside = tried;
        var floor = new double[Length];
        Fill(Column.Floor, floor);
        var size = Reduce(others, beside, floor, out _);
        Add(others, ref tried, Column.Floor);
        if (tried == beside)
        {
            return null;
        }

        var left = Residuals.ToArray();
        var squaresLeft = Reduce(others, tried, left, out _);
        var degrees = count - tried;
        var error = Math.Sqrt(squaresLeft / degrees / size);
        return Product(floor, Residuals) / size - scatterQuantile(degrees) * error;
    }

    private static int PaddedLength(int count) => (count + LaneMath.Width - 1) / LaneMath.Width * LaneMath.Width;

    private static double[] Stored(double[] exponents, double[] roots, double[] residuals)
    {
        var length = PaddedLength(exponents.Length);
        var filled = new double[Rows * length];
        exponents.CopyTo(Row(filled, 0, length));
        roots.CopyTo(Row(filled, 2, length));
        residuals.CopyTo(Row(filled, 3, length));
        return filled;
    }

    private static Span<double> Row(double[] all, int index, int length) => all.AsSpan(index * length, length);

    private Span<double> Of(Span<double> columns, int index) => columns.Slice(index * Length, Length);

    /// <summary>A column before it is made orthogonal to others. Of a known start a second fall takes its share, so that the start stays.</summary>
    private void Fill(Column column, Span<double> into)
    {
        var first = LaneMath.Of(parts.Start ? 0 : 1);
        for (var i = 0; i < into.Length; i += LaneMath.Width)
        {
            var x = LaneMath.Load(Exponents, i);
            var e = LaneMath.Load(Remaining, i);
            var z = column switch
            {
                Column.Start => e,
                Column.Floor => LaneMath.Drop(x),
                Column.Rate => x * e,
                Column.Faster => e * e * (e * e) - first * e,
                Column.MuchFaster => e * e * (e * e) * (e * e * (e * e)) - first * e,
                _ => LaneMath.Exp(LaneMath.Of(-Slower) * x) - first * e,
            };
            LaneMath.Store(LaneMath.Load(Roots, i) * z, into, i);
        }
    }

    /// <summary>The chance that independent scatter gives an added column as much on one side; not a number where it is none.</summary>
    private double TailAbove(Column added, bool positive)
    {
        var beside = Length <= MostOnStack ? stackalloc double[Length] : new double[Length];
        Fill(added, beside);

        // The residuals are orthogonal to the others: their product with the column is that with what is left of it.
        var product = Product(beside, Residuals);
        var size = Reduce(Basis, columns, beside, out var whole);
        if (!(size > Dependent * Dependent * whole))
        {
            return double.NaN;
        }

        var share = product / Math.Sqrt(size);
        var degrees = Degrees - 1;
        var rest = Math.Max(squares - share * share, 1e-30 * squares);
        var t = (positive ? -1 : 1) * share / Math.Sqrt(rest / degrees);
        var chance = StudentDistribution.Below(t, degrees);
        return chance > SmallByDifference ? chance : StudentDistribution.Cumulative(t, degrees);
    }

    /// <summary>Adds what a column has beside the others, made to length 1, and gives the logarithm of its length.</summary>
    private double Add(Span<double> to, ref int columns, Column added)
    {
        var column = Of(to, columns);
        Fill(added, column);
        var size = Math.Sqrt(Reduce(to, columns, column, out var whole));
        if (!(size > Dependent * Math.Sqrt(whole)))
        {
            return 0;
        }

        var perSize = LaneMath.Of(1 / size);
        for (var i = 0; i < column.Length; i += LaneMath.Width)
        {
            LaneMath.Store(LaneMath.Load(column, i) * perSize, column, i);
        }

        columns++;
        return Math.Log(size);
    }

    /// <summary>Takes from a column what it shares with orthonormal ones; again where so little is left that rounding would show.</summary>
    /// <param name="others">The orthonormal columns.</param>
    /// <param name="count">How many.</param>
    /// <param name="column">The column.</param>
    /// <param name="whole">Its sum of squares before.</param>
    /// <returns>What is left of that.</returns>
    private double Reduce(Span<double> others, int count, Span<double> column, out double whole)
    {
        whole = Product(column, column);
        var left = whole;
        for (var pass = 0; pass < 2; pass++)
        {
            var before = left;
            for (var k = 0; k < count; k++)
            {
                var other = Of(others, k);
                var share = LaneMath.Of(-Product(other, column));
                for (var i = 0; i < column.Length; i += LaneMath.Width)
                {
                    LaneMath.Store(
                        LaneMath.MultiplyAdd(share, LaneMath.Load(other, i), LaneMath.Load(column, i)),
                        column,
                        i
                    );
                }
            }

            left = Product(column, column);
            if (left > LittleLeft * before)
            {
                break;
            }
        }

        return left;
    }

    /// <summary>Half of both neighbours of each.</summary>
    private void Neighbours(ReadOnlySpan<double> column, Span<double> half)
    {
        // Beyond the readings the column is zero; so must be what is made of it.
        var last = count - 1;
        half[0] = last > 0 ? 0.5 * column[1] : 0;
        for (var i = 1; i < last; i++)
        {
            half[i] = 0.5 * (column[i - 1] + column[i + 1]);
        }

        half.Slice(last).Clear();
        half[last] = last > 0 ? 0.5 * column[last - 1] : 0;
    }

    private static double Product(ReadOnlySpan<double> one, ReadOnlySpan<double> other)
    {
        Lanes sum = default;
        for (var i = 0; i < one.Length; i += LaneMath.Width)
        {
            sum = LaneMath.MultiplyAdd(LaneMath.Load(one, i), LaneMath.Load(other, i), sum);
        }

        return LaneMath.Sum(sum);
    }
}
