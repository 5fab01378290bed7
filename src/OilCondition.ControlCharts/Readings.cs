using OilCondition.Text;

namespace OilCondition.ControlCharts;

/// <summary>What every chart asks of its readings and its scale.</summary>
internal static class Readings
{
    /// <summary>Above it sums may overflow; no quantity comes near.</summary>
    public const double Largest = 1e100;

    public static void Check(ReadOnlySpan<double> values, int least = 0)
    {
        if (values.Length < least)
        {
            throw new ArgumentException(
                $"values has {values.Length} values; allowed: {least} or more.",
                nameof(values)
            );
        }

        foreach (var value in values)
        {
            Guard.InRange(value, -Largest, Largest, "", nameof(values));
        }
    }

    public static double Mean(ReadOnlySpan<double> values)
    {
        double sum = 0;
        foreach (var value in values)
        {
            sum += value;
        }

        // The second pass takes out what the first one lost by rounding.
        var mean = sum / values.Length;
        double rest = 0;
        foreach (var value in values)
        {
            rest += value - mean;
        }

        return mean + rest / values.Length;
    }

    /// <summary>A width or scale: above 0, and no larger than the readings may be.</summary>
    public static double Scale(double value, string name) =>
        value > 0 ? Guard.InRange(value, 0, Largest, "", name) : Guard.Positive(value, "", name);
}
