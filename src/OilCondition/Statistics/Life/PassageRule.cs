using System.Collections.Concurrent;
using MathNet.Numerics;

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

    private readonly StudentSeries student;
    private readonly double[] powers = new double[Nodes];
    private readonly double[] weights = new double[Nodes];

    private PassageRule(int degreesOfFreedom)
    {
        DegreesOfFreedom = degreesOfFreedom;
        student = StudentSeries.For(degreesOfFreedom);
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

    /// <summary>The chance of having been beyond and back, of four walks at once: see the remarks of <see cref="PassagePath"/>.</summary>
    /// <param name="away">Distances to the limit, a; nothing returns from one that is not above 0.</param>
    /// <param name="drift">Drifts, d.</param>
    /// <param name="x">Clocks since the last reading.</param>
    /// <param name="walk">Variances that the walks add per clock unit, q s².</param>
    /// <param name="c2">Variances of the drifts, D s².</param>
    public Lanes Returned(Lanes away, Lanes drift, Lanes x, Lanes walk, Lanes c2)
    {
        Lanes zero = default;
        var one = LaneMath.Of(1);
        var nu = LaneMath.Of(DegreesOfFreedom);
        var turn = away * c2 / walk;
        var bridge = one - LaneMath.Of(4) * away * (drift + turn) / (walk * nu);
        var variance = x * LaneMath.MultiplyAdd(c2, x, walk);
        var returned = zero;
        if (-LaneMath.Largest(zero - bridge) < 1)
        {
            var gap = away - drift * x;
            returned = Integral(one + gap * gap / (nu * variance), bridge);
        }

        if (LaneMath.Largest(bridge) >= 1)
        {
            var beta = away + (drift + turn + turn) * x;
            var closed = Power(one / LaneMath.Sqrt(bridge), DegreesOfFreedom) * student.Beyond(beta, bridge * variance);
            returned = LaneMath.WhereLess(bridge, one, returned, closed);
        }

        return LaneMath.WhereLess(zero, away, LaneMath.WhereLess(zero, x, returned, zero), zero);
    }

    /// <summary>Integral over p from 0 to 1 of (peak − a p^(2/ν))^(−1/2), times the factors that do not depend on p.</summary>
    private Lanes Integral(Lanes peak, Lanes a)
    {
        Lanes sum = default;
        for (var i = 0; i < Nodes; i++)
        {
            sum += LaneMath.Of(weights[i]) / LaneMath.Sqrt(peak - a * LaneMath.Of(powers[i]));
        }

        return LaneMath.Of(Factor) * Power(LaneMath.Of(1) / LaneMath.Sqrt(peak), DegreesOfFreedom - 1) * sum;
    }

    /// <summary>A whole power, 0 or more, by squaring.</summary>
    private static Lanes Power(Lanes value, int exponent)
    {
        var power = LaneMath.Of(1);
        for (; exponent > 0; exponent >>= 1)
        {
            power = (exponent & 1) == 1 ? power * value : power;
            value *= value;
        }

        return power;
    }
}
