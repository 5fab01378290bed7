using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>
/// The rise of readings that follow one another, held against a second route: the covariance written out, generalised least squares by MathNet.Numerics' matrices and
/// the restricted likelihood (Harville, J. Am. Statist. Assoc. 69 (1974) 383) for every correlation and every course.
/// </summary>
public class CorrelatedRiseTests
{
    private static readonly double[] Even = [.. Enumerable.Range(0, 16).Select(i => 30.0 * i)];
    private static readonly double[] Uneven = [0, 12, 55, 80, 81, 140, 200, 290, 300, 330, 402, 500, 511];
    private static readonly double[] Replicates = [0, 0, 0, 30, 30, 61, 90, 90, 120, 120, 120, 150];

    public static TheoryData<double[], double, double, int> Series()
    {
        var series = new TheoryData<double[], double, double, int>();
        var seed = 1;
        foreach (var times in new[] { Even, Uneven, Replicates, [0, 1, 2, 3, 4] })
        {
            foreach (var (rise, correlation) in new[] { (0.0, 0.0), (3.0, 0.0), (0.0, 0.8), (-4.0, 0.5), (9.0, 0.95) })
            {
                series.Add(times, rise, correlation, seed++);
            }
        }

        return series;
    }

    /// <summary>A drawn series on a straight course.</summary>
    private static double[] Drawn(double[] times, double rise, double correlation, int seed)
    {
        var random = new Random(seed);
        double error = 0;
        return
        [
            .. times.Select(t =>
            {
                error =
                    correlation * error + Math.Sqrt(1 - correlation * correlation) * DecayNoiseSource.Normal(random);
                return 40 + rise * t / times[^1] + error;
            }),
        ];
    }

    [Theory]
    [MemberData(nameof(Series))]
    public void It_is_that_of_matrices_written_out(double[] times, double rise, double correlation, int seed)
    {
        var values = Drawn(times, rise, correlation, seed);
        Compare(new RiseDesign(times), values, Dense.Of(times, values, [], isSeasonFound: true));
    }

    [Theory]
    [MemberData(nameof(Series))]
    public void A_season_that_was_found_is_free(double[] times, double rise, double correlation, int seed)
    {
        if (times.Length <= 5)
        {
            return;
        }

        var values = Drawn(times, rise, correlation, seed);
        var season = Season(times, 200);
        Compare(new RiseDesign(times, 200), values, Dense.Of(times, values, season, isSeasonFound: true));
    }

    [Theory]
    [MemberData(nameof(Series))]
    public void A_season_that_may_be_there_has_a_known_variance(
        double[] times,
        double rise,
        double correlation,
        int seed
    )
    {
        var season = Season(times, 1.3 * times[^1]);
        double[] values =
        [
            .. Drawn(times, rise, correlation, seed).Select((value, i) => value + 2 * (seed % 2) * season[1][i]),
        ];
        Compare(
            new RiseDesign(times).InDoubtOf(1.3 * times[^1]),
            values,
            Dense.Of(times, values, season, isSeasonFound: false)
        );
    }

    private static double[][] Season(double[] times, double period) =>
        [
            [.. times.Select(t => Math.Cos(2 * Math.PI * t / period))],
            [.. times.Select(t => Math.Sin(2 * Math.PI * t / period))],
        ];

    private static CorrelatedRise Rise(RiseDesign design, double[] values) =>
        CorrelatedRise.Of(design, values, 0, new double[CorrelatedRise.Room]);

    private static void Compare(RiseDesign design, double[] values, Dense dense)
    {
        var rise = Rise(design, values);
        var width = Math.Sqrt(dense.Variance);
        rise.Rise.ShouldBe(dense.Rise, 1e-6 * width);
        rise.Correlation.ShouldBe(dense.Correlation, 1e-6);
        rise.Scatter.ShouldBe(dense.Scatter, 1e-6 * dense.Scatter);
        design.DegreesOfFreedom.ShouldBe(dense.Freedom);
        foreach (var at in new[] { -3.0, -1, 0, 0.5, 2 })
        {
            var figure = dense.Rise + at * width;
            rise.ChanceBelow(figure).ShouldBe(dense.ChanceBelow(figure), 1e-6);
        }

        var below = dense.ChanceBelow(0);
        rise.TwoSidedChance.ShouldBe(2 * Math.Min(below, 1 - below), 1e-6);

        // At one half the secants have nowhere to start from, and halving has to find it.
        foreach (var chance in new[] { 0.0005, 0.1, 0.5, 0.975, 0.9995 })
        {
            dense.ChanceBelow(rise.Quantile(chance)).ShouldBe(chance, 1e-6 * Math.Min(chance, 1 - chance));
        }
    }

    [Theory]
    [MemberData(nameof(Series))]
    public void Level_scale_sign_and_unit_of_time_do_what_they_must(
        double[] times,
        double rise,
        double correlation,
        int seed
    )
    {
        var values = Drawn(times, rise, correlation, seed);
        var plain = Rise(new RiseDesign(times), values);
        var other = Rise(
            new RiseDesign([.. times.Select(t => 24 * t - 7000)]),
            [.. values.Select(v => 900 - 0.02 * v)]
        );

        other.Rise.ShouldBe(-0.02 * plain.Rise, 1e-9);
        other.Correlation.ShouldBe(plain.Correlation, 1e-7);
        other.Scatter.ShouldBe(0.02 * plain.Scatter, 1e-9);
        other.TwoSidedChance.ShouldBe(plain.TwoSidedChance, 1e-7);
        other.Quantile(0.05).ShouldBe(-0.02 * plain.Quantile(0.95), 1e-7);
        var large = Rise(new RiseDesign(times), [.. values.Select(v => 5e4 * v)]);
        large.Quantile(0.95).ShouldBe(5e4 * plain.Quantile(0.95), 5e-3);
    }

    /// <summary>The interval leaves 0 out exactly where chance alone explains the trend too seldom.</summary>
    [Theory]
    [InlineData(0.8)]
    [InlineData(0.95)]
    [InlineData(0.995)]
    public void The_interval_and_the_probability_never_contradict_each_other(double confidence)
    {
        var random = new Random(71);
        var found = 0;
        for (var run = 0; run < 150; run++)
        {
            var times = run % 2 == 0 ? Even : Uneven;
            var values = Drawn(times, 4 * random.NextDouble(), 0.4 * (run % 3), run);
            var trend = TrendAssessment.Of(times, values, default, new TrendOptions(confidence: confidence));
            var excludes = trend.SlopeInterval.Lower > 0 || trend.SlopeInterval.Upper < 0;

            excludes.ShouldBe(trend.PValue < 1 - confidence);
            (trend.Verdict is TrendVerdict.Rising or TrendVerdict.Falling).ShouldBe(excludes);
            found += excludes ? 1 : 0;
        }

        found.ShouldBeInRange(10, 140);
    }

    /// <summary>The weighted fits, each by matrices.</summary>
    private sealed record Dense(IReadOnlyList<Dense.Cell> Cells, int Freedom)
    {
        private static readonly double[] Correlations = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95];

        /// <summary>Straight; slow first and fast last by a factor of e³ and e⁸; fast first and slow last by a factor of e⁴.</summary>
        private static readonly (Func<double, double> At, double Weight)[] Courses =
        [
            (u => u, 0.8),
            (u => (Math.Exp(3 * u) - 1) / (Math.Exp(3) - 1), 0.08),
            (u => (Math.Exp(8 * u) - 1) / (Math.Exp(8) - 1), 0.08),
            (u => (1 - Math.Exp(-4 * u)) / (1 - Math.Exp(-4)), 0.04),
        ];

        public double Rise => Cells.Sum(cell => cell.Weight * cell.Rise);

        public double Correlation => Cells.Sum(cell => cell.Weight * cell.Correlation);

        public double Scatter => Math.Sqrt(Cells.Sum(cell => cell.Weight * cell.Scale2));

        public double Variance => Cells.Sum(cell => cell.Weight * (cell.Variance + Math.Pow(cell.Rise - Rise, 2)));

        public double ChanceBelow(double rise) =>
            Cells.Sum(cell => cell.Weight * StudentT.CDF(0, 1, Freedom, (rise - cell.Rise) / Math.Sqrt(cell.Variance)));

        public static Dense Of(double[] times, double[] values, double[][] season, bool isSeasonFound)
        {
            var n = times.Length;
            var intervals = times.Zip(times.Skip(1)).Count(pair => pair.Second > pair.First);
            var interval = (times[^1] - times[0]) / intervals;
            var freedom = n - 2 - (isSeasonFound ? season.Length : 0);
            var cells = new List<Cell>();
            foreach (var correlation in Correlations)
            {
                var prior = correlation > 0 ? 1 / Math.Sqrt(1.02 - correlation) : 27;

                // A reading follows the one before it unless both were taken at one time.
                double Follows(int i) =>
                    times[i] > times[i - 1] && correlation > 0
                        ? Math.Pow(correlation, (times[i] - times[i - 1]) / interval)
                        : 0;
                var covariance = Matrix<double>.Build.Dense(
                    n,
                    n,
                    (i, j) =>
                        Enumerable
                            .Range(Math.Min(i, j) + 1, Math.Abs(i - j))
                            .Aggregate(1.0, (product, k) => product * Follows(k))
                );
                foreach (var (course, weight) in Courses)
                {
                    Func<int, double>[] parts = [_ => 1, i => course((times[i] - times[0]) / (times[^1] - times[0]))];
                    if (season.Length == 0 || isSeasonFound)
                    {
                        var free = parts.Concat(season.Select(column => (Func<int, double>)(i => column[i]))).ToArray();
                        cells.Add(Fit(covariance, free, values, freedom, prior * weight, correlation));
                        continue;
                    }

                    // None in seven of ten series; in the others one whose two parts each have six times the variance of a reading.
                    var withSeason = season.Aggregate(
                        covariance,
                        (sum, column) =>
                        {
                            var part = Vector<double>.Build.DenseOfArray(column);
                            return sum + 6 * part.OuterProduct(part);
                        }
                    );
                    cells.Add(Fit(covariance, parts, values, freedom, 0.7 * prior * weight, correlation));
                    cells.Add(Fit(withSeason, parts, values, freedom, 0.3 * prior * weight, correlation));
                }
            }

            // Cells of less than a thousandth of the weight of the best are left out.
            var best = cells.Max(cell => cell.Weight);
            cells.RemoveAll(cell => cell.Weight < best + Math.Log(1e-3));
            var total = cells.Sum(cell => Math.Exp(cell.Weight - best));
            return new Dense(
                cells.ConvertAll(cell => cell with { Weight = Math.Exp(cell.Weight - best) / total }),
                freedom
            );
        }

        private static Cell Fit(
            Matrix<double> covariance,
            Func<int, double>[] parts,
            double[] values,
            int freedom,
            double prior,
            double correlation
        )
        {
            var design = Matrix<double>.Build.Dense(values.Length, parts.Length, (i, j) => parts[j](i));
            var y = Vector<double>.Build.DenseOfArray(values) - values.Average();
            var inverse = covariance.Inverse();
            var information = design.Transpose() * inverse * design;
            var coefficients = information.Inverse() * (design.Transpose() * inverse * y);
            var residuals = y - design * coefficients;
            var squares = residuals * (inverse * residuals);
            var weight =
                Math.Log(prior)
                - 0.5
                    * (
                        Math.Log(covariance.Determinant())
                        + Math.Log(information.Determinant())
                        + freedom * Math.Log(squares)
                    );
            var scale2 = squares / freedom;
            return new Cell(weight, coefficients[1], scale2 * information.Inverse()[1, 1], correlation, scale2);
        }

        public sealed record Cell(double Weight, double Rise, double Variance, double Correlation, double Scale2);
    }
}
