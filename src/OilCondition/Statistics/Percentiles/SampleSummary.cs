using System.Runtime.InteropServices;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Mean, spread, median of a sample, on its own or on the logarithmic scale.</summary>
/// <remarks>
/// 'Mean + 2 s' and 'mean + 3 s' are common practice for limits from a machine's own history. From 10 readings mean + 2 s is no 97.5 % limit: for
/// what a sample supports see <see cref="ToleranceLimits"/>.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
public readonly record struct SampleSummary
{
    private SampleSummary(ValueScale scale, double[] transformed)
    {
        Scale = scale;
        Count = transformed.Length;
        Mean = Numbers.Mean(transformed);
        StandardDeviation = Count > 1 ? Math.Sqrt(Numbers.SumOfSquaresAbout(transformed, Mean) / (Count - 1)) : 0;
        Median = Numbers.Median(transformed);
        MedianAbsoluteDeviation = Numbers.MedianAbsoluteDeviation(transformed, Median);
    }

    /// <summary>The scale of the figures below: on the logarithmic one they are those of ln y.</summary>
    public ValueScale Scale { get; }

    /// <summary>Number of values, n.</summary>
    public int Count { get; }

    /// <summary>Mean, on the scale.</summary>
    public double Mean { get; }

    /// <summary>Standard deviation with n − 1, on the scale; 0 for a single value.</summary>
    public double StandardDeviation { get; }

    /// <summary>Median, on the scale.</summary>
    public double Median { get; }

    /// <summary>Median distance from the median, on the scale, without the factor 1.4826.</summary>
    public double MedianAbsoluteDeviation { get; }

    /// <summary>Summarises a sample.</summary>
    /// <param name="values">The sample, one value or more, in any order.</param>
    /// <param name="scale">Natural, or logarithmic for values above 0.</param>
    /// <returns>The summary.</returns>
    /// <exception cref="ArgumentException">There are no values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite, beyond 1e100, or not above 0 on the logarithmic scale.</exception>
    public static SampleSummary Of(ReadOnlySpan<double> values, ValueScale scale = ValueScale.Natural)
    {
        Numbers.AtLeast(values.Length, 1, nameof(values));
        return new SampleSummary(scale, Scales.Transformed(values, scale, nameof(values)));
    }

    /// <summary>Mean + multiple × standard deviation, in the unit of the values: on the logarithmic scale exp(mean + multiple × s).</summary>
    /// <param name="multiple">How many standard deviations above the mean; negative for below; −1000 to 1000.</param>
    /// <returns>The value, in the unit of the sample.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The multiple is out of range.</exception>
    public double ValueAt(double multiple) =>
        Scales.Back(Mean + Guard.InRange(multiple, -1000, 1000, "") * StandardDeviation, Scale);
}
