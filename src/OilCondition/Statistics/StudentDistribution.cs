using MathNet.Numerics.Distributions;

namespace OilCondition.Statistics;

/// <summary>Student's t quantile for whole degrees of freedom, in a small part of the time that the general inverse takes.</summary>
/// <remarks>
/// For whole degrees of freedom the distribution is a finite sum (Abramowitz and Stegun 1964, 26.7.3 and 26.7.4). Newton's method on it, from
/// the expansion of Cornish and Fisher (26.7.5).
/// </remarks>
internal static class StudentDistribution
{
    /// <summary>Above it the sum is long and its last digits cancel; MathNet's general inverse is used instead.</summary>
    private const int MostDegrees = 400;
    private const double HighestProbability = 0.9999;

    /// <summary>The value below which Student's t lies with a probability.</summary>
    public static double Quantile(double probability, int degreesOfFreedom)
    {
        if (probability < 0.5)
        {
            return -Quantile(1 - probability, degreesOfFreedom);
        }

        if (probability > HighestProbability || degreesOfFreedom is < 1 or > MostDegrees)
        {
            return StudentT.InvCDF(0, 1, degreesOfFreedom, probability);
        }

        var inside = 2 * probability - 1;
        if (degreesOfFreedom == 1)
        {
            return Math.Tan(Math.PI * inside / 2);
        }

        if (degreesOfFreedom == 2)
        {
            return inside * Math.Sqrt(2 / ((1 - inside) * (1 + inside)));
        }

        double degrees = degreesOfFreedom;
        var z = Normal.InvCDF(0, 1, probability);
        var t = z * (1 + (z * z + 1) / (4 * degrees) + ((5 * z * z + 16) * z * z + 3) / (96 * degrees * degrees));
        for (var i = 0; i < 20; i++)
        {
            Inside(t, degreesOfFreedom, out var chance, out var density);
            var step = (inside - chance) / (2 * density);
            t += step;
            if (Math.Abs(step) < 1e-6 * (1 + t))
            {
                break;
            }
        }

        return t;
    }

    /// <summary>The chance of −t to t and the density at t.</summary>
    private static void Inside(double t, int degreesOfFreedom, out double chance, out double density)
    {
        var square = degreesOfFreedom / (degreesOfFreedom + t * t);
        var cos = Math.Sqrt(square);
        var sin = t / Math.Sqrt(degreesOfFreedom + t * t);
        var odd = degreesOfFreedom % 2 == 1;
        var term = odd ? cos : 1;
        var sum = odd ? cos : 1;

        // Γ((ν + 1)/2) / Γ(ν/2), built up beside the sum.
        var gammas = odd ? 2 / Math.Sqrt(Math.PI) : Math.Sqrt(Math.PI) / 2;
        for (var power = odd ? 3 : 2; power <= degreesOfFreedom - 2; power += 2)
        {
            var share = 1.0 / power;
            term *= square * (1 - share);
            sum += term;
            gammas *= 1 + share;
        }

        chance = odd ? 2 / Math.PI * (Math.Atan2(t, Math.Sqrt(degreesOfFreedom)) + sin * sum) : sin * sum;
        density = gammas / Math.Sqrt(Math.PI * degreesOfFreedom) * Math.Pow(square, (degreesOfFreedom + 1) / 2.0);
    }
}
