using MathNet.Numerics.Distributions;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>
/// When a state that drifts and wanders first gets to a limit, with drift and wandering known: the inverse Gaussian distribution.
/// </summary>
/// <remarks>
/// x(t) = d t + w W(t), W a Wiener process. F(t) = Φ((d t − a)/(w √t)) + exp(2 d a / w²) Φ((−a − d t)/(w √t)). With d at or above 0 the limit is reached
/// for certain; with d below 0 with chance exp(2 d a / w²) only. Source: Chhikara and Folks 1989, chapter 2 (from memory).
/// Where drift and wandering come from readings use <see cref="Degradation"/>, which carries their doubt.
/// </remarks>
public static class FirstPassage
{
    /// <summary>The chance that the limit has been reached by a time, F(t).</summary>
    /// <param name="distance">Distance to the limit now, a; above 0.</param>
    /// <param name="drift">Drift towards the limit, d, per time; below 0 when it leads away.</param>
    /// <param name="wander">Standard deviation gained by wandering in one unit of time, w; above 0.</param>
    /// <param name="time">t, 0 or more.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static double ChanceBefore(double distance, double drift, double wander, double time)
    {
        Check(distance, drift, wander);
        if (Guard.NotNegative(time, "") == 0)
        {
            return 0;
        }

        var spread = wander * Math.Sqrt(time);
        var over = Normal.CDF(0, 1, (drift * time - distance) / spread);
        return Math.Min(
            1,
            over + Returned(2 * drift * distance / (wander * wander), (distance + drift * time) / spread)
        );
    }

    /// <summary>The chance that the limit is ever reached.</summary>
    /// <param name="distance">Distance to the limit now, a; above 0.</param>
    /// <param name="drift">Drift towards the limit, d, per time.</param>
    /// <param name="wander">Standard deviation gained by wandering in one unit of time, w; above 0.</param>
    /// <returns>1 with a drift of 0 or more, else exp(2 d a / w²).</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static double ChanceEver(double distance, double drift, double wander)
    {
        Check(distance, drift, wander);
        return drift >= 0 ? 1 : Math.Exp(2 * drift * distance / (wander * wander));
    }

    /// <summary>exp(c) Φ(−x); c is x²/2 at most. Where the exponential may overflow Φ is taken by its tail, φ(x)/x (1 − 1/x² + 3/x⁴ − 15/x⁶).</summary>
    private static double Returned(double c, double x) =>
        x < 12
            ? Math.Exp(c) * Normal.CDF(0, 1, -x)
            : Math.Exp(c - 0.5 * x * x)
                / (x * Math.Sqrt(2 * Math.PI))
                * (1 - 1 / (x * x) * (1 - 3 / (x * x) * (1 - 5 / (x * x))));

    private static void Check(double distance, double drift, double wander)
    {
        Guard.Positive(distance, "");
        Guard.Finite(drift, "");
        Guard.Positive(wander, "");
    }
}
