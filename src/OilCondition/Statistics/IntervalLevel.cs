using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>The quantile that belongs to a confidence level.</summary>
internal static class IntervalLevel
{
    /// <summary>Student's quantile for an end; its square is Fisher's F(confidence; 1, ν) for both sides.</summary>
    public static double StudentQuantile(double confidence, IntervalSide side, int degreesOfFreedom)
    {
        Guard.OpenUnitInterval(confidence);
        if (side != IntervalSide.Both && !(confidence > 0.5))
        {
            throw new ArgumentOutOfRangeException(
                nameof(confidence),
                $"confidence is {confidence:G7}; allowed: above 0.5 and below 1 for a one-sided interval."
            );
        }

        return degreesOfFreedom < 1
            ? 0
            : StudentDistribution.Quantile(
                side == IntervalSide.Both ? 0.5 + confidence / 2 : confidence,
                degreesOfFreedom
            );
    }
}
