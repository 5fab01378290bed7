using MathNet.Numerics.Distributions;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>One movement on its way to a limit: against the inverse Gaussian distribution where all is known, against simulation where it is not.</summary>
public class PassagePathTests
{
    private const double Span = 10;

    [Theory]
    [InlineData(0.6, 1, 0.3)]
    [InlineData(0.6, 0.2, 1)]
    [InlineData(1.5, 0, 0.8)]
    [InlineData(0.8, -0.5, 0.9)]
    [InlineData(0.3, -2, 0.6)]
    public void A_walk_with_drift_and_scatter_known_has_the_inverse_gaussian(double distance, double drift, double walk)
    {
        // Chhikara and Folks 1989, chapter 2 (from memory); a drift known to 1e-6 and 5000 degrees of freedom are as good as known.
        foreach (var course in new[] { Course.Straight, Course.Exponential(2), Course.Runaway(4) })
        {
            var member = Walk(12, course, new Random(4)).Member; // 10 degrees of freedom of its own
            var known = member
                .WithScatter((5000 * walk * walk / 11 - 10 * member.Scale2) / 4990, 4990)
                .WithDrift(drift, 1e-6);
            (known.Scale2 * known.FreeWalk).ShouldBe(walk * walk, 1e-6);
            var path = new PassagePath(known, 1, known.Level + distance, 1, Span);
            foreach (var time in new[] { 1.0, 4, 10, 25 })
            {
                // The walk runs on the clock of its course.
                var clock = course.At(1 + time / Span) - 1;
                path.At(time, 0).ShouldBe(FirstPassage.ChanceBefore(distance, drift, walk, clock), 1e-3, $"{course}");
            }
        }
    }

    [Theory]
    [InlineData(5, 0.3, 1)]
    [InlineData(6, 0.3, 1)]
    [InlineData(12, 1, 1)]
    [InlineData(60, 0.02, 1)]
    [InlineData(300, 0.3, 1)]
    [InlineData(12, 0.7, -2)]
    [InlineData(30, 0.4, -2)]
    [InlineData(60, 0.3, -2)]
    public void A_walk_has_the_inverse_gaussian_with_drift_and_scatter_uncertain(int count, double walk, double towards)
    {
        // Second route for the closed form: drift and scatter drawn from their posterior, the plain inverse Gaussian for each.
        var random = new Random(count);
        var (member, clock, values) = Walk(count, Course.Straight, random, walk, towards);
        double squares = 0;
        var drift = values[^1] - values[0];
        for (var i = 1; i < count; i++)
        {
            var step = clock[i] - clock[i - 1];
            squares += Math.Pow(values[i] - values[i - 1] - drift * step, 2) / step;
        }

        const double Distance = 0.6;
        var path = new PassagePath(member, 1, values[^1] + Distance, 1, Span);
        var mirrored = new PassagePath(
            DegradationMember.Of(
                new Movement(MovementKind.Moving, Course.Straight, Movement.PureWalk),
                clock,
                Array.ConvertAll(values, y => -y),
                0
            ),
            1,
            -values[^1] - Distance,
            -1,
            Span
        );
        double[] whens = [0.2, 0.5, 1, 3];
        var sums = new double[whens.Length];
        const int Draws = 40000;
        for (var draw = 0; draw < Draws; draw++)
        {
            var variance = squares / ChiSquared(random, count - 2);
            var one = drift + Math.Sqrt(variance) * DecayNoiseSource.Normal(random);
            for (var i = 0; i < whens.Length; i++)
            {
                sums[i] += FirstPassage.ChanceBefore(Distance, one, Math.Sqrt(variance), whens[i]);
            }
        }

        for (var i = 0; i < whens.Length; i++)
        {
            // Small chances scatter less in the simulation.
            var error = towards > 0 ? 0.008 : 0.001 + 0.02 * sums[i] / Draws;
            path.At(whens[i] * Span, 0).ShouldBe(sums[i] / Draws, error, $"at {whens[i]}");
            mirrored.At(whens[i] * Span, 0).ShouldBe(path.At(whens[i] * Span, 0), 1e-12);
        }
    }

    [Fact]
    public void Readings_with_error_are_beyond_with_the_chance_of_students_distribution()
    {
        // By hand: the line 1, 2, 2, 3 on the clock 0, 1/3, 2/3, 1 has level 2.9 at the end, drift 1.8, s² = 0.1 with 2 degrees of freedom;
        // one span on it lies at 4.7 with variance s² (1/4 + 1.5²/(5/9)) = 0.1 · 4.3.
        double[] clock = [0, 1.0 / 3, 2.0 / 3, 1];
        var member = DegradationMember.Of(
            new Movement(MovementKind.Moving, Course.Straight, 0),
            clock,
            [1, 2, 2, 3],
            0
        );
        var path = new PassagePath(member, 1, 5, 1, Span);
        path.At(Span, 0).ShouldBe(StudentT.CDF(0, 1, 2, -0.3 / Math.Sqrt(0.43)), 1e-9);

        // A season that brings the limit 0.2 nearer, and a limit on the other side.
        path.At(Span, 0.2).ShouldBe(StudentT.CDF(0, 1, 2, -0.1 / Math.Sqrt(0.43)), 1e-9);
        new PassagePath(member, 1, 5, -1, Span)
            .At(Span, 0)
            .ShouldBe(StudentT.CDF(0, 1, 2, 0.3 / Math.Sqrt(0.43)), 1e-9);

        // At the last reading: 2.9 with variance s² (1/4 + 0.25/(5/9)) = 0.1 · 0.7.
        path.AtStart(0).ShouldBe(StudentT.CDF(0, 1, 2, -2.1 / Math.Sqrt(0.07)), 1e-9);
    }

    [Fact]
    public void A_walk_read_without_error_is_where_it_was_read()
    {
        var (member, _, values) = Walk(9, Course.Straight, new Random(1));
        new PassagePath(member, 1, values[^1] + 1e-9, 1, Span).AtStart(0).ShouldBe(0);
        new PassagePath(member, 1, values[^1] - 1e-9, 1, Span).AtStart(0).ShouldBe(1);
        new PassagePath(member, 1, values[^1] + 0.1, 1, Span).AtStart(0.2).ShouldBe(1);
        new PassagePath(member, 1, values[^1] + 0.1, 1, Span).At(0, 0).ShouldBe(0);
    }

    [Fact]
    public void A_course_without_end_is_over_any_limit()
    {
        double[] clock = [.. new[] { 0, 0.25, 0.5, 0.75, 1 }.Select(Course.Runaway(1.25).At)];
        var member = DegradationMember.Of(
            new Movement(MovementKind.Moving, Course.Runaway(1.25), 0),
            clock,
            [.. clock.Select((c, i) => c + 0.001 * (i % 2))],
            0
        );
        var path = new PassagePath(member, 1, 100, 1, Span);

        path.At(0.2499 * Span, 0).ShouldBeGreaterThan(0.99);
        path.At(0.3 * Span, 0).ShouldBeGreaterThan(0.99);
        path.At(0.1 * Span, 0).ShouldBeLessThan(0.01); // clock 1.1/(1.25 − 1.1) · 0.25 = 1.83
    }

    private static (DegradationMember Member, double[] Clock, double[] Values) Walk(
        int count,
        Course course,
        Random random,
        double walk = 1,
        double drift = 1
    )
    {
        double[] gaps = [.. Enumerable.Range(0, count - 1).Select(_ => 0.2 + random.NextDouble())];
        double[] clock = [.. Enumerable.Range(0, count).Select(i => course.At(gaps.Take(i).Sum() / gaps.Sum()))];
        var values = new double[count];
        for (var i = 1; i < count; i++)
        {
            var step = clock[i] - clock[i - 1];
            values[i] = values[i - 1] + drift * step + walk * Math.Sqrt(step) * DecayNoiseSource.Normal(random);
        }

        return (
            DegradationMember.Of(new Movement(MovementKind.Moving, course, Movement.PureWalk), clock, values, 0),
            clock,
            values
        );
    }

    private static double ChiSquared(Random random, int freedom) =>
        freedom > 50
            ? 2 * Gamma.InvCDF(freedom / 2.0, 1, random.NextDouble() * (1 - 1e-12) + 1e-13)
            : Enumerable.Range(0, freedom).Sum(_ => Math.Pow(DecayNoiseSource.Normal(random), 2));
}
