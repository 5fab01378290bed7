using MathNet.Numerics.LinearAlgebra;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>Least squares from products, held against MathNet.Numerics' QR decomposition of the columns themselves.</summary>
public class GramColumnsTests
{
    [Theory]
    [InlineData(1, 0, 0, 1)]
    [InlineData(3, 0, 0, 2)]
    [InlineData(3, 2, 0.25, 3)]
    public void It_is_the_fit_of_the_columns(int common, int ridged, double ridge, int seed)
    {
        // Columns of all fits, then two of which each is in one fit, then the readings.
        const int Rows = 15;
        const int Others = 2;
        var random = new Random(seed);
        var readings = common + Others;
        var all = Matrix<double>.Build.Dense(
            Rows,
            readings + 1,
            (i, j) => j == common - 1 ? 1 : j * i / 10.0 + DecayNoiseSource.Normal(random)
        );
        var gram = Made(all.RemoveColumn(readings), common, ridged, ridge);
        var fits = new GramFit[Others];
        gram.Fit(
            [.. Enumerable.Range(0, readings).Select(j => LaneMath.Of(all.Column(readings) * all.Column(j)))],
            LaneMath.Of(all.Column(readings) * all.Column(readings)),
            fits
        );

        for (var other = 0; other < Others; other++)
        {
            // What is known of a column is a row of its own: it is 0 within 1/sqrt(ridge).
            int[] columns = [.. Enumerable.Range(0, common), common + other];
            var design = Matrix<double>.Build.Dense(
                Rows + ridged,
                columns.Length,
                (i, j) =>
                    i < Rows ? all[i, columns[j]]
                    : i - Rows == j ? Math.Sqrt(ridge)
                    : 0
            );
            var values = Vector<double>.Build.Dense(Rows + ridged, i => i < Rows ? all[i, readings] : 0);
            var parts = design.QR().Solve(values);
            var information = design.Transpose() * design;
            LaneMath.At(fits[other].Coefficient, 0).ShouldBe(parts[^1], 1e-10);
            LaneMath
                .At(fits[other].Left, 0)
                .ShouldBe((values - design * parts).DotProduct(values - design * parts), 1e-9);
            LaneMath
                .At(fits[other].Variance, 0)
                .ShouldBe(information.Inverse()[columns.Length - 1, columns.Length - 1], 1e-10);
            (-2 * Math.Log(LaneMath.At(gram.RootOfInverseDeterminant(other), 0))).ShouldBe(
                Math.Log(information.Determinant()),
                1e-10
            );
        }
    }

    [Fact]
    public void Columns_that_say_the_same_leave_every_figure_finite()
    {
        var same = Matrix<double>.Build.DenseOfColumnArrays([1, 1, 1, 1], [1, 1, 1, 1]);
        var gram = Made(same, common: 1, ridged: 0, ridge: 0);
        var fits = new GramFit[1];
        gram.Fit([LaneMath.Of(7), LaneMath.Of(7)], LaneMath.Of(21), fits);
        double.IsFinite(LaneMath.At(fits[0].Coefficient, 0)).ShouldBeTrue();
        double.IsFinite(LaneMath.At(fits[0].Variance, 0)).ShouldBeTrue();
        LaneMath.At(gram.RootOfInverseDeterminant(0), 0).ShouldBeInRange(1, 1e30);
    }

    private static GramColumns Made(Matrix<double> columns, int common, int ridged, double ridge)
    {
        var count = columns.ColumnCount;
        var others = count - common;
        var room = Enumerable.Repeat(LaneMath.Of(0), GramColumns.Room(common, others)).ToArray();
        var gram = new GramColumns(room, common, others);
        var products = columns.Transpose() * columns;

        // The other lanes have products of other readings.
        gram.Factor(
            [
                .. Enumerable
                    .Range(0, count * count)
                    .Select(i => products[i / count, i % count])
                    .Select(one => LaneMath.Load([one, 2 * one, 3 * one, 5 * one], 0)),
            ],
            ridged,
            ridge
        );
        return gram;
    }
}
