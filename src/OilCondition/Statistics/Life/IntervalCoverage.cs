using MathNet.Numerics.Distributions;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>How often intervals held the outcome, with the uncertainty of that share: 17 of 20 does not disprove 95 %, and 9 of 10 says nothing at all.</summary>
/// <remarks>Limits after Clopper and Pearson 1934; exact two-sided test by the sum of all outcomes no more likely than the one seen.</remarks>
internal sealed record IntervalCoverage
{
    /// <summary>A count.</summary>
    /// <param name="hits">Outcomes inside their intervals, 0 to <paramref name="count"/>.</param>
    /// <param name="count">Outcomes, at least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public IntervalCoverage(int hits, int count)
    {
        Count = (int)Guard.InRange(count, 1, int.MaxValue, "");
        Hits = (int)Guard.InRange(hits, 0, count, "");
    }

    /// <summary>Outcomes inside their intervals.</summary>
    public int Hits { get; }

    /// <summary>Outcomes.</summary>
    public int Count { get; }

    /// <summary>Share inside.</summary>
    public double Share => (double)Hits / Count;

    /// <summary>Clopper-Pearson limits of the share.</summary>
    /// <param name="confidence">Two-sided confidence level.</param>
    /// <returns>The limits.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public Interval ShareInterval(double confidence)
    {
        var tail = (1 - Guard.OpenUnitInterval(confidence)) / 2;
        return Interval.Between(
            Hits == 0 ? 0 : Beta.InvCDF(Hits, Count - Hits + 1, tail),
            Hits == Count ? 1 : Beta.InvCDF(Hits + 1, Count - Hits, 1 - tail),
            confidence
        );
    }

    /// <summary>The chance of a count as unlikely as this one or more, were the intervals honest.</summary>
    /// <param name="nominal">The level that the intervals claim.</param>
    /// <returns>The two-sided probability.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public double ChanceIfHonest(double nominal)
    {
        Guard.OpenUnitInterval(nominal);

        // The margin is the one of common statistics programs: equal probabilities must not differ by rounding.
        var seen = Binomial.PMF(nominal, Count, Hits) * (1 + 1e-7);
        double sum = 0;
        for (var i = 0; i <= Count; i++)
        {
            var one = Binomial.PMF(nominal, Count, i);
            sum += one <= seen ? one : 0;
        }

        return Math.Min(1, sum);
    }
}
