using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>The chance of having been beyond and back, held against an integral over the scatter by MathNet.Numerics.</summary>
public class PassageRuleTests
{
    [Theory]
    [InlineData(1, 4e-4)]
    [InlineData(2, 1e-5)]
    [InlineData(3, 1e-6)]
    [InlineData(5, 1e-6)]
    [InlineData(6, 1e-6)]
    [InlineData(10, 1e-6)]
    [InlineData(11, 1e-6)]
    [InlineData(60, 1e-6)]
    [InlineData(300, 1e-6)]
    public void A_walk_returns_with_the_mean_chance_over_its_scatter(int degreesOfFreedom, double error)
    {
        const double Walk = 0.5;
        const double DriftVariance = 0.1;
        var rule = PassageRule.For(degreesOfFreedom);
        foreach (var distance in new[] { 0.02, 0.5, 2 })
        {
            foreach (var drift in new[] { -0.7, -0.05, 0.001, 0.05, 0.4, 1.5, 6 })
            {
                foreach (var clock in new[] { 0.03, 0.4, 1, 4 })
                {
                    var returned = LaneMath.At(
                        rule.Returned(
                            rule.Facing(
                                LaneMath.Of(distance),
                                LaneMath.Of(drift),
                                LaneMath.Of(Walk),
                                LaneMath.Of(DriftVariance)
                            ),
                            LaneMath.Of(clock)
                        ),
                        0
                    );
                    returned.ShouldBe(
                        Returned(degreesOfFreedom, distance, drift, clock, Walk, DriftVariance),
                        error,
                        $"from {distance} at {drift} after {clock}"
                    );
                }
            }
        }
    }

    /// <summary>
    /// With σ² known, ν s²/σ² = y, and a drift that is normal about d with variance D σ², the second term of the inverse Gaussian distribution function (Chhikara and
    /// Folks 1989, from memory) is exp(2 a (d + a D/q)/(q σ²)) Φ(−(a + d x + 2 a D x/q)/(σ sqrt(q x + D x²))); y has the chi-square distribution.
    /// </summary>
    private static double Returned(
        int degreesOfFreedom,
        double distance,
        double drift,
        double clock,
        double walk,
        double driftVariance
    )
    {
        var turn = distance * driftVariance / walk;
        var power = 2 * distance * (drift + turn) / (walk * degreesOfFreedom);
        var beta = distance + (drift + 2 * turn) * clock;
        var unit = Math.Sqrt(degreesOfFreedom * clock * (walk + driftVariance * clock));

        // Over the root of y, so that the density at one degree of freedom has no pole.
        double At(double root) =>
            2
            * root
            * ChiSquared.PDF(degreesOfFreedom, root * root)
            * Math.Exp(power * root * root + LogTail(beta * root / unit));
        var (middle, wide) = (Math.Sqrt(degreesOfFreedom), 9);
        return GaussKronrodRule.Integrate(
            At,
            Math.Max(1e-12, middle - wide),
            middle + wide,
            out _,
            out _,
            1e-11,
            20,
            61
        );
    }

    /// <summary>ln Φ(−z); far out by Abramowitz and Stegun 1964, 26.2.12.</summary>
    private static double LogTail(double z) =>
        z < 20
            ? Math.Log(0.5 * SpecialFunctions.Erfc(z / Math.Sqrt(2)))
            : -0.5 * z * z - Math.Log(z * Math.Sqrt(2 * Math.PI)) + Math.Log(1 - (1 - 3 / (z * z)) / (z * z));
}
