using MathNet.Numerics.Integration;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

public class FirstPassageTests
{
    [Theory]
    [InlineData(2, 1, 1)]
    [InlineData(1, 0.3, 0.5)]
    [InlineData(5, 2, 0.2)]
    [InlineData(1, -0.4, 1)]
    [InlineData(3, 0, 1)]
    public void The_distribution_function_is_the_integral_of_the_inverse_gaussian_density(
        double distance,
        double drift,
        double randomWalk
    )
    {
        // Density a / (w sqrt(2 π t³)) exp(−(a − d t)²/(2 w² t)): Chhikara and Folks 1989, recalled.
        double Density(double t) =>
            distance
            / (randomWalk * Math.Sqrt(2 * Math.PI * t * t * t))
            * Math.Exp(-Math.Pow(distance - drift * t, 2) / (2 * randomWalk * randomWalk * t));
        foreach (var t in new[] { 0.5, 2.0, 8.0 })
        {
            FirstPassage
                .ChanceBefore(distance, drift, randomWalk, t)
                .ShouldBe(GaussLegendreRule.Integrate(Density, 1e-9, t, 400), 1e-5);
        }
    }

    [Fact]
    public void Simulated_paths_cross_as_often()
    {
        // Third route: paths in small steps with the bridge between them, seed 11.
        var random = new Random(11);
        const int Paths = 20000;
        const double Step = 0.05;
        var crossed = 0;
        for (var path = 0; path < Paths; path++)
        {
            double x = 0;
            for (var i = 0; i < 40 && x < 1; i++)
            {
                var next = x + 0.5 * Step + 0.8 * Math.Sqrt(Step) * DecayNoiseSource.Normal(random);
                var touched = Math.Exp(-2 * (1 - x) * (1 - next) / (0.64 * Step));
                x = next >= 1 || random.NextDouble() < touched ? 1 : next;
            }

            crossed += x >= 1 ? 1 : 0;
        }

        FirstPassage.ChanceBefore(1, 0.5, 0.8, 2).ShouldBe((double)crossed / Paths, 0.014);
    }

    [Fact]
    public void Away_from_the_limit_the_chance_ever_is_exponential()
    {
        FirstPassage.ChanceEver(2, -0.5, 1).ShouldBe(Math.Exp(-2), 1e-12);
        FirstPassage.ChanceEver(2, 0.5, 1).ShouldBe(1);
        FirstPassage.ChanceBefore(2, -0.5, 1, 1e6).ShouldBe(Math.Exp(-2), 1e-9);
    }

    [Theory]
    [InlineData(1000, 10, 0.1, 100)]
    [InlineData(1, 1e6, 1e-3, 1e-6)]
    [InlineData(1e6, -1e6, 1, 1e6)]
    public void Extremes_stay_chances(double distance, double drift, double randomWalk, double time) =>
        FirstPassage.ChanceBefore(distance, drift, randomWalk, time).ShouldBeInRange(0, 1);
}
