using BenchmarkDotNet.Attributes;
using MathNet.Numerics;
using MathNet.Numerics.Statistics;
using OilCondition.Statistics;

namespace OilCondition.Benchmarks;

/// <summary>Line, Theil-Sen with interval, Mann-Kendall and the whole assessment of one series, beside what a general library offers for the parts.</summary>
[MemoryDiagnoser]
public class TrendBenchmarks
{
    private const int Series = 256;
    private (double[] Times, double[] Values)[] series = [];

    [Params(12, 50)]
    public int Count { get; set; }

    [GlobalSetup]
    public void Prepare()
    {
        var random = new Random(Count);
        series = new (double[], double[])[Series];
        for (var s = 0; s < Series; s++)
        {
            double[] times = [.. Enumerable.Range(0, Count).Select(i => 90 * i + 20 * random.NextDouble())];
            series[s] = (times, [.. times.Select(t => 0.001 * t + DecayData.Normal(random))]);
        }
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = Series)]
    public double TheilSenWithInterval() => Sum((t, y) => TheilSen.Fit(t, y).Slope);

    /// <summary>All pair slopes into an array, sorted, the median alone: no ties, no interval.</summary>
    [Benchmark(OperationsPerInvoke = Series)]
    public double SortedSlopes() =>
        Sum(
            (t, y) =>
            {
                var slopes = Slopes(t, y);
                Array.Sort(slopes);
                return slopes[slopes.Length / 2];
            }
        );

    /// <summary>All pair slopes into an array, MathNet's selection, the median alone: no ties, no interval.</summary>
    [Benchmark(OperationsPerInvoke = Series)]
    public double MathNetMedianOfSlopes() => Sum((t, y) => ArrayStatistics.MedianInplace(Slopes(t, y)));

    [Benchmark(OperationsPerInvoke = Series)]
    public double MannKendallTest() => Sum((t, y) => MannKendall.Test(t, y).PValue);

    /// <summary>MathNet has no Kendall test; its rank correlation is the nearest.</summary>
    [Benchmark(OperationsPerInvoke = Series)]
    public double MathNetSpearman() => Sum((t, y) => Correlation.Spearman(t, y));

    [Benchmark(OperationsPerInvoke = Series)]
    public double Line() => Sum((t, y) => StraightLine.Fit(t, y).SlopeStandardError);

    /// <summary>Intercept and slope alone: no errors.</summary>
    [Benchmark(OperationsPerInvoke = Series)]
    public double MathNetLine() => Sum((t, y) => Fit.Line(t, y).Item2);

    [Benchmark(OperationsPerInvoke = Series)]
    public double Assessment() => Sum((t, y) => TrendAssessment.Of(t, y).Slope);

    private static double[] Slopes(double[] times, double[] values)
    {
        var slopes = new double[times.Length * (times.Length - 1) / 2];
        var next = 0;
        for (var i = 0; i < times.Length; i++)
        {
            for (var j = i + 1; j < times.Length; j++)
            {
                slopes[next++] = (values[j] - values[i]) / (times[j] - times[i]);
            }
        }

        return slopes;
    }

    private double Sum(Func<double[], double[], double> of)
    {
        double sum = 0;
        foreach (var (times, values) in series)
        {
            sum += of(times, values);
        }

        return sum;
    }
}
