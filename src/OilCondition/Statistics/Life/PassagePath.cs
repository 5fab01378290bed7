using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>One movement on its way to a limit; <see cref="PathGroup"/> works out the chance that it is beyond, or has been there and back.</summary>
/// <remarks>
/// With a the distance to the limit and x the course's clock since the last reading, the state lies a − d x below the limit in the mean, with Student's
/// distribution of ν = n − 2 degrees of freedom about it: chance beyond T(−(a − d x)/(s sqrt(V0 + C1 x + C2 x² + C3 x³))). A walk whose state is known at the last
/// reading may also have been beyond and back. From the Brownian bridge, a path from a below to w below the limit touched it with chance exp(−2 a w/(q σ² x)), whatever the
/// drift. Integrated over w and σ² that is A^(−ν/2) T(−β / (s sqrt(A v))) with v = q x + D x², β = a + d x + 2 a D x/q and
/// A = 1 − 4 a (d + a D/q)/(q ν s²). Derived for this library; with D = 0 and ν → ∞ it is the second term of
/// the inverse Gaussian distribution function (Chhikara and Folks 1989). For a small or negative A, where the closed form loses its digits, the same
/// integral is taken over p = ((1 + z²/ν)/(A + w²/(ν s² v)))^(ν/2), z the standardised distance, which leaves ∫ (1 + z²/ν − A p^(2/ν))^(−1/2) dp.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct PassagePath
{
    public PassagePath(in DegradationMember member, double weight, double limit, int sign, double span)
    {
        Weight = weight;
        Course = member.Course;
        Span = span;
        Distance = sign * (limit - member.Level);
        Drift = sign * member.Drift;
        (V0, C1) = (member.Scale2 * member.V0, member.Scale2 * member.C1);
        (C2, C3) = (member.Scale2 * member.C2, member.Scale2 * member.C3);
        FreeWalk = member.Scale2 * member.FreeWalk;
        DegreesOfFreedom = (int)member.DegreesOfFreedom;
        Rule = FreeWalk > 0 ? PassageRule.For(DegreesOfFreedom) : null;
    }

    public double Weight { get; }

    public Course Course { get; }

    /// <summary>Time from the first reading to the last.</summary>
    public double Span { get; }

    /// <summary>How far the state lies below the limit at the last reading.</summary>
    public double Distance { get; }

    /// <summary>Rise towards the limit per unit of the course's clock.</summary>
    public double Drift { get; }

    /// <summary>Variance of the state, V0 + C1 x + C2 x² + C3 x³.</summary>
    public double V0 { get; }

    public double C1 { get; }

    public double C2 { get; }

    public double C3 { get; }

    /// <summary>Variance that a walk whose state is known adds per clock unit; 0 for others.</summary>
    public double FreeWalk { get; }

    public int DegreesOfFreedom { get; }

    /// <summary>For a state that may have been beyond and back.</summary>
    public PassageRule? Rule { get; }

    /// <summary>Whether neither the mean nor what is known of it changes with time.</summary>
    public bool IsStanding => Drift == 0 && C1 == 0 && C2 == 0 && C3 == 0;

    /// <summary>The chance of being beyond at the last reading.</summary>
    /// <param name="nearer">How much nearer the limit lies for a part of the state that is known beforehand, such as a season.</param>
    public double AtStart(double nearer) =>
        Rule is null ? Beyond(Distance - nearer)
        : Distance > nearer ? 0
        : 1;

    private double Beyond(double away)
    {
        var beyond =
            V0 > 0 ? -away / Math.Sqrt(V0)
            : away > 0 ? double.MinValue
            : double.MaxValue;
        return StudentDistribution.Below(beyond, DegreesOfFreedom);
    }
}
