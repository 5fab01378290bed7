using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics.Decay;

/// <summary>What is found from the sums at a few rates, against the function itself.</summary>
public class DecayNodesTests
{
    private const int Rates = DecayNodes.Rates;

    /// <summary>A drop 1 − exp(−x) of any x, over the widest interval that so many points are used for.</summary>
    [Theory]
    [InlineData(0.4, 8, 4.5e-8)]
    [InlineData(0.9, 12, 7.5e-8)]
    public void A_drop_between_the_points_is_as_near_as_is_said(double half, int expected, double bound)
    {
        var nodes = DecayNodes.Enough(half);
        nodes.ShouldBe(expected);
        DecayNodes.Enough(half + 1e-9).ShouldNotBe(expected);
        var weights = DecayNodes.Weights(nodes);
        var worst = 0.0;
        for (var x = 1e-5; x < 700; x *= 1.05)
        {
            double Drop(double angle) => -Math.Exp(-x * Math.Exp(-half * Math.Cos(angle))) + 1;
            for (var rate = 0; rate < Rates; rate++)
            {
                var found = Enumerable
                    .Range(0, nodes)
                    .Sum(node => weights[node * Rates + rate] * Drop(Math.PI * node / (nodes - 1)));
                worst = Math.Max(worst, Math.Abs(found - Drop(Math.PI * rate / (Rates - 1))));
            }
        }

        worst.ShouldBeInRange(bound / 2, bound);
    }

    /// <summary>A polynomial of a degree below the number of points is its own.</summary>
    [Theory]
    [InlineData(8)]
    [InlineData(12)]
    public void A_polynomial_is_found_exactly(int nodes)
    {
        var weights = DecayNodes.Weights(nodes);
        for (var power = 0; power < nodes; power++)
        {
            for (var rate = 0; rate < Rates; rate++)
            {
                var found = Enumerable
                    .Range(0, nodes)
                    .Sum(node =>
                        weights[node * Rates + rate] * Math.Pow(Math.Cos(Math.PI * node / (nodes - 1)), power)
                    );
                found.ShouldBe(Math.Pow(Math.Cos(Math.PI * rate / (Rates - 1)), power), 1e-13);
            }
        }
    }

    /// <summary>The narrowest interval goes without points, as the widest.</summary>
    [Theory]
    [InlineData(1e-5)]
    [InlineData(1.2)]
    public void Exact_readings_and_wide_intervals_take_the_sums_themselves(double half) =>
        DecayNodes.Enough(half).ShouldBe(0);
}
