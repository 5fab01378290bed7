using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>The Mann-Kendall test: do values tend to rise or fall with time, whatever the shape of the rise?</summary>
/// <remarks>
/// S = number of pairs that rise less number of pairs that fall. Pairs at one time, equal values, and pairs of censored readings whose
/// order is unknown count 0. Var S is that over all orders of the values, for any ties; without them n(n − 1)(2n + 5)/18, with tied values
/// less Σ t(t − 1)(2t + 5)/18. z = (S − sign S)/sqrt(Var S). Mann 1945; Kendall, Rank Correlation Methods, chapters 4 and 5; Gilbert 1987,
/// section 16.4. Readings must be independent under 'no trend': a lag-1 correlation ρ multiplies Var S by (1 + ρ)/(1 − ρ), which is n/n_eff
/// (Yue and Wang 2004).
/// </remarks>
public readonly partial record struct MannKendall
{
    /// <summary>Largest number of readings taken: the pairs go with its square.</summary>
    public const int LargestCount = 20_000;

    /// <summary>Largest number of readings for which the exact distribution is taken of its own accord.</summary>
    private const int LargestExact = 20;

    /// <summary>Tests for a trend.</summary>
    /// <param name="times">When readings were taken; n values in any order.</param>
    /// <param name="values">What was read; n values. For a censored reading the figure after the sign.</param>
    /// <param name="censoring">Whether a reading is only known to lie below or above its value; empty if none is.</param>
    /// <param name="correlation">Lag-1 correlation of the residuals to be allowed for, 0 to below 1.</param>
    /// <returns>Score, probabilities, Kendall's tau.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or there are more than 20 000 readings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or beyond 1e100, or the correlation outside 0 to 0.99.</exception>
    public static MannKendall Test(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<Censoring> censoring = default,
        double correlation = 0
    ) => Test(times, values, censoring, correlation, MannKendallMethod.Automatic);

    /// <summary>The same with the distribution stated: exact falls back to normal where the exact one does not hold.</summary>
    internal static MannKendall Test(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<Censoring> censoring,
        double correlation,
        MannKendallMethod method
    )
    {
        Check(times, values, censoring, correlation, LargestCount);
        return Of(KendallSums.Of(times, values, censoring), correlation, method);
    }

    internal static void Check(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<Censoring> censoring,
        double correlation,
        int largestCount
    )
    {
        Numbers.CheckPairs(times, values, nameof(times), nameof(values));
        if (!censoring.IsEmpty)
        {
            Guard.SameLength(censoring.Length, times.Length, nameof(censoring), nameof(times));
        }

        Guard.InRange(correlation, 0, SerialCorrelation.Largest, "");
        if (times.Length > largestCount)
        {
            throw new ArgumentException(
                $"times has {times.Length} values; allowed: up to {largestCount}. Take hourly or daily medians of a log.",
                nameof(times)
            );
        }
    }

    internal static MannKendall Of(KendallSums sums, double correlation, MannKendallMethod method)
    {
        var variance = sums.Variance * (1 + correlation) / (1 - correlation);
        if (sums.Count < 2 || !(variance > 0))
        {
            var reason = sums.Count < 2 ? MannKendallMethod.TooFewReadings : MannKendallMethod.NoVariation;
            return new MannKendall(sums, 0, reason, 1, 1);
        }

        if (IsExact(sums, correlation, method))
        {
            var rising = KendallDistribution.AtLeast(sums.Count, sums.Score);
            var falling = KendallDistribution.AtLeast(sums.Count, -sums.Score);
            return new MannKendall(sums, variance, MannKendallMethod.Exact, rising, falling);
        }

        var deviation = Math.Sqrt(variance);
        return new MannKendall(
            sums,
            variance,
            MannKendallMethod.Normal,
            NormalTail.Probability(-(sums.Score - 1) / deviation),
            NormalTail.Probability((sums.Score + 1) / deviation)
        );
    }

    /// <summary>Whether the exact distribution of S holds and is asked for.</summary>
    internal static bool IsExact(KendallSums sums, double correlation, MannKendallMethod method) =>
        !sums.AnyTie
        && !(correlation > 0)
        && method switch
        {
            MannKendallMethod.Normal => false,
            MannKendallMethod.Exact => sums.Count <= KendallDistribution.LargestCount,
            _ => sums.Count <= LargestExact,
        };
}
