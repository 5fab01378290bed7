using BenchmarkDotNet.Attributes;
using OilCondition.Prognosis;
using OilCondition.Statistics;

namespace OilCondition.Benchmarks;

/// <summary>Remaining life of one series, many different ones: the likelihoods alone, with three quantiles, and the whole call.</summary>
[MemoryDiagnoser]
public class RemainingLifeBenchmarks
{
    private readonly LifeOptions line = new(LifeModel.LineNewReading);
    private (double[] Times, double[] Values)[] columns = [];
    private MeasurandSeries[] series = [];
    private DateTimeOffset now;

    [Params(12, 50)]
    public int Count { get; set; }

    [GlobalSetup]
    public void Prepare()
    {
        var random = new Random(20260401);
        var kind = LifeData.Walk(0.1, 0.1);
        var times = LifeData.Times(random, Count, uneven: false);
        now = LifeData.Now(times);
        columns =
        [
            .. Enumerable
                .Range(0, 4 * DecayData.Series)
                .Select(_ => kind.Draw(random, times, 1.6))
                .OfType<LifeData.Drawn>()
                .Take(DecayData.Series)
                .Select(drawn => (times, drawn.Values)),
        ];
        series = [.. columns.Select(one => LifeData.Series(one.Times, one.Values))];
    }

    [Benchmark(OperationsPerInvoke = DecayData.Series)]
    public double Likelihoods()
    {
        double sum = 0;
        foreach (var (times, values) in columns)
        {
            using var fit = Degradation.Fit(times, values);
            sum += fit.Weights[0];
        }

        return sum;
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = DecayData.Series)]
    public double ThreeQuantiles()
    {
        double sum = 0;
        foreach (var (times, values) in columns)
        {
            using var fit = Degradation.Fit(times, values);
            var law = fit.Above(1.6, 1e4);
            sum += law.TryTime(0.1, 0, out var p10) ? p10 : 0;
            sum += law.TryTime(0.5, 0, out var p50) ? p50 : 0;
            sum += law.TryTime(0.9, 0, out var p90) ? p90 : 0;
        }

        return sum;
    }

    [Benchmark(OperationsPerInvoke = DecayData.Series)]
    public int WholeForecast() =>
        series.Count(one => LifeForecast.Of(one, 1.6, LimitSide.Upper, now) is RemainingLife.Crosses);

    [Benchmark(OperationsPerInvoke = DecayData.Series)]
    public int StraightLineForecast() =>
        series.Count(one => LifeForecast.Of(one, 1.6, LimitSide.Upper, now, line) is RemainingLife.Crosses);
}
