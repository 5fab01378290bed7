namespace OilCondition.Statistics;

/// <summary>Least squares from the products of some columns and of the readings: what a trend needs of it, without forming anything but a triangle.</summary>
/// <param name="size">Columns of a fit, with the readings.</param>
/// <param name="stride">Columns of all products.</param>
/// <remarks>Cholesky's triangle of the products with the readings as last column: its last diagonal element squared is the residual sum of squares.</remarks>
internal sealed class GramColumns(int size, int stride)
{
    private readonly double[] triangle = new double[size * size];

    public double SumOfSquares { get; private set; }

    /// <summary>ln |X′X|.</summary>
    public double LogDeterminant { get; private set; }

    /// <summary>Coefficient of the last column before the readings.</summary>
    public double LastCoefficient { get; private set; }

    /// <summary>Its variance over that of a reading.</summary>
    public double LastVariance { get; private set; }

    /// <summary>Fits some columns of a lower triangle of products, one more of them, and the readings.</summary>
    /// <param name="products">The products.</param>
    /// <param name="from">The first column to be fitted.</param>
    /// <param name="to">The last column before the courses.</param>
    /// <param name="ridge">Inverse variance, in that of a reading, that is known of the columns before that one; 0 where they are free.</param>
    /// <param name="course">The course.</param>
    /// <param name="readings">The readings.</param>
    public void Take(double[] products, int from, int to, double ridge, int course, int readings)
    {
        var shared = size - 2;
        var determinant = 1.0;
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
                var sum = products[row * stride + column] + (j == k && row < to ? ridge : 0);
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
                sum = Math.Max(sum, 1e-13 * products[row * stride + row] + 1e-300);
                determinant *= sum;
                triangle[j * size + j] = Math.Sqrt(sum);
            }
        }

        var last = triangle[shared * size + shared];
        LogDeterminant = Math.Log(determinant);
        LastCoefficient = triangle[(size - 1) * size + shared] / last;
        LastVariance = 1 / (last * last);
    }
}
