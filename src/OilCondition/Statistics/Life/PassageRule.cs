using System.Collections.Concurrent;
using MathNet.Numerics;
#if NET
using System.Runtime.Intrinsics;
#endif

namespace OilCondition.Statistics;

/// <summary>
/// The quadrature for first passage at one number of degrees of freedom: eight Gauss-Legendre nodes y on 0 to 1, taken at
/// p = (1 − (1 − y)²)³, which removes the square-root end of the integrand at p = 1 and flattens its logarithmic end at p = 0.
/// </summary>
internal sealed class PassageRule
{
    private const int Nodes = 8;
    private static readonly ConcurrentDictionary<int, PassageRule> Rules = new();

    // Abscissas and weights on -1 to 1: Abramowitz and Stegun 1964, table 25.4, n = 8.
    private static readonly double[] Abscissas =
    [
        0.1834346424956498,
        0.5255324099163290,
        0.7966664774136267,
        0.9602898564975363,
    ];
    private static readonly double[] LegendreWeights =
    [
        0.3626837833783620,
        0.3137066458778873,
        0.2223810344533745,
        0.1012285362903763,
    ];

    private readonly double[] powers = new double[Nodes];
    private readonly double[] weights = new double[Nodes];

    private PassageRule(int degreesOfFreedom)
    {
        DegreesOfFreedom = degreesOfFreedom;
        for (var i = 0; i < Nodes; i++)
        {
            var y = 0.5 * (1 + (i % 2 == 0 ? Abscissas[i / 2] : -Abscissas[i / 2]));
            var root = 1 - (1 - y) * (1 - y);
            powers[i] = Math.Pow(root, 6.0 / degreesOfFreedom);
            weights[i] = LegendreWeights[i / 2] * 3 * root * root * (1 - y);
        }

        // Γ((ν+1)/2) / (Γ(ν/2) sqrt(ν π)) / sqrt(ν): the density of Student's t at 0, over sqrt(ν).
        Factor =
            Math.Exp(
                SpecialFunctions.GammaLn((degreesOfFreedom + 1) / 2.0)
                    - SpecialFunctions.GammaLn(degreesOfFreedom / 2.0)
            ) / (Math.Sqrt(Math.PI) * degreesOfFreedom);
    }

    private int DegreesOfFreedom { get; }

    /// <summary>What does not depend on p.</summary>
    private double Factor { get; }

    /// <summary>The rule at some degrees of freedom, worked out once.</summary>
    public static PassageRule For(int degreesOfFreedom) =>
        Rules.GetOrAdd(degreesOfFreedom, degrees => new PassageRule(degrees));

    /// <summary>Integral over p from 0 to 1 of (peak − a p^(2/ν))^(−1/2), times the factors that do not depend on p.</summary>
    public double Returned(double peak, double a)
    {
#if NET
        // Two times four nodes at once: roots and divisions take most of the time.
        var (peaks, factor) = (LaneMath.Of(peak), LaneMath.Of(a));
        var first = peaks - factor * LaneMath.Load(powers, 0);
        var second = peaks - factor * LaneMath.Load(powers, LaneMath.Width);
        var sum = LaneMath.Sum(
            LaneMath.Load(weights, 0) / Vector256.Sqrt(first)
                + LaneMath.Load(weights, LaneMath.Width) / Vector256.Sqrt(second)
        );
#else
        double sum = 0;
        for (var i = 0; i < Nodes; i++)
        {
            sum += weights[i] / Math.Sqrt(peak - a * powers[i]);
        }
#endif

        return Factor * Numbers.Power(1 / Math.Sqrt(peak), DegreesOfFreedom - 1) * sum;
    }
}
