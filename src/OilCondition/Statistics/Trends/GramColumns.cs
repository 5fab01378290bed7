namespace OilCondition.Statistics;

/// <summary>Least squares from the products of some columns and of the readings, four sets of products at once: what a trend needs of it, without forming anything but a triangle.</summary>
/// <param name="size">Columns of a fit, with the readings.</param>
/// <param name="stride">Columns of all products.</param>
/// <remarks>Cholesky's triangle of the products with the readings as last column: its last diagonal element squared is the residual sum of squares.</remarks>
internal sealed class GramColumns(int size, int stride)
{
    private readonly Lanes[] triangle = new Lanes[size * size];

    public Lanes SumOfSquares { get; private set; }

    /// <summary>|X′X|.</summary>
    public Lanes Determinant { get; private set; }

    /// <summary>Coefficient of the last column before the readings.</summary>
    public Lanes LastCoefficient { get; private set; }

    /// <summary>Its variance over that of a reading.</summary>
    public Lanes LastVariance { get; private set; }

    /// <summary>Fits some columns of a lower triangle of products, one more of them, and the readings.</summary>
    /// <param name="products">The products.</param>
    /// <param name="from">The first column to be fitted.</param>
    /// <param name="to">The last column before the courses.</param>
    /// <param name="ridge">Inverse variance, in that of a reading, that is known of the columns before that one; 0 where they are free.</param>
    /// <param name="course">The course.</param>
    /// <param name="readings">The readings.</param>
    public void Take(ReadOnlySpan<Lanes> products, int from, int to, double ridge, int course, int readings)
    {
        var shared = size - 2;
        var determinant = LaneMath.Of(1);
        for (var j = 0; j < size; j++)
        {
            var row =
                j < shared ? from + j
                : j == shared ? course
                : readings;
            for (var k = 0; k <= j; k++)
            {
                var column =
                    k < shared ? from + k
                    : k == shared ? course
                    : readings;
                var sum = products[row * stride + column];
                if (j == k && row < to)
                {
                    sum += LaneMath.Of(ridge);
                }

                for (var m = 0; m < k; m++)
                {
                    sum -= triangle[j * size + m] * triangle[k * size + m];
                }

                if (k < j)
                {
                    triangle[j * size + k] = sum / triangle[k * size + k];
                    continue;
                }

                if (j == size - 1)
                {
                    SumOfSquares = sum;
                    continue;
                }

                // What a column adds to the others may round to nothing: it then tells nothing, and its coefficient stays bounded.
                var least = LaneMath.MultiplyAdd(LaneMath.Of(1e-13), products[row * stride + row], LaneMath.Of(1e-300));
                sum = LaneMath.Max(sum, least);
                determinant *= sum;
                triangle[j * size + j] = LaneMath.Sqrt(sum);
            }
        }

        var last = triangle[shared * size + shared];
        Determinant = determinant;
        LastCoefficient = triangle[(size - 1) * size + shared] / last;
        LastVariance = LaneMath.Of(1) / (last * last);
    }
}
