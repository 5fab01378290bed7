using MathNet.Numerics.Distributions;

namespace OilCondition.Tests.Statistics;

/// <summary>
/// When a state that drifts, with a random walk on top first gets to a limit, with drift and walking known: the inverse Gaussian distribution.
/// </summary>
/// <remarks>
/// x(t) = d t + w W(t), W a Wiener process. F(t) = Φ((d t − a)/(w √t)) + exp(2 d a / w²) Φ((−a − d t)/(w √t)). With d at or above 0 the limit is reached
/// for certain; with d below 0 with chance exp(2 d a / w²) only. Source: Chhikara and Folks 1989, chapter 2 (from memory).
/// </remarks>
internal static class FirstPassage
{
    /// <summary>The chance that the limit has been reached by a time, F(t).</summary>
    /// <param name="distance">Distance to the limit now, a; above 0.</param>
    /// <param name="drift">Drift towards the limit, d, per time; below 0 when it leads away.</param>
    /// <param name="walk">Standard deviation gained by walking in one unit of time, w; above 0.</param>
    /// <param name="time">t, 0 or more.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static double ChanceBefore(double distance, double drift, double walk, double time)
    {
        if (time <= 0)
        {
            return 0;
        }

        var spread = walk * Math.Sqrt(time);
        var over = Normal.CDF(0, 1, (drift * time - distance) / spread);
        return Math.Min(1, over + Returned(2 * drift * distance / (walk * walk), (distance + drift * time) / spread));
    }

    /// <summary>The chance that the limit is ever reached.</summary>
    /// <param name="distance">Distance to the limit now, a; above 0.</param>
    /// <param name="drift">Drift towards the limit, d, per time.</param>
    /// <param name="walk">Standard deviation gained by walking in one unit of time, w; above 0.</param>
    /// <returns>1 with a drift of 0 or more, else exp(2 d a / w²).</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static double ChanceEver(double distance, double drift, double walk)
    {
        return drift >= 0 ? 1 : Math.Exp(2 * drift * distance / (walk * walk));
    }

    /// <summary>exp(c) Φ(−x); c is x²/2 at most. Where the exponential may overflow Φ is taken by its tail, φ(x)/x (1 − 1/x² + 3/x⁴ − 15/x⁶).</summary>
    private static double Returned(double c, double x) =>
        x < 12
            ? Math.Exp(c) * Normal.CDF(0, 1, -x)
            : Math.Exp(c - 0.5 * x * x)
                / (x * Math.Sqrt(2 * Math.PI))
                * (1 - 1 / (x * x) * (1 - 3 / (x * x) * (1 - 5 / (x * x))));
}
