using MathNet.Numerics;

namespace OilCondition.Statistics;

/// <summary>Φ(r), ln Φ(r) and φ(r)/Φ(r), without loss far in the tail.</summary>
internal static class NormalTail
{
    private static readonly double LogRootTwoPi = 0.5 * Math.Log(2 * Math.PI);

    public static double Probability(double r) => 0.5 * SpecialFunctions.Erfc(-r / Math.Sqrt(2));

    public static double LogProbability(double r, out double ratio)
    {
        var logDensity = -0.5 * r * r - LogRootTwoPi;
        double logProbability;
        if (r > -20)
        {
            logProbability = Math.Log(0.5 * SpecialFunctions.Erfc(-r / Math.Sqrt(2)));
        }
        else
        {
            // Φ(r) = φ(r)/|r| (1 − 1/r² + 3/r⁴ − 15/r⁶ …), Abramowitz and Stegun 26.2.12.
            var s = 1 / (r * r);
            logProbability = logDensity - Math.Log(-r) + Math.Log(1 - s * (1 - 3 * s * (1 - 5 * s * (1 - 7 * s))));
        }

        ratio = Math.Exp(logDensity - logProbability);
        return logProbability;
    }
}
