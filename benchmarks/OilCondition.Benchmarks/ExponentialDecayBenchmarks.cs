using BenchmarkDotNet.Attributes;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using OilCondition.Statistics;

namespace OilCondition.Benchmarks;

/// <summary>One decay fit with covariance, beside MathNet's Levenberg-Marquardt helped: analytic gradient, scaled, start from the data, with and without bounds.</summary>
[MemoryDiagnoser]
public class ExponentialDecayBenchmarks
{
    private (double[] Times, double[] Values)[] series = [];
    private (Vector<double> Times, Vector<double> Values)[] scaled = [];

    [Params(12, 50, 200)]
    public int Count { get; set; }

    [GlobalSetup]
    public void Prepare()
    {
        series = DecayData.Of(Count);
        scaled =
        [
            .. series.Select(s =>
                (
                    Vector<double>.Build.Dense([.. s.Times.Select(t => t / s.Times[^1])]),
                    Vector<double>.Build.Dense([.. s.Values.Select(y => y / s.Values.Max())])
                )
            ),
        ];
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

    [Benchmark(OperationsPerInvoke = DecayData.Series)]
    public double FitAndIntervals()
    {
        double sum = 0;
        foreach (var (times, values) in series)
        {
            var analysis = ExponentialDecay.Analyze(times, values);
            sum += analysis.Rate(0.9).Lower + analysis.Floor(0.9).Lower + analysis.TimeTo(300, 0.9).Lower;
        }

        return sum;
    }

    [Benchmark(OperationsPerInvoke = DecayData.Series)]
    public double MathNetFree() => MathNet(bounded: false);

    [Benchmark(OperationsPerInvoke = DecayData.Series)]
    public double MathNetBounded() => MathNet(bounded: true);

    private double MathNet(bool bounded)
    {
        double sum = 0;
        foreach (var (times, values) in scaled)
        {
            var objective = ObjectiveFunction.NonlinearModel(Model, Gradient, times, values);
            var last = values[values.Count - 1];
            var guess = Vector<double>.Build.Dense([Math.Max(last, 0.01), values[0] - last, 1]);
            var solver = new LevenbergMarquardtMinimizer(
                gradientTolerance: 1e-8,
                stepTolerance: 1e-8,
                functionTolerance: 1e-8
            );
            sum += bounded
                ? solver
                    .FindMinimum(
                        objective,
                        guess,
                        lowerBound: Vector<double>.Build.Dense([0, 0, 0]),
                        upperBound: Vector<double>.Build.Dense([100, 100, 100])
                    )
                    .MinimizingPoint[2]
                : solver.FindMinimum(objective, guess).MinimizingPoint[2];
        }

        return sum;
    }

    private static Vector<double> Model(Vector<double> p, Vector<double> x) =>
        x.Map(t => p[0] + p[1] * Math.Exp(-p[2] * t));

    private static Matrix<double> Gradient(Vector<double> p, Vector<double> x)
    {
        var jacobian = Matrix<double>.Build.Dense(x.Count, 3);
        for (var i = 0; i < x.Count; i++)
        {
            var e = Math.Exp(-p[2] * x[i]);
            jacobian[i, 0] = 1;
            jacobian[i, 1] = e;
            jacobian[i, 2] = -p[1] * x[i] * e;
        }

        return jacobian;
    }
}
