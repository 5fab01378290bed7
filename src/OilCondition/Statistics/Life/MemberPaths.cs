using MathNet.Numerics.Distributions;

namespace OilCondition.Statistics;

/// <summary>From a member of the family to paths with a known start, over which first passage is known in closed form.</summary>
/// <remarks>
/// The start is Student about the filtered level, below the limit only; five Gauss-Hermite nodes of a normal variable carry it, each turned
/// into Student's (Abramowitz and Stegun 1964, 26.7.5; by inversion where the limit is near). Each member counts by its chance of being
/// below the limit now. Given a start x the drift is d + c (x − m), and scale and degrees of freedom take in how far x lies off.
/// </remarks>
internal static class MemberPaths
{
    /// <summary>Most paths that a member becomes.</summary>
    public const int Most = 5;

    // Below this chance of lying over the limit already the nodes need no allowance for it.
    private const double SurelyBelow = 1e-3;

    private static readonly double[] Nodes =
    [
        -2.8569700138728056,
        -1.3556261799742659,
        0,
        1.3556261799742659,
        2.8569700138728056,
    ];
    private static readonly double[] NodeWeights =
    [
        0.011257411327720689,
        0.22207592200561264,
        8.0 / 15,
        0.22207592200561264,
        0.011257411327720689,
    ];

    private static readonly double[] NodeChances = [.. Nodes.Select(z => Normal.CDF(0, 1, z))];

    public static void Add(
        List<PassagePath> paths,
        in RandomWalkMember member,
        double weight,
        double limit,
        int sign,
        PassageRule rule,
        PassageRule given
    )
    {
        var distance = limit - sign * member.Level;
        var drift = sign * member.Drift;
        var covariance = member.LevelReach * member.DriftVariance;
        var variance = member.LevelVariance + member.LevelReach * covariance;
        if (!(member.RandomWalk > 0))
        {
            paths.Add(
                new PassagePath(
                    rule,
                    weight * Below(distance, variance * member.Scale2, rule),
                    distance,
                    drift,
                    member.DriftVariance,
                    0,
                    member.Scale2,
                    variance,
                    covariance
                )
            );
            return;
        }

        if (!(variance > 1e-12 * member.RandomWalk))
        {
            paths.Add(
                new PassagePath(
                    rule,
                    distance > 0 ? weight : 0,
                    Math.Max(distance, 0),
                    drift,
                    member.DriftVariance,
                    member.RandomWalk,
                    member.Scale2
                )
            );
            return;
        }

        var nu = rule.DegreesOfFreedom;
        var spread = Math.Sqrt(variance * member.Scale2);
        var below = Below(distance, spread * spread, rule);
        var conditional = member.DriftVariance - covariance * covariance / variance;
        for (var i = 0; i < Nodes.Length; i++)
        {
            var z = Nodes[i];
            var t =
                below > 1 - SurelyBelow
                    ? z * (1 + (z * z + 1) / (4.0 * nu) + (5 * z * z * z * z + 16 * z * z + 3) / (96.0 * nu * nu))
                    : StudentDistribution.Quantile(Math.Max(1e-12, below * NodeChances[i]), nu);
            paths.Add(
                new PassagePath(
                    given,
                    weight * below * NodeWeights[i],
                    Math.Max(distance - spread * t, 0),
                    drift + covariance / variance * spread * t,
                    conditional,
                    member.RandomWalk,
                    member.Scale2 * (nu + t * t) / (nu + 1)
                )
            );
        }
    }

    /// <summary>The chance that the state is not over the limit at the last reading, which is what the law is given.</summary>
    private static double Below(double distance, double variance, PassageRule rule)
    {
        if (variance > 0)
        {
            return StudentDistribution.Below(distance / Math.Sqrt(variance), rule.DegreesOfFreedom);
        }

        return distance > 0 ? 1 : 0;
    }
}
