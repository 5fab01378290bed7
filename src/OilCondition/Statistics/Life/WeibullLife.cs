using MathNet.Numerics.RootFinding;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Fits a Weibull distribution to ages at failure and ages of units that have not failed, by maximum likelihood.</summary>
/// <remarks>
/// R(t) = exp(−(t/η)^β). Log-likelihood = Σ over failures of (ln β − β ln η + (β − 1) ln t) − Σ over all of (t/η)^β. The scale follows from the shape,
/// η^β = Σ t^β / r with r failures; the shape solves Σ t^β ln t / Σ t^β − 1/β = mean of ln t over the failures, whose left side rises with β.
/// Source: NIST/SEMATECH e-Handbook of Statistical Methods 8.4.1.2; Lawless 2003, chapter 5.
/// </remarks>
/// <example>
/// <code>
/// var life = WeibullLife.Fit([30, 49, 82, 90, 96], [10, 45, 100]);
/// var b10 = life.AgeAt(0.1);                    // 41.7
/// var interval = life.AgeInterval(0.1, 0.95);       // 22.2 to 78.6
/// </code>
/// </example>
internal static class WeibullLife
{
    private const double LargestShape = 1e4;

    /// <summary>Fits the distribution.</summary>
    /// <param name="failures">Ages at failure, above 0.</param>
    /// <param name="suspensions">Ages of units that have not failed, or left service for another reason; above 0.</param>
    /// <returns>The fit, or the reason why there is none.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An age is not a finite number above 0.</exception>
    public static WeibullFit Fit(ReadOnlySpan<double> failures, ReadOnlySpan<double> suspensions)
    {
        // Logarithms of age over the greatest age: no power can overflow.
        var logs = new double[failures.Length + suspensions.Length];
        double greatest = 0;
        double failureMean = 0;
        for (var i = 0; i < logs.Length; i++)
        {
            logs[i] =
                i < failures.Length
                    ? Math.Log(Guard.Positive(failures[i], "", nameof(failures)))
                    : Math.Log(Guard.Positive(suspensions[i - failures.Length], "", nameof(suspensions)));
            greatest = i == 0 ? logs[i] : Math.Max(greatest, logs[i]);
            failureMean += i < failures.Length ? logs[i] / failures.Length : 0;
        }

        if (failures.Length < 2)
        {
            return new WeibullFit(WeibullStatus.TooFewFailures, failures.Length, suspensions.Length);
        }

        // The difference at the largest shape: with all failures at the greatest age it stays below 0.
        double Off(double logShape)
        {
            var shape = Math.Exp(logShape);
            double weights = 0;
            double weighted = 0;
            foreach (var log in logs)
            {
                var power = Math.Exp(shape * (log - greatest));
                weights += power;
                weighted += power * (log - greatest);
            }

            return weighted / weights - 1 / shape - (failureMean - greatest);
        }

        return
            Off(Math.Log(LargestShape)) > 0
            && Brent.TryFindRoot(Off, Math.Log(1e-3), Math.Log(LargestShape), 1e-14, 200, out var found)
            ? new WeibullFit(failures.Length, suspensions.Length, logs, Math.Exp(found))
            : new WeibullFit(WeibullStatus.NoSpread, failures.Length, suspensions.Length);
    }
}
