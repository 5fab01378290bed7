using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>A smooth curve through a cloud of readings, for the eye: locally weighted lines, wild readings weighed down.</summary>
/// <remarks>
/// For every reading a line through its nearest neighbours (a share of all), weighted by (1 − (distance/reach)³)³; then, pass by pass, weights
/// (1 − (residual/6 MAD)²)² (Cleveland 1979; the arithmetic of Cleveland's public routine, without its shortcut between near times). It has
/// no interval and does not foretell anything: for charts only.
/// </remarks>
public static class Lowess
{
    /// <summary>Smooths readings.</summary>
    /// <param name="times">When readings were taken, ascending; n values.</param>
    /// <param name="values">What was read; n values.</param>
    /// <param name="smoothed">Receives the curve at every reading; n values.</param>
    /// <param name="share">Share of the readings that each local line uses, above 0 and up to 1.</param>
    /// <param name="passes">Passes that weigh wild readings down, 0 to 20.</param>
    /// <exception cref="ArgumentException">The spans differ in length, or the times do not ascend.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of range.</exception>
    public static void Smooth(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        Span<double> smoothed,
        double share = 2.0 / 3,
        int passes = 3
    )
    {
        Numbers.CheckPairs(times, values, nameof(times), nameof(values));
        Guard.SameLength(smoothed.Length, values.Length, nameof(smoothed), nameof(values));
        Guard.InRange(share > 0 ? share : -1, 0, 1, "", nameof(share));
        Numbers.InRange(passes, 0, 20, nameof(passes));
        Numbers.Ascending(times, nameof(times));
        if (times.Length < 2)
        {
            values.CopyTo(smoothed);
            return;
        }

        var robustness = new double[times.Length];
        robustness.AsSpan().Fill(1);
        Pass(times, values, robustness, share, smoothed);
        for (var pass = 0; pass < passes && TryReweigh(values, smoothed, robustness); pass++)
        {
            Pass(times, values, robustness, share, smoothed);
        }
    }

    private static void Pass(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double[] robustness,
        double share,
        Span<double> smoothed
    )
    {
        var n = times.Length;
        var neighbours = Math.Max(2, Math.Min(n, (int)(share * n + 1e-7)));
        var weights = new double[n];
        var left = 0;
        for (var i = 0; i < n; i++)
        {
            while (left + neighbours < n && times[i] - times[left] > times[left + neighbours] - times[i])
            {
                left++;
            }

            var reach = Math.Max(times[i] - times[left], times[left + neighbours - 1] - times[i]);
            smoothed[i] = LocalValue(times, values, robustness, weights, i, left, reach);
        }
    }

    private static double LocalValue(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double[] robustness,
        double[] weights,
        int at,
        int left,
        double reach
    )
    {
        // Readings at the same time as the last neighbour count as well.
        double total = 0;
        var end = left;
        for (; end < times.Length; end++)
        {
            var distance = Math.Abs(times[end] - times[at]);
            if (distance > 0.999 * reach && times[end] > times[at])
            {
                break;
            }

            weights[end] =
                distance > 0.999 * reach ? 0
                : distance > 0.001 * reach ? robustness[end] * Cube(1 - Cube(distance / reach))
                : robustness[end];
            total += weights[end];
        }

        if (!(total > 0))
        {
            return values[at];
        }

        double centre = 0;
        double level = 0;
        for (var j = left; j < end; j++)
        {
            weights[j] /= total;
            centre += weights[j] * times[j];
            level += weights[j] * values[j];
        }

        double spread = 0;
        double rise = 0;
        for (var j = left; j < end; j++)
        {
            spread += weights[j] * (times[j] - centre) * (times[j] - centre);
            rise += weights[j] * (times[j] - centre) * values[j];
        }

        // Neighbours at nearly one time carry no slope.
        var range = times[times.Length - 1] - times[0];
        return Math.Sqrt(spread) > 0.001 * range ? level + rise / spread * (times[at] - centre) : level;
    }

    private static bool TryReweigh(ReadOnlySpan<double> values, ReadOnlySpan<double> smoothed, double[] robustness)
    {
        var distances = new double[values.Length];
        for (var i = 0; i < distances.Length; i++)
        {
            distances[i] = Math.Abs(values[i] - smoothed[i]);
        }

        var reach = 6 * Numbers.Median(distances);
        if (!(reach > 1e-7 * Numbers.Mean(distances)))
        {
            return false;
        }

        for (var i = 0; i < distances.Length; i++)
        {
            var share = distances[i] / reach;
            robustness[i] =
                share <= 0.001 ? 1
                : share <= 0.999 ? (1 - share * share) * (1 - share * share)
                : 0;
        }

        return true;
    }

    private static double Cube(double value) => value * value * value;
}
