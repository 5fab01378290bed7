using MathNet.Numerics.Distributions;

namespace OilCondition.Statistics;

/// <summary>Student's t: the one place for its quantile, its distribution function and its tail.</summary>
/// <remarks>
/// For whole degrees of freedom the distribution is a finite sum (Abramowitz and Stegun 1964, 26.7.3 and 26.7.4), ten times faster than the
/// incomplete beta function, which a forecast would otherwise ask thousands of times. The quantile by Newton's method on it, from the
/// expansion of Cornish and Fisher (26.7.5). <see cref="StudentSeries"/> is the same sum for four values at once.
/// </remarks>
internal static class StudentDistribution
{
    /// <summary>Above it the sum is long and its last digits cancel; MathNet's general inverse is used instead.</summary>
    private const int MostDegrees = 400;
    private const double HighestProbability = 0.9999;

    /// <summary>Beyond it the sum of <see cref="Below"/> is long.</summary>
    public const int LongestSeries = 200;
    private const double Farthest = 1e20;
    private const double SmallestBySum = 1e-5;

    /// <summary>The latest quantiles asked for: levels and numbers of readings hardly change. Entries never change, so that threads may race.</summary>
    private static readonly Known?[] Latest = new Known?[256];

    /// <summary>The value below which Student's t lies with a probability.</summary>
    public static double Quantile(double probability, int degreesOfFreedom)
    {
        var at = (degreesOfFreedom ^ probability.GetHashCode()) & (Latest.Length - 1);
        var known = Latest[at];
        if (known is null || known.Probability != probability || known.DegreesOfFreedom != degreesOfFreedom)
        {
            known = new Known(probability, degreesOfFreedom, Found(probability, degreesOfFreedom));
            Latest[at] = known;
        }

        return known.Quantile;
    }

    private static double Found(double probability, int degreesOfFreedom)
    {
        if (probability < 0.5)
        {
            return -Found(1 - probability, degreesOfFreedom);
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

    /// <summary>The same for degrees of freedom that need not be whole.</summary>
    public static double Quantile(double probability, double degreesOfFreedom) =>
        StudentT.InvCDF(0, 1, degreesOfFreedom, probability);

    /// <summary>The chance of a value below t, with all digits of a small chance far out.</summary>
    public static double Cumulative(double t, double degreesOfFreedom) => StudentT.CDF(0, 1, degreesOfFreedom, t);

    /// <summary>The chance of a value as far from 0 as t on either side.</summary>
    public static double TwoSidedTail(double t, int degreesOfFreedom)
    {
        // The sum is ten times faster and has ten digits of such a chance; of a smaller one it loses them.
        var tail = 2 * Below(-Math.Abs(t), degreesOfFreedom);
        return tail > SmallestBySum ? tail : 2 * Cumulative(-Math.Abs(t), degreesOfFreedom);
    }

    /// <summary>The chance of a value below t by the sum: quick, and right to the last digit of 1, not of a small chance.</summary>
    public static double Below(double t, int degreesOfFreedom)
    {
        // Beyond this t the tail is below the last digit of 1, and t² may overflow.
        if (!(Math.Abs(t) < Farthest))
        {
            return t > 0 ? 1 : 0;
        }

        if (degreesOfFreedom > LongestSeries)
        {
            return StudentT.CDF(0, 1, degreesOfFreedom, t);
        }

        var odd = (degreesOfFreedom & 1) == 1;
        var cosine2 = degreesOfFreedom / (degreesOfFreedom + t * t);
        var sine = t / Math.Sqrt(degreesOfFreedom + t * t);
        double sum = 0;
        double term = 1;
        var terms = odd ? (degreesOfFreedom - 1) / 2 : degreesOfFreedom / 2;
        for (var i = 0; i < terms; i++)
        {
            sum += term;
            term *= cosine2 * (odd ? (2.0 * i + 2) / (2 * i + 3) : (2.0 * i + 1) / (2 * i + 2));
        }

        var between = odd
            ? 2 / Math.PI * (Math.Atan(t / Math.Sqrt(degreesOfFreedom)) + sine * Math.Sqrt(cosine2) * sum)
            : sine * sum;
        return 0.5 * (1 + Math.Max(-1, Math.Min(1, between)));
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

    private sealed class Known(double probability, int degreesOfFreedom, double quantile)
    {
        public double Probability { get; } = probability;
        public int DegreesOfFreedom { get; } = degreesOfFreedom;
        public double Quantile { get; } = quantile;
    }
}
