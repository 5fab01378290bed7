using OilCondition.Text;

namespace OilCondition.ControlCharts;

/// <summary>A two-sided cumulative sum chart in tabular form, which sees small lasting shifts and says when they began.</summary>
/// <remarks>
/// C⁺_i = max(0, C⁺_(i−1) + x_i − target − k), C⁻_i = max(0, C⁻_(i−1) + target − k − x_i); a signal where a sum passes h (Page 1954;
/// NIST/SEMATECH e-Handbook, section 6.3.2.3). The sums go on after a signal; start a new chart once the cause is found.
/// </remarks>
public sealed class CusumChart
{
    /// <summary>States the chart in the unit of the readings.</summary>
    /// <param name="target">Level when all is well.</param>
    /// <param name="allowance">k, half of the shift that is to be found, 0 or more.</param>
    /// <param name="decisionInterval">h, the sum at which the chart signals, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public CusumChart(double target, double allowance, double decisionInterval)
    {
        Target = Guard.InRange(target, -Readings.Largest, Readings.Largest, "");
        Allowance = Guard.InRange(allowance, 0, Readings.Largest, "");
        DecisionInterval = Readings.Scale(decisionInterval, nameof(decisionInterval));
    }

    /// <summary>Level when all is well.</summary>
    public double Target { get; }

    /// <summary>Half of the shift to be found, k.</summary>
    public double Allowance { get; }

    /// <summary>Sum at which the chart signals, h.</summary>
    public double DecisionInterval { get; }

    /// <summary>The usual chart for a shift of one standard deviation: k = σ/2, h = 5 σ, a false signal about every 465 readings.</summary>
    /// <param name="target">Level when all is well.</param>
    /// <param name="sigma">Standard deviation of single readings when all is well, above 0.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static CusumChart ForOneSigma(double target, double sigma) =>
        new(target, Readings.Scale(sigma, nameof(sigma)) / 2, 5 * sigma);

    /// <inheritdoc/>
    public override string ToString() =>
        $"target {PlainText.Number(Target)}, allowance {PlainText.Number(Allowance)}, signal above {PlainText.Number(DecisionInterval)}";

    /// <summary>Plots readings.</summary>
    /// <param name="values">Readings, or means of groups, in the order of time.</param>
    /// <returns>One point a reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A reading is not finite or beyond 1e100.</exception>
    public IReadOnlyList<CusumPoint> Plot(ReadOnlySpan<double> values)
    {
        Readings.Check(values);
        var points = new CusumPoint[values.Length];
        var last = default(CusumPoint);
        for (var i = 0; i < points.Length; i++)
        {
            var upper = Math.Max(0, last.Upper + values[i] - Target - Allowance);
            var lower = Math.Max(0, last.Lower + Target - Allowance - values[i]);
            var signal =
                upper > DecisionInterval && upper >= lower ? ChartSignal.Above
                : lower > DecisionInterval ? ChartSignal.Below
                : ChartSignal.None;
            last = new CusumPoint(
                upper,
                lower,
                signal,
                upper > 0 ? last.UpperRun + 1 : 0,
                lower > 0 ? last.LowerRun + 1 : 0
            );
            points[i] = last;
        }

        return points;
    }
}
