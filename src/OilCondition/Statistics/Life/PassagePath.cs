using System.Runtime.InteropServices;

namespace OilCondition.Statistics;

/// <summary>
/// One member of a crossing law: a state that starts at a distance below the limit and moves with a drift that is known up to a normal
/// error and, on top of it, a Wiener process; the common scale of both is uncertain as Student's t says.
/// </summary>
/// <remarks>
/// With a the distance, d the drift, D its variance, q the Wiener variance per time, C0 and V0 covariance and variance of the start (all
/// variances in units of s², ν degrees of freedom) the state at time τ lies a − d τ below the limit in the mean, with variance
/// v = V0 + 2 C0 τ + q τ + D τ². Chance of being over the limit then: T(−(a − d τ) / (s sqrt(v))). To it comes the chance of having been over
/// and back, from the Brownian bridge: a path from a below to w below the limit touched it with chance exp(−2 a w / (q σ² τ)), whatever the
/// drift. Integrated over w and σ² that is A^(−ν/2) T(−β / (s sqrt(A v))) with β = a + d τ + 2 a D τ / q and
/// A = 1 − 4 a (d + a D / q) / (q ν s²), for a known start (V0 = C0 = 0). Derived for this library; with D = 0 and ν → ∞ it is the second term of
/// the inverse Gaussian distribution function (Chhikara and Folks 1989). For A below 1, where the closed form loses its digits, the same
/// integral is taken over p = ((1 + z²/ν) / (A + w²/(ν s² v)))^(ν/2), z the standardised distance at τ, which leaves ∫ (1 + z²/ν − A p^(2/ν))^(−1/2) dp.
/// </remarks>
[StructLayout(LayoutKind.Auto)]
internal readonly struct PassagePath(
    PassageRule rule,
    double weight,
    double distance,
    double drift,
    double driftVariance,
    double randomWalk,
    double scale2,
    double startVariance = 0,
    double startCovariance = 0
)
{
    public double Weight { get; } = weight;

    /// <summary>Distance to the limit over the drift towards it, 0 where there is none.</summary>
    public double TypicalTime => drift > 0 ? Math.Max(0, distance) / drift : 0;

    /// <summary>The degrees of freedom belong to a rule, from a start that is known, with a random-walk part: what <see cref="PathColumns"/> takes.</summary>
    public bool FitsColumns(PassageRule columns) =>
        ReferenceEquals(rule, columns) && startVariance <= 0 && randomWalk > 0;

    /// <summary>Whether A is below 1.</summary>
    public bool IsByQuadrature => Bridge < 1;

    /// <summary>A of the chance of having been over the limit and back.</summary>
    private double Bridge =>
        1
        - 4
            * distance
            / (randomWalk * rule.DegreesOfFreedom * scale2)
            * (drift + distance * driftVariance / randomWalk);

    /// <summary>The chance that the limit has been crossed by a time, given that it was not at the start.</summary>
    public double ChanceBefore(double time)
    {
        if (startVariance <= 0)
        {
            return time > 0 ? Passed(time) : 0;
        }

        var atStart = Over(0);
        return time > 0 && atStart < 1 ? Math.Max(0, (Passed(time) - atStart) / (1 - atStart)) : 0;
    }

    /// <summary>Puts the numbers of the path into columns, each <paramref name="stride"/> long.</summary>
    public void Store(Span<double> columns, int at, int stride)
    {
        var a = Bridge;
        var unit = rule.DegreesOfFreedom * scale2;
        ReadOnlySpan<double> fields =
        [
            Weight,
            distance,
            drift,
            unit * randomWalk,
            unit * driftVariance,
            a < 1 ? a : Math.Sqrt(a),
            a < 1 ? 0 : Math.Pow(a, -0.5 * rule.DegreesOfFreedom),
            drift + 2 * distance * driftVariance / randomWalk,
        ];
        for (var i = 0; i < fields.Length; i++)
        {
            columns[i * stride + at] = fields[i];
        }
    }

    private double Passed(double time)
    {
        var over = Over(time);
        if (!(randomWalk > 0))
        {
            return over;
        }

        var nu = rule.DegreesOfFreedom;
        var variance = Variance(time);
        var gap = distance - drift * time;
        var a = Bridge;
        if (a < 1)
        {
            return Math.Min(1, over + rule.Returned(1 + gap * gap / (nu * scale2 * variance), a));
        }

        var beta = distance + drift * time + 2 * distance * driftVariance * time / randomWalk;
        return Math.Min(
            1,
            over + Math.Pow(a, -0.5 * nu) * StudentDistribution.Below(-beta / Math.Sqrt(a * scale2 * variance), nu)
        );
    }

    private double Over(double time)
    {
        var gap = distance - drift * time;
        var variance = scale2 * Variance(time);
        if (variance > 0)
        {
            return StudentDistribution.Below(-gap / Math.Sqrt(variance), rule.DegreesOfFreedom);
        }

        return gap > 0 ? 0 : 1;
    }

    private double Variance(double time) =>
        startVariance + time * (2 * startCovariance + randomWalk + driftVariance * time);
}
