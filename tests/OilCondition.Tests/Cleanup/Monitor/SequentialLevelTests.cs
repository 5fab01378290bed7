using OilCondition.Cleanup;

namespace OilCondition.Tests.Cleanup.Monitor;

/// <summary>A bound that holds at every look: compared with simulated walks, and with the bound of a single look, which does not.</summary>
public class SequentialLevelTests
{
    /// <summary>Share of walks of normal steps whose mean lies above z / √n at any of 10 to 400 looks.</summary>
    private static double Crossed(Func<int, double> z)
    {
        const int Walks = 1500;
        var crossed = 0;
        var random = new Random(31);
        for (var walk = 0; walk < Walks; walk++)
        {
            double sum = 0;
            var isAbove = false;
            for (var n = 1; n <= 400; n++)
            {
                sum += Runs.Normal(random);
                isAbove |= n >= 10 && sum / n > z(n) / Math.Sqrt(n);
            }

            crossed += isAbove ? 1 : 0;
        }

        return (double)crossed / Walks;
    }

    /// <summary>At a confidence of 0.9 both sides have 5 %, one has 2.5 %; the bound is valid for ever and so is not used up in 400 looks.</summary>
    [Fact]
    public void Of_many_looks_at_nothing_few_runs_are_misjudged()
    {
        Crossed(n => SequentialLevel.Z(0.9, n)).ShouldBeInRange(0.002, 0.025);
        Crossed(_ => 1.645).ShouldBeGreaterThan(0.15);
    }

    /// <summary>By hand, α = 0.05 and m = 4: n = 12 √((4/3) (ln 4 + 2 ln 20)) = 3.136; n = 96 √((25/24) (ln 25 + 2 ln 20)) = 3.098.</summary>
    [Theory]
    [InlineData(12, 3.136)]
    [InlineData(96, 3.098)]
    public void By_hand(int count, double expected) => SequentialLevel.Z(0.9, count).ShouldBe(expected, 0.001);

    [Fact]
    public void More_confidence_asks_for_more() =>
        SequentialLevel.OneSided(0.95, 40).ShouldBeGreaterThan(SequentialLevel.OneSided(0.8, 40));
}
