using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>The family from line to random walk, by a second route: dense matrices for the likelihood, simulation for first passage.</summary>
public class DegradationTests
{
    private static readonly double[] Times = [0, 31, 58, 95, 121, 160, 171, 214, 260, 281];
    private static readonly double[] Values = [0.10, 0.13, 0.11, 0.16, 0.19, 0.18, 0.20, 0.21, 0.26, 0.25];

    [Fact]
    public void Weights_are_those_of_the_restricted_likelihood_with_dense_matrices()
    {
        // Harville 1974: −½ ln|V| − ½ ln|X'V⁻¹X| − ½ (n − 2) ln RSS of the differences of the readings; unevenly spaced times.
        var expected = Dense(Times, Values, DegradationPrior.Default).Select(one => one.Weight).ToArray();
        var fit = Degradation.Fit(Times, Values);

        for (var i = 0; i < expected.Length; i++)
        {
            fit.Weights[i].ShouldBe(expected[i], 1e-9);
        }

        fit.Weights.Sum().ShouldBe(1, 1e-12);
    }

    [Fact]
    public void Level_and_drift_are_those_of_generalised_least_squares()
    {
        var dense = Dense(Times, Values, DegradationPrior.Default);
        var fit = Degradation.Fit(Times, Values);

        fit.Drift.ShouldBe(dense.Sum(one => one.Weight * one.Drift), 1e-12);
        fit.Level.ShouldBe(dense.Sum(one => one.Weight * one.Level), 1e-10);
        var within = dense.Sum(one => one.Weight * one.Scale2 * one.Covariance[1, 1]);
        var among = dense.Sum(one => one.Weight * Math.Pow(one.Drift - fit.Drift, 2));
        fit.DriftStandardError.ShouldBe(Math.Sqrt(within + among), 1e-12);
    }

    [Theory]
    [InlineData(0.30, 0.012)]
    [InlineData(0.27, 0.012)]
    [InlineData(0.45, 0.012)]
    [InlineData(-0.22, 0.004)]
    [InlineData(-0.17, 0.004)]
    public void The_chance_is_that_of_simulated_paths(double limit, double error)
    {
        // Second route: member, scale, level and drift drawn from the dense posterior; first passage of each by the inverse Gaussian.
        var random = new Random(20260501);
        // A limit below 0 is one from which the mirrored readings move away.
        double[] values = [.. Values.Select(value => limit > 0 ? value : -value)];
        var dense = Dense(Times, values, DegradationPrior.Default);
        var law = Degradation.Fit(Times, values).Above(limit);
        double[] days = [20, 60, 150, 400, 1500];
        var sums = new double[days.Length];
        var kept = 0;
        const int Draws = 40000;
        while (kept < Draws)
        {
            var member = Pick(dense, random);
            var variance = member.Scale2 * 8 / ChiSquared(random, 8);
            var spread = Math.Sqrt(variance * member.Covariance[0, 0]);
            var z = DecayNoiseSource.Normal(random);
            var level = member.Level + spread * z;
            if (level >= limit)
            {
                continue;
            }

            kept++;
            var slope = member.Covariance[0, 0] > 0 ? member.Covariance[0, 1] / member.Covariance[0, 0] : 0;
            var left = Math.Max(0, member.Covariance[1, 1] - slope * member.Covariance[0, 1]);
            var drift =
                member.Drift
                + slope * (level - member.Level)
                + Math.Sqrt(variance * left) * DecayNoiseSource.Normal(random);
            for (var i = 0; i < days.Length; i++)
            {
                sums[i] +=
                    member.RandomWalk > 0
                        ? FirstPassage.ChanceBefore(
                            limit - level,
                            drift,
                            Math.Sqrt(variance * member.RandomWalk),
                            days[i]
                        )
                    : level + drift * days[i] > limit ? 1
                    : 0;
            }
        }

        for (var i = 0; i < days.Length; i++)
        {
            // The five nodes that carry the level, which count most close to the limit, and the error of the simulation.
            law.ChanceBefore(days[i]).ShouldBe(sums[i] / Draws, error, $"{days[i]} d");
        }
    }

    [Theory]
    [InlineData(6, 0.3, 1)]
    [InlineData(12, 1, 1)]
    [InlineData(60, 0.02, 1)]
    [InlineData(300, 0.3, 1)]
    [InlineData(12, 0.7, -2)]
    [InlineData(30, 0.4, -2)]
    [InlineData(60, 0.3, -2)]
    public void A_random_walk_has_the_inverse_gaussian_with_drift_and_scale_uncertain(
        int count,
        double randomWalk,
        int towards
    )
    {
        // Second route for the closed form: Student's doubt simulated over the plain inverse Gaussian. The last reading is the start.
        var random = new Random(count);
        var times = new double[count];
        var values = new double[count];
        for (var i = 1; i < count; i++)
        {
            times[i] = times[i - 1] + 0.2 + random.NextDouble();
            var step = times[i] - times[i - 1];
            values[i] =
                values[i - 1] + towards * step + randomWalk * Math.Sqrt(count * step) * DecayNoiseSource.Normal(random);
        }

        var (span, freedom) = (times[^1], count - 2);
        var drift = (values[^1] - values[0]) / span;
        double squares = 0;
        for (var i = 1; i < count; i++)
        {
            var step = times[i] - times[i - 1];
            squares += Math.Pow(values[i] - values[i - 1] - drift * step, 2) / step;
        }

        var distance = 0.6 * span;
        var law = Degradation.Fit(times, values, DegradationPrior.RandomWalk).Above(values[^1] + distance);
        double[] whens = [0.2 * span, 0.5 * span, span, 3 * span];
        var sums = new double[whens.Length];
        const int Draws = 40000;
        for (var draw = 0; draw < Draws; draw++)
        {
            var variance = squares / ChiSquared(random, freedom);
            var one = drift + Math.Sqrt(variance / span) * DecayNoiseSource.Normal(random);
            for (var i = 0; i < whens.Length; i++)
            {
                sums[i] += FirstPassage.ChanceBefore(distance, one, Math.Sqrt(variance), whens[i]);
            }
        }

        for (var i = 0; i < whens.Length; i++)
        {
            // Small chances scatter less in the simulation.
            var error = towards > 0 ? 0.008 : 0.001 + 0.02 * sums[i] / Draws;
            law.ChanceBefore(whens[i]).ShouldBe(sums[i] / Draws, error, $"at {whens[i]}");
        }
    }

    [Fact]
    public void A_fleet_adds_its_precision_to_the_drift_and_its_surprise_to_the_weights()
    {
        // Second route: normal prior and normal likelihood of the drift, member by member, from the dense matrices.
        var random = new Random(8);
        var prior = DegradationFleet.Learn([
            .. Enumerable
                .Range(0, 6)
                .Select(_ =>
                {
                    var drift = 0.0008 + 0.0001 * DecayNoiseSource.Normal(random);
                    return Degradation.Fit(
                        Times,
                        [.. Times.Select(t => drift * t + 0.01 * DecayNoiseSource.Normal(random))]
                    );
                }),
        ]);
        prior.KnowsDrift.ShouldBeTrue();
        var spread2 = prior.DriftStandardDeviation * prior.DriftStandardDeviation;
        var members = Dense(Times, Values, prior)
            .Select(one =>
            {
                var own = one.Scale2 * one.Covariance[1, 1];
                var drift = (one.Drift / own + prior.Drift / spread2) / (1 / own + 1 / spread2);
                var surprise = Normal.PDF(prior.Drift, Math.Sqrt(own + spread2), one.Drift);
                return (Weight: one.Weight * surprise, Drift: drift, Variance: 1 / (1 / own + 1 / spread2));
            })
            .ToList();
        var sum = members.Sum(one => one.Weight);
        var mean = members.Sum(one => one.Weight * one.Drift) / sum;
        var variance = members.Sum(one => one.Weight * (one.Variance + Math.Pow(one.Drift - mean, 2))) / sum;
        var fit = Degradation.Fit(Times, Values, prior);

        fit.Drift.ShouldBe(mean, 1e-10);
        fit.DriftStandardError.ShouldBe(Math.Sqrt(variance), 1e-10);
        fit.Weights[^1].ShouldBe(members[^1].Weight / sum, 1e-8);
        fit.Drift.ShouldBeGreaterThan(Degradation.Fit(Times, Values).Drift);
    }

    [Fact]
    public void The_default_prior_is_a_distribution_that_leans_to_the_random_walk()
    {
        DegradationPrior.Default.Weights.Count.ShouldBe(DegradationPrior.Ratios.Count);
        DegradationPrior.Default.Weights.Sum().ShouldBe(1, 1e-12);
        DegradationPrior.Default.Weights[^1].ShouldBeGreaterThan(0.5);
        DegradationPrior.Default.Weights[0].ShouldBeGreaterThan(0);
    }

    [Fact]
    public void A_clear_line_with_many_readings_takes_weight_from_the_random_walk()
    {
        var random = new Random(3);
        double[] times = [.. Enumerable.Range(0, 48).Select(i => (double)i)];
        var line = Degradation.Fit(times, [.. times.Select(t => t + 4 * DecayNoiseSource.Normal(random))]);
        line.Weights[^1].ShouldBeLessThan(0.01);

        double state = 0;
        var walk = Degradation.Fit(times, [.. times.Select(_ => state += 1 + 3 * DecayNoiseSource.Normal(random))]);
        (walk.Weights[^1] + walk.Weights[^2]).ShouldBeGreaterThan(0.8);
    }

    [Fact]
    public void Readings_at_one_time_count_as_their_mean()
    {
        var twice = Degradation.Fit([0, 1, 1, 2, 3, 4], [1, 2, 3, 3.1, 4, 5.2]);
        var mean = Degradation.Fit([0, 1, 2, 3, 4], [1, 2.5, 3.1, 4, 5.2]);

        twice.Count.ShouldBe(5);
        twice.Above(9).ChanceBefore(4).ShouldBe(mean.Above(9).ChanceBefore(4), 1e-12);
    }

    [Fact]
    public void Too_few_readings_and_wrong_input_are_named()
    {
        Degradation.Fit([0, 1, 2], [1, 2, 3]).IsDetermined.ShouldBeFalse();
        Degradation.Fit([], []).IsDetermined.ShouldBeFalse();
        Degradation.Fit([5, 5, 5, 5, 5], [1, 2, 3, 4, 5]).IsDetermined.ShouldBeFalse();
        Should.Throw<InvalidOperationException>(() => Degradation.Fit([0, 1], [1, 2]).Above(3));
        Should.Throw<ArgumentException>(() => Degradation.Fit([0, 2, 1, 3], [1, 2, 3, 4])).ParamName.ShouldBe("times");
        Should.Throw<ArgumentOutOfRangeException>(() => Degradation.Fit([0, 1, 2, 3], [1, 2, double.NaN, 4]));
        Should.Throw<ArgumentOutOfRangeException>(() => Degradation.Fit([0, 1, 2, 3], [1, 2, 1e200, 4]));
        Should.Throw<ArgumentOutOfRangeException>(() => Degradation.Fit(Times, Values).Above(double.NaN));
        Should.Throw<ArgumentOutOfRangeException>(() => Degradation.Fit(Times, Values).Above(1).ChanceBefore(-1));
    }

    [Fact]
    public void Readings_without_any_scatter_cross_when_their_line_does()
    {
        var law = Degradation.Fit([0, 1, 2, 3, 4], [0, 1, 2, 3, 4]).Above(10);
        law.ChanceBefore(5.99).ShouldBeLessThan(1e-3);
        law.ChanceBefore(6.01).ShouldBeGreaterThan(1 - 1e-3);

        var flat = Degradation.Fit([0, 1, 2, 3, 4], [7, 7, 7, 7, 7]).Above(10);
        flat.ChanceBefore(1e4).ShouldBeLessThan(1e-3);
    }

    private static Member Pick(Member[] members, Random random)
    {
        var left = random.NextDouble();
        foreach (var member in members)
        {
            left -= member.Weight;
            if (left <= 0)
            {
                return member;
            }
        }

        return members[^1];
    }

    private static double ChiSquared(Random random, int freedom) =>
        freedom > 50
            ? 2 * Gamma.InvCDF(freedom / 2.0, 1, random.NextDouble() * (1 - 1e-12) + 1e-13)
            : Enumerable.Range(0, freedom).Sum(_ => Math.Pow(DecayNoiseSource.Normal(random), 2));

    /// <summary>
    /// The differences of the readings, which are free of the start: covariance q Δt on the diagonal, and 2 r there and −r beside it from the
    /// errors of neighbouring readings. The state at the last reading is that reading less its error as the differences foretell it.
    /// </summary>
    private static Member[] Dense(double[] times, double[] values, DegradationPrior prior)
    {
        var n = times.Length - 1;
        var interval = (times[^1] - times[0]) / n;
        var x = Vector<double>.Build.Dense(n, i => times[i + 1] - times[i]);
        var y = Vector<double>.Build.Dense(n, i => values[i + 1] - values[i]);
        var members = new List<(Member Member, double Log)>();
        for (var k = 0; k < prior.Weights.Count; k++)
        {
            var pure = DegradationPrior.Ratios[k] == DegradationPrior.PureRandomWalk;
            var share = pure ? 1 : DegradationPrior.Ratios[k] / (1 + DegradationPrior.Ratios[k]);
            var (randomWalk, noise) = (share / interval, 1 - share);
            var v = Matrix<double>.Build.Dense(
                n,
                n,
                (i, j) =>
                    i == j ? randomWalk * x[i] + 2 * noise
                    : Math.Abs(i - j) == 1 ? -noise
                    : 0
            );
            var inverse = v.Inverse();
            var information = x * (inverse * x);
            var drift = x * (inverse * y) / information;
            var residual = y - drift * x;
            var squares = residual * (inverse * residual);
            var log =
                -0.5 * (Math.Log(v.Determinant()) + Math.Log(information) + (n - 1) * Math.Log(squares))
                + Math.Log(prior.Weights[k]);
            var level = values[^1] - noise * (inverse * residual)[n - 1];
            var reach = noise * (inverse * x)[n - 1];
            var known = noise - noise * noise * inverse[n - 1, n - 1];
            var covariance = Matrix<double>.Build.DenseOfArray(
                new[,]
                {
                    { known + reach * reach / information, reach / information },
                    { reach / information, 1 / information },
                }
            );
            members.Add((new Member(0, randomWalk, level, drift, squares / (n - 1), covariance), log));
        }

        var best = members.Max(one => one.Log);
        var sum = members.Sum(one => Math.Exp(one.Log - best));
        return [.. members.Select(one => one.Member with { Weight = Math.Exp(one.Log - best) / sum })];
    }

    private sealed record Member(
        double Weight,
        double RandomWalk,
        double Level,
        double Drift,
        double Scale2,
        Matrix<double> Covariance
    );
}
