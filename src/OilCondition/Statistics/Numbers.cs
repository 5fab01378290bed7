using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>What every statistic asks of its numbers, and the few sums they share.</summary>
internal static class Numbers
{
    /// <summary>Above it sums of squares may overflow; no quantity comes near.</summary>
    private const double Largest = 1e100;
    private const int OnStack = 128;

    public static void Check(ReadOnlySpan<double> values, string name)
    {
        if (LaneMath.AreWithin(values, -Largest, Largest))
        {
            return;
        }

        foreach (var value in values)
        {
            Guard.InRange(value, -Largest, Largest, "", name);
        }
    }

    public static void CheckPairs(
        ReadOnlySpan<double> first,
        ReadOnlySpan<double> second,
        string firstName,
        string secondName
    )
    {
        Guard.SameLength(second.Length, first.Length, secondName, firstName);
        Check(first, firstName);
        Check(second, secondName);
    }

    public static void AtLeast(int count, int least, string name)
    {
        if (count < least)
        {
            throw new ArgumentException($"{name} has {count} values; allowed: {least} or more.", name);
        }
    }

    public static void Ascending(ReadOnlySpan<double> times, string name)
    {
        for (var i = 1; i < times.Length; i++)
        {
            if (times[i] < times[i - 1])
            {
                throw new ArgumentException(
                    $"{name} must ascend; value {i + 1} is earlier than the one before it.",
                    name
                );
            }
        }
    }

    /// <summary>Whether no value lies below the one before it.</summary>
    public static bool Ascend(ReadOnlySpan<double> values)
    {
        for (var i = 1; i < values.Length; i++)
        {
            if (values[i] < values[i - 1])
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether each value lies above the one before it.</summary>
    public static bool AscendStrictly(ReadOnlySpan<double> values)
    {
        for (var i = 1; i < values.Length; i++)
        {
            if (!(values[i] > values[i - 1]))
            {
                return false;
            }
        }

        return true;
    }

    public static int InRange(int value, int lowest, int highest, string name) =>
        value >= lowest && value <= highest
            ? value
            : throw new ArgumentOutOfRangeException(name, $"{name} is {value}; allowed: {lowest} to {highest}.");

    public static double Mean(ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (var value in values)
        {
            sum += value;
        }

        var mean = sum / values.Length;
        double rest = 0;
        foreach (var value in values)
        {
            rest += value - mean;
        }

        return mean + rest / values.Length;
    }

    public static double SumOfSquaresAbout(ReadOnlySpan<double> values, double centre)
    {
        double sum = 0;
        foreach (var value in values)
        {
            sum += (value - centre) * (value - centre);
        }

        return sum;
    }

    /// <summary>Median; the mean of the two middle values for an even number.</summary>
    public static double Median(ReadOnlySpan<double> values)
    {
        var copy = values.Length <= OnStack ? stackalloc double[values.Length] : new double[values.Length];
        values.CopyTo(copy);
        return Selection.Median(copy);
    }

    /// <summary>How many different values there are.</summary>
    public static int CountDistinct(ReadOnlySpan<double> values)
    {
        // As most dates do.
        if (AscendStrictly(values))
        {
            return values.Length;
        }

        var sorted = values.Length <= OnStack ? stackalloc double[values.Length] : new double[values.Length];
        values.CopyTo(sorted);
        Sorting.Ascending(sorted);
        var count = sorted.Length > 0 ? 1 : 0;
        for (var i = 1; i < sorted.Length; i++)
        {
            count += sorted[i] > sorted[i - 1] ? 1 : 0;
        }

        return count;
    }

    /// <summary>Median distance from the median, without a factor.</summary>
    public static double MedianAbsoluteDeviation(ReadOnlySpan<double> values, double median)
    {
        var distances = values.ToArray();
        for (var i = 0; i < distances.Length; i++)
        {
            distances[i] = Math.Abs(distances[i] - median);
        }

        return Selection.Median(distances);
    }

    /// <summary>The unit of the last decimal that any of some values carries: 1 to a millionth; of values all below 1 to a millionth of the power of ten above them.</summary>
    public static double LastDigit(ReadOnlySpan<double> values)
    {
        var largest = 0.0;
        foreach (var value in values)
        {
            largest = Math.Max(largest, Math.Abs(value));
        }

        // Beside the unit of larger values small ones would look whole, as 0.
        var digit = largest is > 0 and < 1 ? Math.Pow(10, 1 + Math.Floor(Math.Log10(largest))) : 1;
        var least = 1e-6 * Math.Min(1, digit);
        foreach (var value in values)
        {
            while (digit > least && Math.Abs(value / digit - Math.Round(value / digit)) > 1e-6)
            {
                digit /= 10;
            }
        }

        return digit;
    }
}
