namespace OilCondition.Statistics;

/// <summary>Whether each value resembles the one before it, and how much less such values tell.</summary>
/// <remarks>
/// Values must be in the order of time and about evenly spaced: with gaps of very different length one lag-1 figure has no clear meaning.
/// </remarks>
internal static class SerialCorrelation
{
    /// <summary>Largest correlation that is allowed for: beyond it a series says hardly more than one reading.</summary>
    public const double Largest = 0.99;

    /// <summary>The normal deviate that one series of fifty exceeds.</summary>
    private const double OneInFifty = 2.0537489106318225;

    /// <summary>Lag-1 correlation about a centre: r = Σ (e_i − c)(e_(i+1) − c) / Σ (e_i − c)², 0 if nothing varies.</summary>
    /// <remarks>Box, Jenkins and Reinsel, Time Series Analysis, section 2.1. Short series read low, by about (1 + 4ρ)/n.</remarks>
    public static double LagOne(ReadOnlySpan<double> values, double centre = 0)
    {
        double products = 0;
        double squares = 0;
        double before = 0;
        foreach (var value in values)
        {
            var distance = value - centre;
            products += distance * before;
            squares += distance * distance;
            before = distance;
        }

        return squares > 0 ? products / squares : 0;
    }

    /// <summary>Whether independent scatter would show as much in fewer than one series of fifty.</summary>
    /// <param name="deviate">The correlation less its mean without any, in standard deviations.</param>
    public static bool IsClear(double deviate) => deviate > OneInFifty;

    /// <summary>The number of independent readings that would tell as much about a mean: n (1 − ρ)/(1 + ρ).</summary>
    /// <remarks>Large-n form of Bayley and Hammersley 1946 for a first-order autoregression.</remarks>
    public static double EffectiveCount(int count, double correlation) => count * (1 - correlation) / (1 + correlation);
}
