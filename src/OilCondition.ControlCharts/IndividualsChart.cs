using OilCondition.Text;

namespace OilCondition.ControlCharts;

/// <summary>A chart of single readings, its scale taken from the ranges between neighbours.</summary>
/// <remarks>
/// σ = mean moving range/1.128; limits mean ± 3 σ; the moving range's own limit 3.267 × its mean. The constants d2 = 1.128 and D4 = 3.267 for ranges of
/// two are the tabled ones (NIST/SEMATECH e-Handbook, section 6.3.2.2). For independent, about normal readings: logarithms for
/// particle counts. Neighbouring ranges hardly notice a drift, which is why they are used; readings that follow one another
/// make them too small, and the limits too narrow.
/// </remarks>
public sealed class IndividualsChart
{
    private const double D2 = 1.128;
    private const double D4 = 3.267;

    private IndividualsChart(double mean, double meanMovingRange)
    {
        Mean = mean;
        MeanMovingRange = meanMovingRange;
    }

    /// <summary>Mean of the readings, the centre line.</summary>
    public double Mean { get; }

    /// <summary>Mean of the ranges between neighbours.</summary>
    public double MeanMovingRange { get; }

    /// <summary>Standard deviation of single readings, mean moving range/1.128.</summary>
    public double Sigma => MeanMovingRange / D2;

    /// <summary>Upper limit of single readings, mean + 3 σ.</summary>
    public double UpperLimit => Mean + 3 * Sigma;

    /// <summary>Lower limit of single readings, mean − 3 σ; it may lie below 0 and is not clipped.</summary>
    public double LowerLimit => Mean - 3 * Sigma;

    /// <summary>Upper limit of the range between neighbours, 3.267 × its mean; the lower limit is 0.</summary>
    public double MovingRangeLimit => D4 * MeanMovingRange;

    /// <summary>Takes centre and scale from readings of a sound period.</summary>
    /// <param name="values">Readings in the order of time, two or more; 20 or more make a chart worth having.</param>
    /// <returns>The chart.</returns>
    /// <exception cref="ArgumentException">There are fewer than two readings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A reading is not finite or beyond 1e100.</exception>
    public static IndividualsChart Of(ReadOnlySpan<double> values)
    {
        Readings.Check(values, least: 2);
        double ranges = 0;
        for (var i = 1; i < values.Length; i++)
        {
            ranges += Math.Abs(values[i] - values[i - 1]);
        }

        return new IndividualsChart(Readings.Mean(values), ranges / (values.Length - 1));
    }

    /// <inheritdoc/>
    public override string ToString() =>
        $"mean {PlainText.Number(Mean, Sigma / 10)}, limits {PlainText.Number(LowerLimit, Sigma / 10)} to {PlainText.Number(UpperLimit, Sigma / 10)}";

    /// <summary>Plots readings.</summary>
    /// <param name="values">Readings in the order of time.</param>
    /// <returns>One point a reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A reading is not finite or beyond 1e100.</exception>
    public IReadOnlyList<ChartPoint> Plot(ReadOnlySpan<double> values)
    {
        Readings.Check(values);
        var points = new ChartPoint[values.Length];
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = new ChartPoint(values[i], LowerLimit, UpperLimit);
        }

        return points;
    }

    /// <summary>Plots the ranges between neighbours, whose jumps show a change of scatter or a single wild reading.</summary>
    /// <param name="values">Readings in the order of time.</param>
    /// <returns>One point a range: one fewer than there are readings.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A reading is not finite or beyond 1e100.</exception>
    public IReadOnlyList<ChartPoint> PlotMovingRange(ReadOnlySpan<double> values)
    {
        Readings.Check(values);
        var points = new ChartPoint[Math.Max(0, values.Length - 1)];
        for (var i = 0; i < points.Length; i++)
        {
            points[i] = new ChartPoint(Math.Abs(values[i + 1] - values[i]), 0, MovingRangeLimit);
        }

        return points;
    }
}
