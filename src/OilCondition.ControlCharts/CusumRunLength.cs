using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;
using OilCondition.Text;

namespace OilCondition.ControlCharts;

/// <summary>How many readings a two-sided cumulative sum chart takes on average to signal, from sums of 0.</summary>
/// <remarks>
/// For independent normal readings, all lengths in standard deviations of a reading. The two sides combine as 1/ARL = 1/ARL⁺ + 1/ARL⁻
/// (Kemp 1961). One side alone waits about twice as long for a false signal as both.
/// </remarks>
public static class CusumRunLength
{
    /// <summary>Beyond it the equations can no longer be solved to five digits.</summary>
    private const double LongestExact = 1e9;

    /// <summary>Average run length from Page's integral equation, solved on Gauss-Legendre points.</summary>
    /// <remarks>
    /// L(u) = 1 + L(0) Φ(k − δ − u) + ∫₀^h L(x) φ(x + k − δ − u) dx (Page 1954; Goel and Wu 1971). The Markov chain of Brook and Evans 1972 tends to the
    /// same value as its steps get finer.
    /// </remarks>
    /// <param name="shift">δ, how far the level has moved, in standard deviations, −10 to 10; 0 when all is well.</param>
    /// <param name="allowance">k, in standard deviations, 0 to 5.</param>
    /// <param name="decisionInterval">h, in standard deviations, above 0 and up to 50.</param>
    /// <returns>The average number of readings until a signal.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range, or the run length above 1e9, where only Siegmund's approximation holds.</exception>
    public static double TwoSided(double shift, double allowance = 0.5, double decisionInterval = 5)
    {
        if (Siegmund(shift, allowance, decisionInterval) > LongestExact)
        {
            throw new ArgumentOutOfRangeException(
                nameof(decisionInterval),
                $"decisionInterval is {decisionInterval:G7} with allowance {allowance:G7}; allowed: combinations with a run length up to 1e9 readings."
            );
        }

        // A side that drifts away from its limit may have no run length that numbers can hold; it then adds nothing.
        var drift = Math.Abs(shift);
        var away = Siegmund(-drift - allowance, decisionInterval);
        var toward = OneSided(drift - allowance, decisionInterval);
        return away > LongestExact ? toward : 1 / (1 / toward + 1 / OneSided(-drift - allowance, decisionInterval));
    }

    /// <summary>Siegmund's approximation of the same: (exp(−2 Δ b) + 2 Δ b − 1)/(2 Δ²) a side, Δ = ±δ − k, b = h + 1.166.</summary>
    /// <remarks>Siegmund 1985. Within 1 to 2 % for h of 4 or more.</remarks>
    /// <param name="shift">δ, how far the level has moved, in standard deviations, −10 to 10; 0 when all is well.</param>
    /// <param name="allowance">k, in standard deviations, 0 to 5.</param>
    /// <param name="decisionInterval">h, in standard deviations, above 0 and up to 50.</param>
    /// <returns>The average number of readings until a signal.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static double Siegmund(double shift, double allowance = 0.5, double decisionInterval = 5)
    {
        Guard.InRange(shift, -10, 10, "");
        Guard.InRange(allowance, 0, 5, "");
        Guard.InRange(Readings.Scale(decisionInterval, nameof(decisionInterval)), 0, 50, "", nameof(decisionInterval));
        return 1
            / (1 / Siegmund(shift - allowance, decisionInterval) + 1 / Siegmund(-shift - allowance, decisionInterval));
    }

    private static double Siegmund(double drift, double decisionInterval)
    {
        var b = decisionInterval + 1.166;
        var x = -2 * drift * b;

        // (e^x − 1 − x)/(2 drift²) loses its digits near drift 0: the series b² (1 + x/3 + x²/12 + x³/60) there; e^700 is beyond use.
        return Math.Abs(x) < 1e-3
            ? b * b * (1 + x / 3 + x * x / 12 + x * x * x / 60)
            : (Math.Exp(Math.Min(x, 700)) - 1 - x) / (2 * drift * drift);
    }

    private static double OneSided(double drift, double decisionInterval)
    {
        // A dozen points a standard deviation resolve the normal density to rounding.
        var order = 20 + (int)Math.Ceiling(10 * decisionInterval);
        var rule = new GaussLegendreRule(0, decisionInterval, Math.Min(order, 512));
        var n = rule.Order;

        // Unknowns: L at 0 and at the points.
        var from = new double[n + 1];
        for (var i = 0; i < n; i++)
        {
            from[i + 1] = rule.GetAbscissa(i);
        }

        var system = Matrix<double>.Build.Dense(
            n + 1,
            n + 1,
            (row, column) =>
            {
                var density =
                    column == 0
                        ? Normal.CDF(0, 1, -drift - from[row])
                        : rule.GetWeight(column - 1) * Density(from[column] - drift - from[row]);
                return (row == column ? 1 : 0) - density;
            }
        );
        return system.Solve(Vector<double>.Build.Dense(n + 1, 1))[0];
    }

    private static double Density(double z) => Math.Exp(-0.5 * z * z) / Math.Sqrt(2 * Math.PI);
}
