namespace OilCondition.Statistics;

/// <summary>Least squares from the products of some columns, four sets of products at once: some columns common to all fits, and one of several others beside them.</summary>
/// <remarks>
/// Cholesky's triangle of the products of the common columns, and below it a row for each of the others; each row ends in the inverse of its diagonal. The row of the readings follows for each series
/// of them, and what is left of their own square is the residual sum of squares.
/// </remarks>
internal readonly ref struct GramColumns
{
    private readonly Span<Lanes> rows;
    private readonly int common;
    private readonly int columns;

    /// <summary>Some columns in some room.</summary>
    /// <param name="rows">Room for <see cref="Room"/>, with what <see cref="Factor"/> made if it was called.</param>
    /// <param name="common">Number of columns that are in all fits, which come first.</param>
    /// <param name="others">Number of columns of which each is in one fit.</param>
    public GramColumns(Span<Lanes> rows, int common, int others)
    {
        this.rows = rows;
        this.common = common;
        columns = common + others;
    }

    public static int Room(int common, int others) => common * (common + 1) / 2 + others * (common + 1);

    /// <summary>Makes the rows.</summary>
    /// <param name="products">The products of all columns, a lower triangle in a square.</param>
    /// <param name="ridged">Number of columns, the first ones, of which something is known.</param>
    /// <param name="ridge">Inverse variance, in that of a reading, that is known of these.</param>
    public void Factor(ReadOnlySpan<Lanes> products, int ridged, double ridge)
    {
        for (var j = 0; j < columns; j++)
        {
            var row = Row(j);
            var last = row.Length - 1;
            for (var k = 0; k < last; k++)
            {
                row[k] = Off(products[j * columns + k], row, k) * Row(k)[k];
            }

            var square = products[j * columns + j];
            var left = Off(j < ridged ? square + LaneMath.Of(ridge) : square, row, j);

            // What a column adds to the others may round to nothing: it then tells nothing, and its coefficient stays bounded.
            left = LaneMath.Max(left, LaneMath.MultiplyAdd(LaneMath.Of(1e-13), square, LaneMath.Of(1e-300)));
            row[last] = LaneMath.Of(1) / LaneMath.Sqrt(left);
        }
    }

    /// <summary>|X′X|^(−1/2) of the fit with one of the other columns.</summary>
    public Lanes RootOfInverseDeterminant(int other)
    {
        var product = Row(common + other)[common];
        for (var k = 0; k < common; k++)
        {
            product *= Row(k)[k];
        }

        return product;
    }

    /// <summary>Fits readings.</summary>
    /// <param name="readings">The product of each column with the readings.</param>
    /// <param name="squares">Their sum of squares.</param>
    /// <param name="fits">Receives the fit with each of the other columns.</param>
    public void Fit(ReadOnlySpan<Lanes> readings, Lanes squares, Span<GramFit> fits)
    {
        Span<Lanes> row = stackalloc Lanes[common];
        for (var k = 0; k < common; k++)
        {
            row[k] = Off(readings[k], row, k) * Row(k)[k];
            squares -= row[k] * row[k];
        }

        for (var c = 0; c < fits.Length; c++)
        {
            var inverse = Row(common + c)[common];
            var part = Off(readings[common + c], row, common + c) * inverse;
            fits[c] = new GramFit(squares - part * part, part * inverse, inverse * inverse);
        }
    }

    /// <summary>A column's row of the triangle; the others have a row of the common columns and themselves.</summary>
    private Span<Lanes> Row(int column) =>
        column < common
            ? rows.Slice(column * (column + 1) / 2, column + 1)
            : rows.Slice(common * (common + 1) / 2 + (column - common) * (common + 1), common + 1);

    /// <summary>What is left of a product once the columns before one are taken out of both.</summary>
    private Lanes Off(Lanes product, ReadOnlySpan<Lanes> row, int column)
    {
        var other = Row(column);
        for (var m = 0; m < other.Length - 1; m++)
        {
            product -= row[m] * other[m];
        }

        return product;
    }
}
