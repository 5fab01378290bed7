using MathNet.Numerics.Distributions;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>How good a forecast was, once the outcome is known. Score on runs that were not used for fitting, at several lead times.</summary>
/// <remarks>
/// One lucky date is no evidence, and forecasts from ever longer pieces of the same series are one run, not many. Show width together with
/// <see cref="IntervalCoverage"/>; the interval score joins both.
/// </remarks>
internal static class ForecastScore
{
    /// <summary>Interval score: width + (2/α) · distance by which the outcome missed. Smaller is better; unit of the outcome.</summary>
    /// <remarks>Winkler 1972; Gneiting and Raftery 2007, equation 43.</remarks>
    /// <param name="lower">Lower end.</param>
    /// <param name="upper">Upper end, not below the lower.</param>
    /// <param name="outcome">What came.</param>
    /// <param name="confidence">Level of the interval, 1 − α.</param>
    /// <returns>The score.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static double Interval(double lower, double upper, double outcome, double confidence)
    {
        Guard.Finite(lower, "");
        Guard.InRange(upper, lower, double.MaxValue, "");
        Guard.Finite(outcome, "");
        Guard.OpenUnitInterval(confidence);
        return upper - lower + 2 / (1 - confidence) * Math.Max(0, Math.Max(lower - outcome, outcome - upper));
    }

    /// <summary>Continuous ranked probability score of a normal forecast: s (z (2 Φ(z) − 1) + 2 φ(z) − 1/√π). Unit of the outcome.</summary>
    /// <remarks>Gneiting and Raftery 2007.</remarks>
    /// <param name="mean">Mean of the forecast.</param>
    /// <param name="standardDeviation">Its standard deviation, s; above 0.</param>
    /// <param name="outcome">What came.</param>
    /// <returns>The score; smaller is better.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static double NormalRankedProbability(double mean, double standardDeviation, double outcome)
    {
        var z = Standardised(mean, standardDeviation, outcome);
        return standardDeviation
            * (z * (2 * Normal.CDF(0, 1, z) - 1) + 2 * Normal.PDF(0, 1, z) - 1 / Math.Sqrt(Math.PI));
    }

    /// <summary>Continuous ranked probability score of a set of equally likely forecasts: mean of |x − y| less half the mean of |x − x′|.</summary>
    /// <remarks>Gneiting and Raftery 2007, energy form.</remarks>
    /// <param name="members">The forecasts, at least one.</param>
    /// <param name="outcome">What came, y.</param>
    /// <returns>The score; smaller is better.</returns>
    /// <exception cref="ArgumentException">There are no forecasts.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite.</exception>
    public static double EnsembleRankedProbability(ReadOnlySpan<double> members, double outcome)
    {
        if (members.Length == 0)
        {
            throw new ArgumentException("members is empty; at least one forecast is required.", nameof(members));
        }

        Guard.Finite(outcome, "");
        var sorted = members.ToArray();
        Array.Sort(sorted);
        double count = sorted.Length;
        double away = 0;
        double apart = 0;
        for (var i = 0; i < sorted.Length; i++)
        {
            away += Math.Abs(Guard.Finite(sorted[i], "", nameof(members)) - outcome);

            // Σ over pairs of |x − x′| in sorted order: each member counts once for every one below it, less for every one above.
            apart += (2 * i + 1 - count) * sorted[i];
        }

        return away / count - apart / (count * count);
    }

    /// <summary>Probability integral transform of a normal forecast, Φ((y − mean)/s): even from 0 to 1 over many honest forecasts.</summary>
    /// <remarks>Dawid 1984.</remarks>
    /// <param name="mean">Mean of the forecast.</param>
    /// <param name="standardDeviation">Its standard deviation, above 0.</param>
    /// <param name="outcome">What came, y.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static double NormalTransform(double mean, double standardDeviation, double outcome) =>
        Normal.CDF(0, 1, Standardised(mean, standardDeviation, outcome));

    /// <summary>Whether a forecast of remaining life lies within ±α of the true one: (1 − α) r ≤ forecast ≤ (1 + α) r.</summary>
    /// <remarks>Saxena and others 2010, alpha-lambda accuracy, for point forecasts.</remarks>
    /// <param name="remaining">True remaining life, r; 0 or more.</param>
    /// <param name="predicted">Forecast remaining life.</param>
    /// <param name="alpha">Allowed relative error, α; 0 or more.</param>
    /// <returns>Whether it does.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static bool IsWithin(double remaining, double predicted, double alpha)
    {
        Guard.NotNegative(remaining, "");
        Guard.Finite(predicted, "");
        return Math.Abs(predicted - remaining) <= Guard.NotNegative(alpha, "") * remaining * (1 + 1e-12);
    }

    /// <summary>Relative accuracy, 1 − |r − forecast| / r. It runs away near the end of life, where r is small.</summary>
    /// <remarks>Saxena and others 2010 (definition from memory).</remarks>
    /// <param name="remaining">True remaining life, r; above 0.</param>
    /// <param name="predicted">Forecast remaining life.</param>
    /// <returns>1 for a perfect forecast, below 0 for one that is off by more than r.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static double RelativeAccuracy(double remaining, double predicted) =>
        1 - Math.Abs(Guard.Finite(predicted, "") - Guard.Positive(remaining, "")) / remaining;

    private static double Standardised(double mean, double standardDeviation, double outcome) =>
        (Guard.Finite(outcome, "") - Guard.Finite(mean, "")) / Guard.Positive(standardDeviation, "");
}
