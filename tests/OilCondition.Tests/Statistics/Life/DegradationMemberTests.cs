using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>Each movement of the family against dense matrices, and what a fleet and a test method add to it against conjugate formulas.</summary>
public class DegradationMemberTests
{
    private static readonly double[] Ahead = [0, 0.05, 0.4, 1, 3];

    public static TheoryData<int, bool> Spacings()
    {
        var data = new TheoryData<int, bool>();
        foreach (var count in new[] { 3, 4, 7, 13, 60 })
        {
            data.Add(count, true);
            data.Add(count, false);
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(Spacings))]
    public void Level_drift_scatter_and_where_it_leads_are_those_of_generalised_least_squares(int count, bool even)
    {
        foreach (var (movement, clock, values) in Readings(count, even))
        {
            var dense = new DenseMember(movement, clock, values);
            var member = DegradationMember.Of(movement, clock, values, 0);

            member.DegreesOfFreedom.ShouldBe(dense.DegreesOfFreedom);
            member.Drift.ShouldBe(dense.Drift, 1e-7 * (1 + Math.Abs(dense.Drift)), $"drift of {movement}");
            member.Scale2.ShouldBe(dense.Scale2, 1e-8 * dense.Scale2, $"scatter of {movement}");
            foreach (var x in Ahead)
            {
                var (mean, variance) = dense.StateAfter(x);
                (member.Level + member.Drift * x).ShouldBe(mean, 1e-7 * (1 + Math.Abs(mean)), $"{movement} after {x}");
                VarianceAfter(member, x).ShouldBe(variance, 1e-7 * (1 + variance), $"{movement} after {x}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Spacings))]
    public void The_likelihood_is_that_of_the_matrices_for_every_movement(int count, bool even)
    {
        // No constant is left out: every movement is weighed against every other.
        foreach (var (movement, clock, values) in Readings(count, even))
        {
            var dense = new DenseMember(movement, clock, values);
            DegradationMember
                .Of(movement, clock, values, 0)
                .LogLikelihood.ShouldBe(dense.LogLikelihood, 1e-7 * count, $"{movement}");
        }
    }

    [Fact]
    public void A_walk_of_next_to_nothing_is_no_walk()
    {
        foreach (var (movement, clock, values) in Readings(9, even: false).Where(one => one.Movement.Ratio == 0))
        {
            var read = DegradationMember.Of(movement, clock, values, 0);
            var walk = DegradationMember.Of(movement with { Ratio = 1e-12 }, clock, values, 0);

            walk.Level.ShouldBe(read.Level, 1e-9);
            walk.Drift.ShouldBe(read.Drift, 1e-9);
            walk.LogLikelihood.ShouldBe(read.LogLikelihood, 1e-9);
            walk.Scale2.ShouldBe(read.Scale2, 1e-9);
            (walk.V0, walk.C1, walk.C2).ShouldBe((read.V0, read.C1, read.C2), 1e-9);
        }
    }

    [Fact]
    public void Exact_readings_have_the_least_scatter_that_is_named()
    {
        double[] clock = [0, 0.25, 0.5, 0.75, 1];
        var line = new Movement(MovementKind.Moving, Course.Straight, 0);
        DegradationMember.Of(line, clock, [1, 2, 3, 4, 5], 3e-6).Scale2.ShouldBe(1e-6, 1e-12);
        DegradationMember.Of(line, clock, [1, 2, 3, 4, 6], 3e-6).Scale2.ShouldBeGreaterThan(0.01);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(8)]
    public void Scatter_that_is_known_from_elsewhere_is_integrated_with_that_of_the_readings(int count)
    {
        // Second route: σ^−(n−1) exp(−S/(2 σ²)) times the scaled inverse chi-square density of the prior, integrated numerically over ln σ². Priors
        // of few and of many degrees of freedom are weighed against one another.
        foreach (var (movement, clock, values) in Readings(count, even: false))
        {
            var dense = new DenseMember(movement, clock, values);
            var member = DegradationMember.Of(movement, clock, values, 0);
            double Integral(double scale2, double freedom) =>
                GaussLegendreRule.Integrate(
                    log =>
                    {
                        var variance = Math.Exp(log);
                        var density = InverseGamma.PDFLn(freedom / 2, freedom * scale2 / 2, variance);
                        return variance * Math.Exp(density - 0.5 * (count - 1) * log - dense.Squares / (2 * variance));
                    },
                    Math.Log(dense.Scale2) - 14,
                    Math.Log(dense.Scale2) + 14,
                    1000
                );

            var few = member.WithScatter(0.7 * dense.Scale2, 2);
            var many = member.WithScatter(2 * dense.Scale2, 30);
            (many.LogLikelihood - few.LogLikelihood).ShouldBe(
                Math.Log(Integral(2 * dense.Scale2, 30) / Integral(0.7 * dense.Scale2, 2)),
                1e-6,
                $"{movement}"
            );

            many.DegreesOfFreedom.ShouldBe(dense.DegreesOfFreedom + 30);
            many.Scale2.ShouldBe(
                (dense.Squares + 60 * dense.Scale2) / (dense.DegreesOfFreedom + 30),
                1e-8 * dense.Scale2
            );
            (many.Level, many.Drift, many.V0).ShouldBe((member.Level, member.Drift, member.V0), 0);
        }
    }

    [Theory]
    [InlineData(1.3, 0.2)]
    [InlineData(-2, 5)]
    [InlineData(0.4, 1e-6)]
    public void A_drift_that_is_known_from_elsewhere_adds_its_precision(double priorDrift, double spread)
    {
        // Second route: X′V⁻¹X/s² and the prior's 1/τ² as matrices; the surprise as a normal density of the drift that was found.
        foreach (
            var (movement, clock, values) in Readings(8, even: false)
                .Where(one => one.Movement.Kind == MovementKind.Moving)
        )
        {
            var dense = new DenseMember(movement, clock, values);
            var own = DegradationMember.Of(movement, clock, values, 0);
            var member = own.WithDrift(priorDrift, spread);
            var prior = Matrix<double>.Build.DenseOfDiagonalArray([0, dense.Scale2 / (spread * spread)]);
            var information = dense.Information + prior;
            var parts = information.Solve(
                dense.Information * dense.Parts + prior * Vector<double>.Build.Dense([0, priorDrift])
            );

            member.Drift.ShouldBe(parts[1], 1e-7, $"{movement}");
            foreach (var x in Ahead)
            {
                var (mean, variance) = dense.StateAfter(x, parts, information);
                (member.Level + member.Drift * x).ShouldBe(mean, 1e-6 * (1 + Math.Abs(mean)), $"{movement} after {x}");
                VarianceAfter(member, x).ShouldBe(variance, 1e-6 * (1 + variance), $"{movement} after {x}");
            }

            // In place of what a free drift pays, (n + 1)^(−1/2), the chance of the drift over its peak.
            var doubt2 = dense.Scale2 * dense.Information.Inverse()[1, 1];
            var surprise =
                Normal.PDFLn(priorDrift, Math.Sqrt(doubt2 + spread * spread), dense.Drift)
                - Normal.PDFLn(0, Math.Sqrt(doubt2), 0);
            (member.LogLikelihood - own.LogLikelihood).ShouldBe(
                0.5 * Math.Log(9) + surprise,
                1e-6 * (1 + Math.Abs(surprise)),
                $"{movement}"
            );
        }
    }

    [Fact]
    public void Scatter_is_not_below_the_error_of_the_method()
    {
        double[] clock = [0, 0.3, 0.5, 0.8, 1];
        double[] values = [1, 2.1, 2.9, 4.2, 5];
        var walked = new Movement(MovementKind.Moving, Course.Straight, 3);
        DegradationMember Of(Movement movement) => DegradationMember.Of(movement, clock, values, 0);

        var member = Of(walked);
        member.AtLeast(9).Scale2.ShouldBe(36, 1e-12); // a quarter of it is 9
        member.AtLeast(0.01 * member.Scale2).Scale2.ShouldBe(member.Scale2);
        Of(walked with { Ratio = 0 }).AtLeast(9).Scale2.ShouldBe(9);
        Of(walked with { Kind = MovementKind.DriftWalks }).AtLeast(9).Scale2.ShouldBe(9);

        // A walk read without error has no error of reading.
        var pure = Of(walked with { Ratio = Movement.PureWalk });
        pure.AtLeast(9).Scale2.ShouldBe(pure.Scale2);

        // Being closer than that makes an explanation no likelier: S^(−(n − 1)/2) with the larger scatter.
        member.AtLeast(9).LogLikelihood.ShouldBe(member.LogLikelihood - 0.5 * 4 * Math.Log(36 / member.Scale2), 1e-9);
    }

    private static double VarianceAfter(in DegradationMember member, double x) =>
        member.V0 + x * (member.C1 + x * (member.C2 + x * member.C3));

    /// <summary>Every movement of the family with scattered readings.</summary>
    private static IEnumerable<(Movement Movement, double[] Clock, double[] Values)> Readings(int count, bool even)
    {
        var random = new Random(count);
        double[] gaps = [.. Enumerable.Range(0, count - 1).Select(_ => even ? 1 : 0.2 + random.NextDouble())];
        double[] positions = [.. Enumerable.Range(0, count).Select(i => gaps.Take(i).Sum() / gaps.Sum())];
        positions[^1] = 1;
        double[] values = [.. positions.Select(u => 5 + 2 * u + 0.5 * DecayNoiseSource.Normal(random))];
        foreach (var movement in DegradationPrior.Family)
        {
            yield return (movement, Array.ConvertAll(positions, movement.Course.At), values);
        }
    }
}
