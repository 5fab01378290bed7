using OilCondition.Text;

namespace OilCondition.ControlCharts;

/// <summary>A chart of the exponentially weighted moving average, which sees small lasting shifts.</summary>
/// <remarks>
/// z_i = λ x_i + (1 − λ) z_(i−1), z_0 = target; limits target ± L σ sqrt(λ/(2 − λ) [1 − (1 − λ)^(2i)]), or without the bracket for the steady
/// ones (Roberts 1959; NIST/SEMATECH e-Handbook, section 6.3.2.4). The limits hold for independent readings; target and σ should come
/// from a period that is known to have been sound, not from the readings judged.
/// </remarks>
public sealed class EwmaChart
{
    /// <summary>States the chart.</summary>
    /// <param name="target">Level when all is well, in the unit of the readings.</param>
    /// <param name="sigma">Standard deviation of single readings when all is well, above 0.</param>
    /// <param name="weight">λ, the weight of the newest reading, above 0 and up to 1; 0.2 to 0.3 is usual.</param>
    /// <param name="width">L, half-width of the limits in standard deviations of the average, above 0; 3 is usual.</param>
    /// <param name="limits">Exact limits, or the steady ones throughout.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public EwmaChart(
        double target,
        double sigma,
        double weight = 0.2,
        double width = 3,
        EwmaLimits limits = EwmaLimits.Exact
    )
    {
        Target = Guard.InRange(target, -Readings.Largest, Readings.Largest, "");
        Sigma = Readings.Scale(sigma, nameof(sigma));
        Weight = weight > 0 ? Guard.InRange(weight, 0, 1, "") : Guard.Positive(weight, "");
        Width = Readings.Scale(width, nameof(width));
        Limits = limits;
    }

    /// <summary>Level when all is well.</summary>
    public double Target { get; }

    /// <summary>Standard deviation of single readings when all is well.</summary>
    public double Sigma { get; }

    /// <summary>Weight of the newest reading, λ.</summary>
    public double Weight { get; }

    /// <summary>Half-width of the limits in standard deviations of the average, L.</summary>
    public double Width { get; }

    /// <summary>Which limits are drawn.</summary>
    public EwmaLimits Limits { get; }

    /// <inheritdoc/>
    public override string ToString()
    {
        var half = Width * Sigma * Math.Sqrt(Weight / (2 - Weight));
        return $"target {PlainText.Number(Target, half / 10)}, settled limits "
            + $"{PlainText.Number(Target - half, half / 10)} to {PlainText.Number(Target + half, half / 10)}";
    }

    /// <summary>Plots readings.</summary>
    /// <param name="values">Readings in the order of time.</param>
    /// <returns>One point a reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A reading is not finite or beyond 1e100.</exception>
    public IReadOnlyList<ChartPoint> Plot(ReadOnlySpan<double> values)
    {
        Readings.Check(values);
        var points = new ChartPoint[values.Length];
        var average = Target;
        for (var i = 0; i < points.Length; i++)
        {
            average = Weight * values[i] + (1 - Weight) * average;
            var half = HalfWidthAt(i + 1);
            points[i] = new ChartPoint(average, Target - half, Target + half);
        }

        return points;
    }

    /// <summary>Half-width of the limits at a reading.</summary>
    /// <param name="count">Number of readings so far, 1 or more.</param>
    /// <returns>The half-width, in the unit of the readings.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 1.</exception>
    public double HalfWidthAt(int count)
    {
        if (count < 1)
        {
            throw new ArgumentOutOfRangeException(nameof(count), $"count is {count}; allowed: 1 or more.");
        }

        var settling = Limits == EwmaLimits.Exact ? 1 - Math.Pow(1 - Weight, 2.0 * count) : 1;
        return Width * Sigma * Math.Sqrt(Weight / (2 - Weight) * settling);
    }
}
