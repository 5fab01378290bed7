using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>Fits first-order loss with make-up to readings: dA/dt = −k A + m (A0 − A), with A0 and m given.</summary>
/// <remarks>
/// For a fixed k the curve A(t) = A∞ + (S − A∞) exp(−(k + m) t) is linear in its start S, which is integrated out together with the scatter; k is
/// carried as a grid with the weight (Σe²)^(−1/2) SSE^(−(n−1)/2), e = exp(−(k + m) t), and a flat prior on k at or above 0. Each grid point then has a Student law for A(t).
/// Box and Tiao 1973, chapter 2, for the linear part. Independent scatter of constant size is assumed.
/// </remarks>
internal static class FirstOrderLoss
{
    /// <summary>Fewest readings: start, rate and two to judge the scatter by.</summary>
    public const int FewestReadings = 4;

    private const int GridPoints = 48;
    private const double FastestRates = 20;
    private const double NegligibleLog = 12;

    /// <summary>Fits the loss.</summary>
    /// <param name="times">When readings were taken, ascending.</param>
    /// <param name="values">What was read.</param>
    /// <param name="newValue">Value of new oil, A0; 0 or more. Counts only with make-up.</param>
    /// <param name="makeUpRate">Make-up per time as a fraction of the charge, m; 0 or more.</param>
    /// <returns>The fit, or the reason why there is none.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or the times do not ascend.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static FirstOrderLossFit Fit(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double newValue = 0,
        double makeUpRate = 0
    )
    {
        Guard.SameLength(values.Length, times.Length, nameof(values), nameof(times));
        Guard.NotNegative(newValue, "");
        Guard.NotNegative(makeUpRate, "");
        for (var i = 0; i < times.Length; i++)
        {
            Guard.InRange(values[i], -Degradation.Largest, Degradation.Largest, "", nameof(values));
            if (i > 0 && !(Guard.Finite(times[i], "", nameof(times)) >= times[i - 1]))
            {
                throw new ArgumentException("times must ascend.", nameof(times));
            }
        }

        var span = times.Length > 0 ? times[times.Length - 1] - Guard.Finite(times[0], "", nameof(times)) : 0;
        return times.Length < FewestReadings || !(span > 0)
            ? new FirstOrderLossFit(times.Length, 0, newValue, makeUpRate, [])
            : new FirstOrderLossFit(
                times.Length,
                span,
                newValue,
                makeUpRate,
                Weighted(times, values, newValue, makeUpRate, span)
            );
    }

    /// <summary>Narrows the grid until the part of it that counts fills it, and gives each point its weight.</summary>
    private static LossAtRate[] Weighted(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double newValue,
        double makeUpRate,
        double span
    )
    {
        double lowest = 0;
        var highest = FastestRates / span;
        var points = new LossAtRate[GridPoints];
        for (var round = 0; round < 8; round++)
        {
            var step = (highest - lowest) / (GridPoints - 1);
            var best = double.NegativeInfinity;
            for (var i = 0; i < GridPoints; i++)
            {
                points[i] = LossAtRate.Of(times, values, newValue, makeUpRate, lowest + i * step);
                best = Math.Max(best, points[i].LogWeight);
            }

            var first = Array.FindIndex(points, point => point.LogWeight > best - NegligibleLog);
            var last = Array.FindLastIndex(points, point => point.LogWeight > best - NegligibleLog);
            if (last - first > GridPoints / 3)
            {
                break;
            }

            highest = points[Math.Min(last + 1, GridPoints - 1)].LossRate;
            lowest = points[Math.Max(first - 1, 0)].LossRate;
        }

        var top = points.Max(point => point.LogWeight);
        var sum = points.Sum(point => Math.Exp(point.LogWeight - top));
        return [.. points.Select(point => point.Weighted(Math.Exp(point.LogWeight - top) / sum))];
    }
}
