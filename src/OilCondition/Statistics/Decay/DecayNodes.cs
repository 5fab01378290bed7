namespace OilCondition.Statistics;

/// <summary>The sums of a series at the rates of a profile, from those at a few of them.</summary>
/// <remarks>
/// Each sum is an entire function of u = ln κ. The polynomial through its values at u = middle − half cos θ, with θ in equal steps (Chebyshev's extreme points),
/// comes closer by a power of the half width for each point more. The barycentric formula (Berrut and Trefethen 2004, SIAM Review 46(3), 5.4, from
/// memory) gives fixed weights. Of 1 − exp(−x), whatever x, no figure is further off than 4.5e-8 within 0.4 for eight points, 7.5e-8 within 0.9 for twelve.
/// </remarks>
internal static class DecayNodes
{
    /// <summary>In a narrower interval the set of curves is hardly larger than rounding.</summary>
    private const double HalfOfExact = 1e-4;

    private const double HalfOfEight = 0.4;
    private const double HalfOfTwelve = 0.9;

    /// <summary>Fewest rates of a profile, a whole number of lanes; for so many there are weights.</summary>
    public const int Rates = 20;

    private static readonly double[] OfEight = WeightsOf(8);
    private static readonly double[] OfTwelve = WeightsOf(12);

    /// <summary>By their number over four, each worked out when first asked for: two threads would write the same.</summary>
    private static readonly double[]?[] KnownRises = new double[128][];

    /// <summary>How many points suffice; 0 where the sums themselves are to be taken.</summary>
    /// <param name="half">Half the width of the interval of ln κ.</param>
    public static int Enough(double half) =>
        half < HalfOfExact ? 0
        : half <= HalfOfEight ? 8
        : half <= HalfOfTwelve ? 12
        : 0;

    /// <summary>What each point counts at each rate: all rates of the first point, then those of the next. None without points.</summary>
    public static double[] Weights(int nodes) =>
        nodes == 8 ? OfEight
        : nodes == 12 ? OfTwelve
        : [];

    /// <summary>−cos θ + 1 for so many equal steps of θ, a whole number of lanes: how far along the interval of ln κ, 0 to 2.</summary>
    public static double[] Rises(int count)
    {
        ref var known = ref KnownRises[count / LaneMath.Width];
        return known ??= RisesOf(count);
    }

    private static double[] RisesOf(int count) =>
        [.. Enumerable.Range(0, count).Select(i => 1 - Math.Cos(Math.PI * i / (count - 1)))];

    private static double[] WeightsOf(int nodes)
    {
        var weights = new double[nodes * Rates];
        for (var rate = 0; rate < Rates; rate++)
        {
            var x = Math.Cos(Math.PI * rate / (Rates - 1));
            var sum = 0.0;
            for (var node = 0; node < nodes; node++)
            {
                // The first and last rate are points themselves, as is any that falls on one: there the others count nothing.
                var distance = x - Math.Cos(Math.PI * node / (nodes - 1));
                var isEnd = node == 0 || node == nodes - 1;
                var weight =
                    (node % 2 == 0 ? 1 : -1) * (isEnd ? 0.5 : 1) / (Math.Abs(distance) < 1e-14 ? 1e-30 : distance);
                weights[node * Rates + rate] = weight;
                sum += weight;
            }

            for (var node = 0; node < nodes; node++)
            {
                weights[node * Rates + rate] /= sum;
            }
        }

        return weights;
    }
}
