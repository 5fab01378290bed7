namespace OilCondition.Statistics;

/// <summary>Order statistics without a full sort (Hoare's selection, median of three as pivot).</summary>
internal static class Selection
{
    /// <summary>
    /// The value of a rank counted from 1, fractions interpolated. The values are reordered: after it, everything before the rank is not
    /// larger and everything behind it not smaller, so that a higher rank may be sought from <paramref name="from"/> on.
    /// </summary>
    public static double AtRank(Span<double> values, double rank, int from = 0)
    {
        var lower = (int)Math.Floor(rank);
        var index = Math.Min(Math.Max(lower, 1), values.Length) - 1;
        var value = Nth(values, index, from);
        var fraction = rank - lower;
        if (!(fraction > 0) || lower < 1 || index + 1 >= values.Length)
        {
            return value;
        }

        var next = values[index + 1];
        foreach (var other in values.Slice(index + 2))
        {
            next = Math.Min(next, other);
        }

        return value + fraction * (next - value);
    }

    public static double Median(Span<double> values) => AtRank(values, (values.Length + 1) / 2.0);

    /// <summary>The value that ascending order puts at an index.</summary>
    public static double Nth(Span<double> values, int index, int from = 0)
    {
        var left = from;
        var right = values.Length - 1;
        while (left < right)
        {
            var pivot = MedianOfThree(values[left], values[left + (right - left) / 2], values[right]);
            var i = left;
            var j = right;
            while (i <= j)
            {
                while (values[i] < pivot)
                {
                    i++;
                }

                while (values[j] > pivot)
                {
                    j--;
                }

                if (i <= j)
                {
                    (values[i], values[j]) = (values[j], values[i]);
                    i++;
                    j--;
                }
            }

            if (index <= j)
            {
                right = j;
            }
            else if (index >= i)
            {
                left = i;
            }
            else
            {
                break;
            }
        }

        return values[index];
    }

    private static double MedianOfThree(double a, double b, double c) =>
        Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));
}
