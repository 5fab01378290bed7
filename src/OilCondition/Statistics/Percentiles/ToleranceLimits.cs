using MathNet.Numerics;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Limits that bound a share of a population (content) with a confidence, from a sample of a machine's history or of a fleet.</summary>
/// <remarks>
/// A percentile of the sample is as likely too low as too high; a tolerance limit says how sure one is. Readings must be independent and from one
/// population: no trend, one kind of machine, one method.
/// <para>
/// Normal: mean ± k s, k = t'/sqrt(n) with t' the quantile of Student's noncentral t for n − 1 degrees and noncentrality z sqrt(n), z the normal
/// quantile of the content (ISO 16269-6; NIST/SEMATECH e-Handbook, section 7.2.6.3). On the logarithmic scale of ln y, and back.
/// </para>
/// <para>
/// Distribution-free: the r-th most extreme of n readings, with confidence P(Binomial(n, 1 − content) ≥ r) (Wilks 1941). For 95/95 it takes
/// 59 readings for the largest, 93 for the second largest.
/// </para>
/// </remarks>
internal static class ToleranceLimits
{
    /// <summary>Largest number of readings looked for or taken.</summary>
    private const int LargestCount = 10_000_000;

    /// <summary>The factor k of a one-sided normal tolerance limit mean + k s.</summary>
    /// <param name="count">Number of readings, n, 2 to 10 000 000.</param>
    /// <param name="content">Share of the population to be bounded, 0.5 to 0.9999.</param>
    /// <param name="confidence">Confidence that it is, 0.5 to 0.9999.</param>
    /// <returns>k.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double NormalFactor(int count, double content, double confidence)
    {
        Numbers.InRange(count, 2, LargestCount, nameof(count));
        CheckLevels(content, confidence);
        return NoncentralT.ToleranceFactor(count, content, confidence);
    }

    /// <summary>Fewest readings for which the r-th most extreme one is a distribution-free tolerance limit.</summary>
    /// <param name="content">Share of the population to be bounded, 0.5 to 0.9999.</param>
    /// <param name="confidence">Confidence that it is, 0.5 to 0.9999.</param>
    /// <param name="orderFromEnd">r, 1 for the largest or smallest reading, 2 for the next, up to 1000.</param>
    /// <returns>The number.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static int SmallestCount(double content, double confidence, int orderFromEnd = 1)
    {
        CheckLevels(content, confidence);
        Numbers.InRange(orderFromEnd, 1, 1000, nameof(orderFromEnd));
        var tooFew = orderFromEnd - 1;
        var enough = orderFromEnd;
        while (ConfidenceOf(enough, content, orderFromEnd) < confidence)
        {
            tooFew = enough;
            enough *= 2;
        }

        while (enough - tooFew > 1)
        {
            var middle = tooFew + (enough - tooFew) / 2;
            if (ConfidenceOf(middle, content, orderFromEnd) >= confidence)
            {
                enough = middle;
            }
            else
            {
                tooFew = middle;
            }
        }

        return enough;
    }

    /// <summary>Confidence that the r-th most extreme of n readings bounds a share of the population, whatever its distribution.</summary>
    /// <param name="count">Number of readings, n, 1 to 10 000 000.</param>
    /// <param name="content">Share of the population, 0.5 to 0.9999.</param>
    /// <param name="orderFromEnd">r, 1 for the most extreme reading, up to n.</param>
    /// <returns>The confidence, 0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double DistributionFreeConfidence(int count, double content, int orderFromEnd = 1)
    {
        Numbers.InRange(count, 1, LargestCount, nameof(count));
        Guard.InRange(content, 0.5, 0.9999, "");
        Numbers.InRange(orderFromEnd, 1, count, nameof(orderFromEnd));
        return ConfidenceOf(count, content, orderFromEnd);
    }

    /// <summary>P(Binomial(n, 1 − content) ≥ r) as an incomplete beta function.</summary>
    private static double ConfidenceOf(int count, double content, int orderFromEnd) =>
        SpecialFunctions.BetaRegularized(orderFromEnd, count - orderFromEnd + 1, 1 - content);

    private static void CheckLevels(double content, double confidence)
    {
        Guard.InRange(content, 0.5, 0.9999, "");
        Guard.InRange(confidence, 0.5, 0.9999, "");
    }
}
