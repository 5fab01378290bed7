using BenchmarkDotNet.Attributes;
using OilCondition.Statistics;

namespace OilCondition.Benchmarks;

/// <summary>Many series at once with intervals for start, floor and rate, beside the fits alone and one series after the other. Wall time a series.</summary>
[MemoryDiagnoser]
public class DecayColumnBenchmarks
{
    private const int Copies = 16;
    private const int All = Copies * DecayData.Series;
    private (double[] Times, double[] Values)[] series = [];
    private int[] offsets = [];
    private double[] times = [];
    private double[] values = [];

    [Params(12, 50)]
    public int Count { get; set; }

    [Params("ordinary", "mixed")]
    public string Kind { get; set; } = "";

    [GlobalSetup]
    public void Prepare()
    {
        series = Kind == "ordinary" ? DecayData.Ordinary(Count) : DecayData.Mixed(Count);
        offsets = [.. Enumerable.Range(0, All + 1).Select(i => i * Count)];
        times = [.. Enumerable.Repeat(series, Copies).SelectMany(all => all.SelectMany(s => s.Times))];
        values = [.. Enumerable.Repeat(series, Copies).SelectMany(all => all.SelectMany(s => s.Values))];
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = All)]
    public int Columns() => ExponentialDecay.FitColumns(offsets, times, values).Length;

    [Benchmark(OperationsPerInvoke = All)]
    public int ColumnsWithIntervals() => ExponentialDecay.FitColumns(offsets, times, values, 0.9).Length;

    [Benchmark(OperationsPerInvoke = DecayData.Series)]
    public double OneAfterTheOther()
    {
        double sum = 0;
        foreach (var (one, read) in series)
        {
            var analysis = ExponentialDecay.Analyze(one, read);
            sum += (analysis.Rate(0.9).Lower ?? 0) + (analysis.Floor(0.9).Lower ?? 0);
            sum += analysis.Start(0.9).Lower ?? 0;
        }

        return sum;
    }
}
