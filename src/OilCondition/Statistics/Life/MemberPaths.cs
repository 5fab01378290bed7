using MathNet.Numerics.Distributions;

namespace OilCondition.Statistics;

/// <summary>From a member of the family to paths with a known start, over which first passage is known in closed form.</summary>
/// <remarks>
/// The start is Student about the filtered level; three Gauss-Hermite nodes carry it (−√3, 0, √3 with weights 1/6, 2/3, 1/6 of a normal
/// variable, turned into Student's). Given a start x the drift is d + c (x − m), and scale and degrees of freedom take in how far x lies off.
/// </remarks>
internal static class MemberPaths
{
    // Below this chance of lying over the limit already the nodes need no allowance for it.
    private const double SurelyBelow = 1e-3;

    private static readonly double[] Nodes = [-1.7320508075688772, 0, 1.7320508075688772];
    private static readonly double[] NodeWeights = [1.0 / 6, 2.0 / 3, 1.0 / 6];

    public static void Add(
        List<PassagePath> paths,
        in WanderMember member,
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
        if (!(member.Wander > 0))
        {
            paths.Add(
                new PassagePath(
                    rule,
                    weight,
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

        if (!(variance > 1e-12 * member.Wander))
        {
            paths.Add(
                new PassagePath(
                    rule,
                    weight,
                    Math.Max(distance, 0),
                    drift,
                    member.DriftVariance,
                    member.Wander,
                    member.Scale2
                )
            );
            return;
        }

        var nu = rule.DegreesOfFreedom;
        var spread = Math.Sqrt(variance * member.Scale2);
        var below = StudentChance.Below(distance / spread, nu);
        var conditional = member.DriftVariance - covariance * covariance / variance;
        for (var i = 0; i < Nodes.Length; i++)
        {
            var z = Nodes[i];
            var t =
                below > 1 - SurelyBelow
                    ? z * (1 + (z * z + 1) / (4 * nu))
                    : StudentT.InvCDF(0, 1, nu, Math.Max(1e-12, below * Normal.CDF(0, 1, z)));
            paths.Add(
                new PassagePath(
                    given,
                    weight * NodeWeights[i],
                    Math.Max(distance - spread * t, 0),
                    drift + covariance / variance * spread * t,
                    conditional,
                    member.Wander,
                    member.Scale2 * (nu + t * t) / (nu + 1)
                )
            );
        }
    }
}
