using System.Collections.Concurrent;
using System.Runtime.InteropServices;
using MathNet.Numerics;

namespace OilCondition.Statistics;

/// <summary>
/// First passage at one number of degrees of freedom: by the closed form where that has its digits, else by Gauss's rule over y on 0 to 1 with p = y¹², which draws out
/// the end of the integrand at p = 0. Within 1e-6 of the integral from three degrees of freedom on, within 1e-5 at two and 3e-4 at one.
/// </summary>
internal sealed class PassageRule
{
    /// <summary>The largest A^(−ν/2) at which nine digits of the closed form are left.</summary>
    private const double LargestFactor = 1e7;

    /// <summary>Up to it the end at p = 0 wants more nodes.</summary>
    private const int SteepDegrees = 5;
    private static readonly ConcurrentDictionary<int, PassageRule> Rules = new();

    // Nodes y and weights for the weight function 12 y¹¹, from its orthogonal polynomials by the method of Golub and Welsch 1969, Math. Comp. 23, 221.
    private static readonly (double Node, double Weight)[] Few =
    [
        (0.645614579236247, 0.02473909939643096),
        (0.8532511190108548, 0.34251296608486126),
        (0.9717225370470158, 0.6327479345187078),
    ];
    private static readonly (double Node, double Weight)[] Many =
    [
        (0.39042804610343257, 7.166039306908007e-05),
        (0.5642810385216281, 0.0036200232319920506),
        (0.7164790323759549, 0.04292432811557631),
        (0.8420589641782198, 0.19910560771818525),
        (0.9341921302727254, 0.4165204041725295),
        (0.9873433972436914, 0.3377579763686478),
    ];

    private readonly StudentSeries student;

    /// <summary>The least A for the closed form.</summary>
    private readonly double least;
    private readonly double[] powers;
    private readonly double[] weights;

    private PassageRule(int degreesOfFreedom)
    {
        DegreesOfFreedom = degreesOfFreedom;
        student = StudentSeries.For(degreesOfFreedom);
        least = Math.Pow(LargestFactor, -2.0 / degreesOfFreedom);
        var nodes = degreesOfFreedom > SteepDegrees ? Few : Many;
        powers = Array.ConvertAll(nodes, one => Math.Pow(one.Node, 24.0 / degreesOfFreedom));
        weights = Array.ConvertAll(nodes, one => one.Weight);

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

    /// <summary>What of the chance of having been beyond and back does not depend on time, of four walks at once: see the remarks of <see cref="PassagePath"/>.</summary>
    /// <param name="away">Distances to the limit, a.</param>
    /// <param name="drift">Drifts, d.</param>
    /// <param name="walk">Variances that the walks add per clock unit, q s².</param>
    /// <param name="c2">Variances of the drifts, D s².</param>
    public Barrier Facing(Lanes away, Lanes drift, Lanes walk, Lanes c2)
    {
        var one = LaneMath.Of(1);
        var turn = away * c2 / walk;
        var bridge = one - LaneMath.Of(4) * away * (drift + turn) / (walk * LaneMath.Of(DegreesOfFreedom));
        var factor = Power(one / LaneMath.Sqrt(LaneMath.Max(bridge, LaneMath.Of(least))), DegreesOfFreedom);
        return new Barrier(away, drift, walk, c2, turn, bridge, factor);
    }

    /// <summary>The chance of having been beyond and back.</summary>
    /// <param name="barrier">The walks and their limits; nothing returns from one that is not away from it.</param>
    /// <param name="x">Clocks since the last reading.</param>
    public Lanes Returned(in Barrier barrier, Lanes x)
    {
        Lanes zero = default;
        var border = LaneMath.Of(least);
        var variance = x * LaneMath.MultiplyAdd(barrier.C2, x, barrier.Walk);
        var returned = zero;
        if (!LaneMath.AreLess(border, barrier.Bridge))
        {
            var gap = barrier.Away - barrier.Drift * x;
            returned = Integral(
                LaneMath.Of(1) + gap * gap / (LaneMath.Of(DegreesOfFreedom) * variance),
                barrier.Bridge
            );
        }

        if (!LaneMath.AreLess(barrier.Bridge, border))
        {
            var beta = barrier.Away + (barrier.Drift + barrier.Turn + barrier.Turn) * x;
            var closed = barrier.Factor * student.Beyond(beta, barrier.Bridge * variance);
            returned = LaneMath.WhereLess(barrier.Bridge, border, returned, closed);
        }

        return LaneMath.WhereLess(zero, barrier.Away, LaneMath.WhereLess(zero, x, returned, zero), zero);
    }

    /// <summary>Integral over p from 0 to 1 of (peak − a p^(2/ν))^(−1/2), times the factors that do not depend on p.</summary>
    private Lanes Integral(Lanes peak, Lanes a)
    {
        Lanes sum = default;
        for (var i = 0; i < weights.Length; i++)
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

    /// <summary>Four walks and their limits.</summary>
    [StructLayout(LayoutKind.Auto)]
    public readonly record struct Barrier(
        Lanes Away,
        Lanes Drift,
        Lanes Walk,
        Lanes C2,
        Lanes Turn,
        Lanes Bridge,
        Lanes Factor
    );
}
