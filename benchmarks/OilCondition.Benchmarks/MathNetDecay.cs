using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using MathNet.Numerics.Optimization;

namespace OilCondition.Benchmarks;

/// <summary>MathNet's Levenberg-Marquardt on one series, helped: analytic gradient, scaled to 1, start from the data, tolerances of 1e-8.</summary>
public sealed class MathNetDecay
{
    private readonly double timeUnit;
    private readonly double valueUnit;
    private readonly DenseVector times;
    private readonly DenseVector values;

    public MathNetDecay(double[] times, double[] values)
    {
        timeUnit = times[^1];
        valueUnit = values.Max();
        this.times = DenseVector.OfEnumerable(times.Select(t => t / timeUnit));
        this.values = DenseVector.OfEnumerable(values.Select(y => y / valueUnit));
    }

    /// <summary>Floor, amplitude and rate in scaled units; null where it gives up.</summary>
    public Vector<double>? Fit(bool bounded)
    {
        var last = values[values.Count - 1];
        var start = DenseVector.OfArray([Math.Max(last, 0.01), values[0] - last, 1]);
        var solver = new LevenbergMarquardtMinimizer(
            gradientTolerance: 1e-8,
            stepTolerance: 1e-8,
            functionTolerance: 1e-8
        );
        var objective = ObjectiveFunction.NonlinearModel(Model, Gradient, times, values);
        try
        {
            return bounded
                ? solver
                    .FindMinimum(
                        objective,
                        start,
                        lowerBound: DenseVector.OfArray([0, -100, 0]),
                        upperBound: DenseVector.OfArray([100, 100, 100])
                    )
                    .MinimizingPoint
                : solver.FindMinimum(objective, start).MinimizingPoint;
        }
        catch (Exception exception) when (exception is MathNet.Numerics.NonConvergenceException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>Residual sum of squares of a point, in the units of the readings.</summary>
    public double Squares(Vector<double> point) =>
        valueUnit * valueUnit * (Model(point, times) - values).DotProduct(Model(point, times) - values);

    private static DenseVector Model(Vector<double> p, Vector<double> x)
    {
        var from = ((DenseVector)x).Values;
        var to = new double[from.Length];
        var (floor, amplitude, rate) = (p[0], p[1], p[2]);
        for (var i = 0; i < to.Length; i++)
        {
            to[i] = floor + amplitude * Math.Exp(-rate * from[i]);
        }

        return new DenseVector(to);
    }

    private static DenseMatrix Gradient(Vector<double> p, Vector<double> x)
    {
        var from = ((DenseVector)x).Values;
        var count = from.Length;
        var columns = new double[3 * count];
        var (amplitude, rate) = (p[1], p[2]);
        for (var i = 0; i < count; i++)
        {
            var e = Math.Exp(-rate * from[i]);
            columns[i] = 1;
            columns[count + i] = e;
            columns[2 * count + i] = -amplitude * from[i] * e;
        }

        return new DenseMatrix(count, 3, columns);
    }
}
