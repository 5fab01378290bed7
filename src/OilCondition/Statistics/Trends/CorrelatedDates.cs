using System.Buffers;

namespace OilCondition.Statistics;

/// <summary>The dates of some readings under each correlation that <see cref="CorrelatedRise"/> weighs, four at a time.</summary>
internal sealed class CorrelatedDates
{
    private const double NoCorrelation = 27;

    /// <summary>−ln ρ of no correlation: nothing is left of it over the shortest time.</summary>
    private const double AtOnce = 1e300;

    /// <summary>The last one only fills up, without a weight.</summary>
    private static readonly double[] Correlations = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.95];
    private static readonly double[] Decays = Array.ConvertAll(Correlations, rho => rho > 0 ? -Math.Log(rho) : AtOnce);
    private static readonly double[] LogPriors =
    [
        Math.Log(NoCorrelation),
        .. Correlations.Skip(1).Take(10).Select(rho => -0.5 * Math.Log(1.02 - rho)),
        double.NegativeInfinity,
    ];

    // For each four and each reading what is kept of it and what is taken of the one before it; then for each four its weight.
    private readonly Lanes[] rented;

    /// <summary>Takes dates.</summary>
    /// <param name="times">When readings were taken; ascending, at two different times or more.</param>
    public CorrelatedDates(double[] times)
    {
        Times = times;
        rented = ArrayPool<Lanes>.Shared.Rent(Fours * (2 * times.Length + 1));
        var interval = MeanInterval(times);
        for (var four = 0; four < Fours; four++)
        {
            LogWeight(four) = LaneMath.Load(LogPriors, four * LaneMath.Width) + Factor(four, interval);
        }
    }

    /// <summary>How often four correlations are taken together.</summary>
    public static int Fours => Correlations.Length / LaneMath.Width;

    public double[] Times { get; }

    /// <summary>Four correlations of readings a mean interval apart.</summary>
    public static Lanes Correlation(int four) => LaneMath.Load(Correlations, four * LaneMath.Width);

    /// <summary>Logarithms of what the likelihoods have without readings: the prior and |V|^(−1/2).</summary>
    public ref Lanes LogWeight(int four) => ref rented[2 * Fours * Times.Length + four];

    /// <summary>Frees each figure of a column of what the one before it foretells, and brings what is left to the variance of a figure alone.</summary>
    /// <param name="four">Which correlations.</param>
    /// <param name="column">A figure at each date.</param>
    /// <param name="centre">What is taken from each first.</param>
    /// <param name="freed">Receives what is left.</param>
    public void Free(int four, ReadOnlySpan<double> column, double centre, Span<Lanes> freed)
    {
        var keepAndTake = KeepAndTake(four);
        var before = LaneMath.Of(column[0] - centre);
        for (var i = 0; i < column.Length; i++)
        {
            var now = LaneMath.Of(column[i] - centre);
            freed[i] = keepAndTake[2 * i] * now - keepAndTake[2 * i + 1] * before;
            before = now;
        }
    }

    /// <summary>Gives the memory back: nothing may be asked any more.</summary>
    public void Release() => ArrayPool<Lanes>.Shared.Return(rented);

    private Span<Lanes> KeepAndTake(int four) => rented.AsSpan(2 * four * Times.Length, 2 * Times.Length);

    /// <summary>Works out what is kept and taken, and returns −½ ln|V|.</summary>
    private Lanes Factor(int four, double interval)
    {
        var keepAndTake = KeepAndTake(four);
        var decay = LaneMath.Load(Decays, four * LaneMath.Width);
        var one = LaneMath.Of(1);
        var lastGap = -1.0;
        Lanes follows = default;
        Lanes logDeterminant = default;
        var scale = one;
        for (var i = 0; i < Times.Length; i++)
        {
            var gap = i > 0 ? Times[i] - Times[i - 1] : 0;
            if (Math.Abs(gap - lastGap) > 1e-9 * interval)
            {
                // ρ to the power of the distance, and one over the root of 1 − its square; at one time nothing follows.
                lastGap = gap;
                var lost = LaneMath.Of(Math.Max(0, gap) / interval) * decay;
                follows = gap > 0 ? one - LaneMath.Drop(lost) : default;
                scale = gap > 0 ? one / LaneMath.Sqrt(LaneMath.Drop(lost + lost)) : one;
            }

            logDeterminant += LaneMath.Log(scale);
            (keepAndTake[2 * i], keepAndTake[2 * i + 1]) = (scale, scale * follows);
        }

        return logDeterminant;
    }

    private static double MeanInterval(double[] times)
    {
        var intervals = 0;
        for (var i = 1; i < times.Length; i++)
        {
            intervals += times[i] > times[i - 1] ? 1 : 0;
        }

        return (times[times.Length - 1] - times[0]) / intervals;
    }
}
