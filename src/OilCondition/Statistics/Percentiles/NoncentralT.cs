using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;

namespace OilCondition.Statistics;

/// <summary>The noncentral Student distribution as far as tolerance factors need it.</summary>
/// <remarks>
/// P(T ≤ t) = ∫ Φ(t r − δ) g(r) dr over r = sqrt(χ²/ν). In u = ln r the density is exp(ν (u − e^(2u)/2)), smooth and falling off fast on both
/// sides, so that the trapezoidal rule reaches rounding; the same sum gives its norm.
/// </remarks>
internal static class NoncentralT
{
    public static double ToleranceFactor(int count, double content, double confidence)
    {
        var z = Normal.InvCDF(0, 1, content);
        var root = Math.Sqrt(count);
        var upper = z + 1;
        while (Chance(upper * root, count - 1, z * root) < confidence)
        {
            upper *= 2;
        }

        return Brent.FindRoot(k => Chance(k * root, count - 1, z * root) - confidence, -1, upper, 1e-13, 200);
    }

    /// <summary>P(T ≤ t) for ν degrees of freedom and noncentrality δ.</summary>
    public static double Chance(double t, int degreesOfFreedom, double noncentrality)
    {
        // Beyond these ends the density is below e^−41 of its peak.
        double nu = degreesOfFreedom;
        var reach = Math.Sqrt(41 / nu);
        var step = 0.05 / Math.Sqrt(nu + 1);
        double norm = 0;
        double sum = 0;
        for (var u = -reach - 41 / nu; u <= reach; u += step)
        {
            var r = Math.Exp(u);
            var density = Math.Exp(nu * (u - 0.5 * r * r + 0.5));
            norm += density;
            sum += density * NormalTail.Probability(t * r - noncentrality);
        }

        return sum / norm;
    }
}
