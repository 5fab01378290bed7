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
internal readonly partial struct DecayDesign
{
    /// <summary>A column of which less is left beside the others is one of them.</summary>
    private const double Dependent = 1e-7;

    /// <summary>Of a sum of squares; less is taken twice, which is enough (Parlett 1980, The Symmetric Eigenvalue Problem, section 6.9, from memory).</summary>
    private const double LittleLeft = 1e-3;

    private const int MostOnStack = 1024;

    /// <summary>Columns are taken three at once; those that are not there are zero.</summary>
    private const int Block = 3;

    /// <summary>x, 1 − e^−x, roots, residuals, three orthonormal columns and one that is made.</summary>
    private const int Rows = 8;

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

    /// <summary>Of rows whose exponents, drops, roots and residuals are filled.</summary>
    private DecayDesign(int count, double[] rows, DecayParts parts)
    {
        this.count = count;
        this.rows = rows;
        this.parts = parts;
        var made = 0;
        if (parts.Start)
        {
            LogSize += Add(Basis, ref made, Column.Start, Made);
        }

        if (parts.Floor)
        {
            LogSize += Add(Basis, ref made, Column.Floor, Made);
        }

        if (parts.Rate)
        {
            LogSize += Add(Basis, ref made, Column.Rate, Made);
        }

        columns = made;
        squares = Reduce(Basis, Residuals, out _);
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
        var drops = Row(filled, 1, length);
        var weighing = Row(filled, 2, length);
        var rests = Row(filled, 3, length);
        var change = fit.Floor - fit.Start;
        var counted = 0;
        for (var i = 0; i < times.Length; i++)
        {
            var weight = weights.IsEmpty ? 1 : weights[i];
            if (weight > 0)
            {
                powers[counted] = times[i];
                weighing[counted] = weights.IsEmpty ? 1 : Math.Sqrt(weight);
                rests[counted] = values[i];
                counted++;
            }
        }

        powers.Slice(counted).Fill(fit.StartTime);
        for (var i = 0; i < length; i += LaneMath.Width)
        {
            var x = LaneMath.Of(fit.Rate) * (LaneMath.Load(powers, i) - LaneMath.Of(fit.StartTime));
            var drop = LaneMath.Drop(x);
            var rest = LaneMath.Load(rests, i) - LaneMath.Of(fit.Start) - LaneMath.Of(change) * drop;
            LaneMath.Store(x, powers, i);
            LaneMath.Store(drop, drops, i);
            LaneMath.Store(LaneMath.Load(weighing, i) * rest, rests, i);
        }

        return new DecayDesign(counted, filled, DecayParts.Of(fit.Status, options));
    }

    private int Degrees => count - columns;

    private int Length => PaddedLength(count);

    private Span<double> Exponents => Row(rows, 0, Length);

    private Span<double> Drops => Row(rows, 1, Length);

    private Span<double> Roots => Row(rows, 2, Length);

    private Span<double> Residuals => Row(rows, 3, Length);

    /// <summary>The orthonormal columns, one after the other.</summary>
    private Span<double> Basis => rows.AsSpan(4 * Length, Block * Length);

    /// <summary>For the column that is made orthogonal to those.</summary>
    private Span<double> Made => Row(rows, 7, Length);

    /// <summary>Half the logarithm of the determinant of J'WJ, but for what depends on the units.</summary>
    public double LogSize { get; }

    private static int PaddedLength(int count) => (count + LaneMath.Width - 1) / LaneMath.Width * LaneMath.Width;

    private static double[] Stored(double[] exponents, double[] roots, double[] residuals)
    {
        var length = PaddedLength(exponents.Length);
        var filled = new double[Rows * length];
        exponents.CopyTo(Row(filled, 0, length));
        roots.CopyTo(Row(filled, 2, length));
        residuals.CopyTo(Row(filled, 3, length));
        for (var i = 0; i < length; i += LaneMath.Width)
        {
            LaneMath.Store(LaneMath.Drop(LaneMath.Load(filled, i)), Row(filled, 1, length), i);
        }

        return filled;
    }

    private static Span<double> Row(double[] all, int index, int length) => all.AsSpan(index * length, length);

    /// <summary>A column before it is made orthogonal to others. Of a known start a second fall takes its share, so that the start stays.</summary>
    private void Fill(Column column, Span<double> into)
    {
        var exponents = Exponents;
        var drops = Drops;
        var roots = Roots;
        var first = LaneMath.Of(parts.Start ? 0 : 1);
        for (var i = 0; i < into.Length; i += LaneMath.Width)
        {
            var x = LaneMath.Load(exponents, i);
            var d = LaneMath.Load(drops, i);
            var e = LaneMath.Of(1) - d;
            var z = column switch
            {
                Column.Start => e,
                Column.Floor => d,
                Column.Rate => x * e,
                Column.Faster => e * e * (e * e) - first * e,
                Column.MuchFaster => e * e * (e * e) * (e * e * (e * e)) - first * e,
                _ => LaneMath.Exp(LaneMath.Of(-Slower) * x) - first * e,
            };
            LaneMath.Store(LaneMath.Load(roots, i) * z, into, i);
        }
    }

    /// <summary>Adds what a column has beside the others, made to length 1, and gives the logarithm of its length.</summary>
    /// <param name="to">One block or more.</param>
    /// <param name="columns">How many there are.</param>
    /// <param name="added">The column.</param>
    /// <param name="made">To work in.</param>
    private double Add(Span<double> to, ref int columns, Column added, Span<double> made)
    {
        Fill(added, made);
        var size = Math.Sqrt(Reduce(to, made, out var whole));
        if (!(size > Dependent * Math.Sqrt(whole)))
        {
            return 0;
        }

        var column = to.Slice(columns * Length, Length);
        var perSize = LaneMath.Of(1 / size);
        for (var i = 0; i < column.Length; i += LaneMath.Width)
        {
            LaneMath.Store(LaneMath.Load(made, i) * perSize, column, i);
        }

        columns++;
        return Math.Log(size);
    }

    /// <summary>Takes from a column what it shares with orthonormal ones; again where so little is left that rounding would show.</summary>
    /// <param name="others">The orthonormal columns, one block or more.</param>
    /// <param name="column">The column.</param>
    /// <param name="whole">Its sum of squares before.</param>
    /// <returns>What is left of that.</returns>
    private static double Reduce(ReadOnlySpan<double> others, Span<double> column, out double whole)
    {
        var block = Block * column.Length;
        var left = Without(others.Slice(0, block), column, out whole);
        var before = whole;
        for (var i = block; i < others.Length; i += block)
        {
            left = Without(others.Slice(i, block), column, out _);
        }

        if (!(left > LittleLeft * before))
        {
            for (var i = 0; i < others.Length; i += block)
            {
                left = Without(others.Slice(i, block), column, out _);
            }
        }

        return left;
    }

    /// <summary>Takes from a column what it shares with a block; gives what is left of its sum of squares.</summary>
    private static double Without(ReadOnlySpan<double> block, Span<double> column, out double whole)
    {
        var length = column.Length;
        var first = block.Slice(0, length);
        var second = block.Slice(length, length);
        var third = block.Slice(2 * length, length);
        Lanes p = default;
        Lanes q = default;
        Lanes r = default;
        Lanes all = default;
        for (var i = 0; i < length; i += LaneMath.Width)
        {
            var z = LaneMath.Load(column, i);
            p = LaneMath.MultiplyAdd(LaneMath.Load(first, i), z, p);
            q = LaneMath.MultiplyAdd(LaneMath.Load(second, i), z, q);
            r = LaneMath.MultiplyAdd(LaneMath.Load(third, i), z, r);
            all = LaneMath.MultiplyAdd(z, z, all);
        }

        whole = LaneMath.Sum(all);
        p = LaneMath.Of(-LaneMath.Sum(p));
        q = LaneMath.Of(-LaneMath.Sum(q));
        r = LaneMath.Of(-LaneMath.Sum(r));
        Lanes left = default;
        for (var i = 0; i < length; i += LaneMath.Width)
        {
            var z = LaneMath.MultiplyAdd(p, LaneMath.Load(first, i), LaneMath.Load(column, i));
            z = LaneMath.MultiplyAdd(q, LaneMath.Load(second, i), z);
            z = LaneMath.MultiplyAdd(r, LaneMath.Load(third, i), z);
            LaneMath.Store(z, column, i);
            left = LaneMath.MultiplyAdd(z, z, left);
        }

        return LaneMath.Sum(left);
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
