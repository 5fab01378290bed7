using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using OilCondition.Statistics;
using OilCondition.Tests.Cleanup;

namespace OilCondition.Tests.Statistics;

/// <summary>What the residuals say beside the parts of a fit, by matrices written out.</summary>
public class DecayDesignTests
{
    /// <summary>Also where hardly anything of a second fall is left beside the parts.</summary>
    [Theory]
    [InlineData(6, 2.0, false)]
    [InlineData(8, 3.0, false)]
    [InlineData(13, 0.4, false)]
    [InlineData(31, 2.0, true)]
    [InlineData(50, 0.06, false)]
    public void Lag_one_and_second_falls_are_those_of_the_matrices(int count, double constants, bool knowsStart)
    {
        var random = new Random(count);
        double[] times = [.. Enumerable.Range(0, count).Select(i => (i + 0.3 * random.NextDouble()) / count)];
        double[] values =
        [
            .. times.Select(t => 100 + 900 * Math.Exp(-constants * t) + constants * Runs.Normal(random)),
        ];
        double[] weights = [.. times.Select(_ => 0.5 + random.NextDouble())];
        var options = knowsStart
            ? new ExponentialDecayOptions(lowestFloor: null, start: 1000, startTime: 0)
            : new ExponentialDecayOptions(lowestFloor: null);
        var fit = ExponentialDecay.Fit(times, values, weights, options);
        fit.Status.ShouldBe(ExponentialDecayStatus.Determined);
        var design = DecayDesign.Of(times, values, weights, fit, options, new DecayStore());

        double E(double time, double factor) => Math.Exp(-factor * fit.Rate * (time - fit.StartTime));
        double[] roots = [.. weights.Select(Math.Sqrt)];
        Vector<double> Of(Func<double, double> column) =>
            Vector<double>.Build.Dense(count, i => roots[i] * column(times[i]));
        var start = Of(t => E(t, 1));
        Vector<double>[] parts =
        [
            Of(t => 1 - E(t, 1)),
            Of(t => fit.Rate * (t - fit.StartTime) * E(t, 1)),
            .. knowsStart ? [] : new[] { start },
        ];
        var q = Matrix<double>.Build.DenseOfColumnVectors(parts).GramSchmidt().Q;
        var m = Matrix<double>.Build.DenseIdentity(count) - q * q.Transpose();
        var a = Matrix<double>.Build.Dense(count, count, (i, j) => Math.Abs(i - j) == 1 ? 0.5 : 0);
        var residuals = m * Of(t => values[Array.IndexOf(times, t)] - fit.ValueAt(t));
        var degrees = count - parts.Length;
        var mean = (m * a).Trace() / degrees;
        var square = (m * a * m * a).Trace();
        var variance =
            2 * (degrees * square - mean * mean * degrees * degrees) / ((double)degrees * degrees * (degrees + 2));
        var lagOne = residuals * (a * residuals) / (residuals * residuals);
        design.LagOneDeviate.ShouldBe((lagOne - mean) / Math.Sqrt(variance), 1e-6);

        var chances = design.Course(fit.Status, falls: true);
        chances.FasterAtFirst.ShouldBe(Above(4), 1e-5);
        chances.SlowerAtFirst.ShouldBe(1 - Above(8), 1e-5);

        double Above(double factor)
        {
            var beside = m * Of(t => E(t, factor) - (knowsStart ? E(t, 1) : 0));
            var share = residuals * beside / beside.L2Norm();
            var rest = (residuals * residuals - share * share) / (degrees - 1);
            return StudentT.CDF(0, 1, degrees - 1, -share / Math.Sqrt(rest));
        }
    }
}
