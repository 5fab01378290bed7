namespace OilCondition.Statistics;

/// <summary>Least squares from the products of some columns, four sets of products at once: what a trend needs of it, without forming anything but a triangle.</summary>
/// <remarks>Cholesky's triangle of the products; the row of the readings follows for each series of them, and what is left of their own square is the residual sum of squares.</remarks>
internal sealed class GramColumns
{
    private readonly int from;
    private readonly int course;
    private readonly int size;
    private readonly Lanes[] triangle;

    /// <summary>Some columns of a lower triangle of products, and one more of them.</summary>
    /// <param name="products">The products.</param>
    /// <param name="stride">Columns of all products.</param>
    /// <param name="from">The first column to be fitted.</param>
    /// <param name="to">The last column before the courses.</param>
    /// <param name="ridge">Inverse variance, in that of a reading, that is known of the columns before that one; 0 where they are free.</param>
    /// <param name="course">The course.</param>
    public GramColumns(ReadOnlySpan<Lanes> products, int stride, int from, int to, double ridge, int course)
    {
        (this.from, this.course) = (from, course);
        size = to - from + 2;
        triangle = new Lanes[size * size];
        Determinant = LaneMath.Of(1);
        for (var j = 0; j < size; j++)
        {
            var row = Column(j);
            for (var k = 0; k < j; k++)
            {
                triangle[j * size + k] = Off(products[row * stride + Column(k)], j, k) / triangle[k * size + k];
            }

            var square = products[row * stride + row];
            var left = Off(row < to ? square + LaneMath.Of(ridge) : square, j, j);

            // What a column adds to the others may round to nothing: it then tells nothing, and its coefficient stays bounded.
            left = LaneMath.Max(left, LaneMath.MultiplyAdd(LaneMath.Of(1e-13), square, LaneMath.Of(1e-300)));
            Determinant *= left;
            triangle[j * size + j] = LaneMath.Sqrt(left);
            LastVariance = LaneMath.Of(1) / left;
        }
    }

    /// <summary>|X′X|.</summary>
    public Lanes Determinant { get; }

    /// <summary>Variance of the coefficient of the course over that of a reading.</summary>
    public Lanes LastVariance { get; }

    /// <summary>Fits readings.</summary>
    /// <param name="readings">The product of each column of all products with the readings.</param>
    /// <param name="squares">Their sum of squares.</param>
    /// <param name="coefficient">The coefficient of the course.</param>
    /// <returns>The residual sum of squares.</returns>
    public Lanes Fit(ReadOnlySpan<Lanes> readings, Lanes squares, out Lanes coefficient)
    {
        Span<Lanes> row = stackalloc Lanes[size];
        for (var k = 0; k < size; k++)
        {
            var part = readings[Column(k)];
            for (var m = 0; m < k; m++)
            {
                part -= row[m] * triangle[k * size + m];
            }

            row[k] = part / triangle[k * size + k];
            squares -= row[k] * row[k];
        }

        coefficient = row[size - 1] / triangle[size * size - 1];
        return squares;
    }

    private int Column(int place) => place < size - 1 ? from + place : course;

    private Lanes Off(Lanes product, int j, int k)
    {
        for (var m = 0; m < k; m++)
        {
            product -= triangle[j * size + m] * triangle[k * size + m];
        }

        return product;
    }
}
