using MathNet.Numerics.LinearAlgebra;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>Least squares from products, held against MathNet.Numerics' QR decomposition of the columns themselves.</summary>
public class GramColumnsTests
{
    [Theory]
    [InlineData(0, 0, 1)]
    [InlineData(2, 0, 2)]
    [InlineData(2, 0.25, 3)]
    [InlineData(0, 0.25, 4)]
    public void It_is_the_fit_of_the_columns(int from, double ridge, int seed)
    {
        // Columns: two of a season, 1, two courses, the readings; the second course is fitted.
        const int Rows = 15;
        const int Season = 2;
        const int Course = 4;
        var random = new Random(seed);
        var all = Matrix<double>.Build.Dense(
            Rows,
            6,
            (i, j) => j == 2 ? 1 : j * i / 10.0 + DecayNoiseSource.Normal(random)
        );
        var products = new double[36];
        for (var j = 0; j < 6; j++)
        {
            for (var k = 0; k <= j; k++)
            {
                products[6 * j + k] = all.Column(j) * all.Column(k);
            }
        }

        // The other lanes have products of other readings.
        var lanes = products.Select(one => LaneMath.Load([one, 2 * one, 3 * one, 5 * one], 0)).ToArray();
        var fit = new GramColumns(lanes, 6, from, Season, ridge, Course);
        var left = fit.Fit(lanes.AsSpan(30, 5), lanes[35], out var coefficient);
        var found = new double[LaneMath.Width];
        LaneMath.Store(coefficient, found, 0);

        // What is known of a column is a row of its own: it is 0 within 1/sqrt(ridge).
        int[] columns = [.. Enumerable.Range(from, Season + 1 - from), Course];
        var known = ridge > 0 ? Season - from : 0;
        var design = Matrix<double>.Build.Dense(
            Rows + known,
            columns.Length,
            (i, j) =>
                i < Rows ? all[i, columns[j]]
                : i - Rows == j ? Math.Sqrt(ridge)
                : 0
        );
        var readings = Vector<double>.Build.Dense(Rows + known, i => i < Rows ? all[i, 5] : 0);
        var parts = design.QR().Solve(readings);
        var information = design.Transpose() * design;
        found[0].ShouldBe(parts[^1], 1e-10);
        LaneMath.Store(left, found, 0);
        found[0].ShouldBe((readings - design * parts).DotProduct(readings - design * parts), 1e-9);
        LaneMath.Store(fit.Determinant, found, 0);
        Math.Log(found[0]).ShouldBe(Math.Log(information.Determinant()), 1e-10);
        LaneMath.Store(fit.LastVariance, found, 0);
        found[0].ShouldBe(information.Inverse()[columns.Length - 1, columns.Length - 1], 1e-10);
    }

    [Fact]
    public void Columns_that_say_the_same_leave_every_figure_finite()
    {
        double[][] columns =
        [
            [1, 1, 1, 1],
            [1, 1, 1, 1],
            [0, 1, 2, 4],
        ];
        var products = new double[9];
        for (var j = 0; j < 3; j++)
        {
            for (var k = 0; k <= j; k++)
            {
                products[3 * j + k] = columns[j].Zip(columns[k], (a, b) => a * b).Sum();
            }
        }

        var lanes = products.Select(one => LaneMath.Load([one, one, one, one], 0)).ToArray();
        var fit = new GramColumns(lanes, 3, 0, 0, 0, 1);
        fit.Fit(lanes.AsSpan(6, 2), lanes[8], out var coefficient);
        var found = new double[2 * LaneMath.Width];
        LaneMath.Store(coefficient, found, 0);
        LaneMath.Store(fit.Determinant, found, LaneMath.Width);
        found.ShouldAllBe(one => double.IsFinite(one));
        found[LaneMath.Width].ShouldBeGreaterThan(0);
    }
}
