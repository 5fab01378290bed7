namespace OilCondition.Statistics;

/// <summary>Cholesky solution of a symmetric system of up to three unknowns, rows of three, lower triangle given.</summary>
internal static class SmallSystem
{
    /// <summary>Solves in place: the right side becomes the solution.</summary>
    /// <param name="matrix">Lower triangle; overwritten by its factor.</param>
    /// <param name="right">Right side.</param>
    /// <param name="size">1 to 3.</param>
    /// <returns>False if the matrix is not positive definite.</returns>
    public static bool TrySolve(Span<double> matrix, Span<double> right, int size)
    {
        for (var i = 0; i < size; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[i * 3 + j];
                for (var k = 0; k < j; k++)
                {
                    sum -= matrix[i * 3 + k] * matrix[j * 3 + k];
                }

                if (i == j && !(sum > 0))
                {
                    return false;
                }

                matrix[i * 3 + j] = i == j ? Math.Sqrt(sum) : sum / matrix[j * 3 + j];
            }
        }

        for (var i = 0; i < size; i++)
        {
            for (var k = 0; k < i; k++)
            {
                right[i] -= matrix[i * 3 + k] * right[k];
            }

            right[i] /= matrix[i * 3 + i];
        }

        for (var i = size - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < size; k++)
            {
                right[i] -= matrix[k * 3 + i] * right[k];
            }

            right[i] /= matrix[i * 3 + i];
        }

        return true;
    }
}
