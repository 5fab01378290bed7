using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Whether each value resembles the one before it, and how much less such values tell.</summary>
/// <remarks>
/// Values must be in the order of time and about evenly spaced: with gaps of very different length one lag-1 figure has no clear meaning.
/// </remarks>
public static class SerialCorrelation
{
    /// <summary>Largest correlation that is allowed for: beyond it a series says hardly more than one reading.</summary>
    internal const double Largest = 0.99;

    /// <summary>Lag-1 autocorrelation about the mean: r = Σ (e_i − ē)(e_(i+1) − ē) / Σ (e_i − ē)².</summary>
    /// <remarks>Box, Jenkins and Reinsel, Time Series Analysis, section 2.1. Short series read low, by about (1 + 4ρ)/n.</remarks>
    /// <param name="values">Values or residuals in the order of time, two or more.</param>
    /// <returns>−1 to 1; 0 if all are equal.</returns>
    /// <exception cref="ArgumentException">There are fewer than two values.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite or beyond 1e100.</exception>
    public static double Lag1(ReadOnlySpan<double> values)
    {
        Numbers.AtLeast(values.Length, 2, nameof(values));
        Numbers.Check(values, nameof(values));
        var mean = Numbers.Mean(values);
        var squares = Numbers.SumOfSquaresAbout(values, mean);
        double products = 0;
        for (var i = 1; i < values.Length; i++)
        {
            products += (values[i] - mean) * (values[i - 1] - mean);
        }

        return squares > 0 ? products / squares : 0;
    }

    /// <summary>Durbin-Watson statistic: d = Σ (e_(i+1) − e_i)² / Σ e_i², near 2 for independent residuals, near 0 where they follow one another.</summary>
    /// <remarks>Durbin and Watson 1950.</remarks>
    /// <param name="residuals">Residuals of a fit, in the order of time, two or more.</param>
    /// <returns>0 to 4; 2 if all residuals are 0.</returns>
    /// <exception cref="ArgumentException">There are fewer than two residuals.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A residual is not finite or beyond 1e100.</exception>
    public static double DurbinWatson(ReadOnlySpan<double> residuals)
    {
        Numbers.AtLeast(residuals.Length, 2, nameof(residuals));
        Numbers.Check(residuals, nameof(residuals));
        var squares = Numbers.SumOfSquaresAbout(residuals, 0);
        double steps = 0;
        for (var i = 1; i < residuals.Length; i++)
        {
            var step = residuals[i] - residuals[i - 1];
            steps += step * step;
        }

        return squares > 0 ? steps / squares : 2;
    }

    /// <summary>The number of independent readings that would tell as much about a mean: n (1 − ρ)/(1 + ρ).</summary>
    /// <remarks>Large-n form of Bayley and Hammersley 1946 for a first-order autoregression.</remarks>
    /// <param name="count">Number of readings, n, 1 or more.</param>
    /// <param name="correlation">Lag-1 correlation ρ, −0.99 to 0.99.</param>
    /// <returns>The effective number; above n for a negative correlation.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The number is below 1 or the correlation out of range.</exception>
    public static double EffectiveCount(int count, double correlation)
    {
        Numbers.InRange(count, 1, int.MaxValue, nameof(count));
        Guard.InRange(correlation, -Largest, Largest, "");
        return count * (1 - correlation) / (1 + correlation);
    }
}
