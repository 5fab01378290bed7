using BenchmarkDotNet.Attributes;
using OilCondition.Statistics;

namespace OilCondition.Benchmarks;

/// <summary>One decay fit with covariance, beside MathNet's Levenberg-Marquardt helped: analytic gradient, scaled, start from the data, with and without bounds.</summary>
[MemoryDiagnoser]
public class ExponentialDecayBenchmarks
{
    private (double[] Times, double[] Values)[] series = [];
    private readonly DecayStore store = new();
    private readonly ExponentialDecayOptions free = new();
    private MathNetDecay[] peers = [];
    private (ExponentialDecay Fit, DecayFound Found)[] fits = [];

    [Params(12, 50, 200)]
    public int Count { get; set; }

    [Params("ordinary", "mixed")]
    public string Kind { get; set; } = "";

    [GlobalSetup]
    public void Prepare()
    {
        series = Kind == "ordinary" ? DecayData.Ordinary(Count) : DecayData.Mixed(Count);
        peers = [.. series.Select(s => new MathNetDecay(s.Times, s.Values))];
        fits = [.. series.Select(s => Fitted(s.Times, s.Values))];
    }

    [Benchmark(Baseline = true, OperationsPerInvoke = DecayData.Series)]
    public double Fit()
    {
        double sum = 0;
        foreach (var (times, values) in series)
        {
            sum += ExponentialDecay.Fit(times, values).Rate;
        }

        return sum;
    }

    /// <summary>Rate, floor and the time to a value, each with both ends and its warning.</summary>
    [Benchmark(OperationsPerInvoke = DecayData.Series)]
    public double FitAndThreeIntervals()
    {
        double sum = 0;
        foreach (var (times, values) in series)
        {
            var analysis = ExponentialDecay.Analyze(times, values);
            sum += (analysis.Rate(0.9).Lower ?? 0) + (analysis.Floor(0.9).Lower ?? 0);
            sum += analysis.TimeTo(300, 0.9).CoverageInDoubt ? 1 : 0;
        }

        return sum;
    }

    /// <summary>The same three of a fit that is there, without its warnings: the set of compatible curves and its reach.</summary>
    [Benchmark(OperationsPerInvoke = DecayData.Series)]
    public double FitsThreeIntervalsAlone()
    {
        double sum = 0;
        for (var i = 0; i < series.Length; i++)
        {
            sum += Earliest(series[i].Times, series[i].Values, fits[i].Fit, fits[i].Found);
        }

        return sum;
    }

    private (ExponentialDecay Fit, DecayFound Found) Fitted(double[] times, double[] values)
    {
        var found = new DecayFound();
        return (DecayFitter.Fit(times, values, default, free, default, default, null, found), found);
    }

    private double Earliest(double[] times, double[] values, in ExponentialDecay fit, DecayFound found)
    {
        var quantile = IntervalLevel.StudentQuantile(0.9, IntervalSide.Both, fit.DegreesOfFreedom);
        var columns = new DecayColumns(
            stackalloc double[DecayColumns.Scratch(times.Length)],
            times,
            values,
            default,
            fit.StartTime
        );
        var least = fit.ResidualSumOfSquares;
        var profile = new DecayProfile(
            columns,
            new DecayShape(columns, null, null, free.Bound),
            found,
            DecayProfile.Limit(least, quantile, fit.DegreesOfFreedom) - least,
            rateIsKnown: false,
            store
        );
        profile.Crossings(profile.Scaled(300), out var first, out _, out _);
        return first ?? profile.Lowest;
    }

    [Benchmark(OperationsPerInvoke = DecayData.Series)]
    public double MathNetFree()
    {
        double sum = 0;
        foreach (var peer in peers)
        {
            sum += peer.Fit(bounded: false)?[2] ?? 0;
        }

        return sum;
    }

    [Benchmark(OperationsPerInvoke = DecayData.Series)]
    public double MathNetBounded()
    {
        double sum = 0;
        foreach (var peer in peers)
        {
            sum += peer.Fit(bounded: true)?[2] ?? 0;
        }

        return sum;
    }
}
