using MathNet.Numerics.Distributions;
using OilCondition.Guards;

namespace OilCondition.Statistics;

/// <summary>Least-squares fit of y(t) = c_inf + (c_0 − c_inf) exp(−k (t − t_1)) by variable projection: no start value is needed.</summary>
/// <remarks>
/// For a fixed k the curve is linear in the other two parameters, so that only k is searched: first over all sensible octaves,
/// then by golden section in ln k around every local minimum (Golub and Pereyra 1973). Scatter is taken as independent and of constant size.
/// </remarks>
public static class ExponentialDecay
{
    private const int FewestReadings = 4;
    private const double LowestScaledRate = 1.0 / 64;

    /// <summary>Fits the curve.</summary>
    /// <param name="times">Times in ascending order, any unit; n values.</param>
    /// <param name="values">Values; n values.</param>
    /// <param name="lowestFloor">The lowest floor allowed, 0 for contents and counts, which cannot be negative.</param>
    /// <returns>The best curve and what it is worth.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or the times do not ascend.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite.</exception>
    public static ExponentialDecayFit Fit(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double lowestFloor = 0
    )
    {
        Check(times, values, lowestFloor);
        var count = times.Length;
        var span = count == 0 ? 0 : times[count - 1] - times[0];
        if (count < FewestReadings || !(span > 0))
        {
            var first = count == 0 ? 0 : times[0];
            return new ExponentialDecayFit(ExponentialDecayStatus.TooFewReadings, count, first, span, 0, 0, 0, 0);
        }

        var highest = 12 * span / FirstGap(times);
        var best = Search(times, values, span, lowestFloor, Math.Log(LowestScaledRate), Math.Log(highest));
        var status =
            best.Start < best.Floor ? ExponentialDecayStatus.Rising
            : best.ScaledRate <= LowestScaledRate * 1.001 ? ExponentialDecayStatus.StraightLine
            : best.ScaledRate >= highest * 0.999 ? ExponentialDecayStatus.FasterThanSampling
            : best.AtBound ? ExponentialDecayStatus.AtFloorBound
            : ExponentialDecayStatus.Determined;
        return new ExponentialDecayFit(
            status,
            count,
            times[0],
            span,
            best.Start,
            best.Floor,
            best.ScaledRate / span,
            best.ResidualSumOfSquares
        );
    }

    /// <summary>When the curve reaches a value, with the profile-likelihood interval.</summary>
    /// <remarks>
    /// All curves with RSS ≤ RSS_min (1 + F(confidence; 1, n − 3) / (n − 3)) are compatible with the readings. For each rate the set
    /// of crossing times is closed-form (Fieller's quadratic in z = exp(−k t)); the interval is the envelope over all rates.
    /// It has no upper end when a compatible curve levels off at or above the value.
    /// </remarks>
    /// <param name="fit">The fit of these readings.</param>
    /// <param name="times">The times that were fitted.</param>
    /// <param name="values">The values that were fitted.</param>
    /// <param name="target">The value to reach, below the start.</param>
    /// <param name="confidence">Two-sided confidence level, above 0 and below 1.</param>
    /// <param name="lowestFloor">The lowest floor allowed, as in the fit.</param>
    /// <returns>Estimate and interval.</returns>
    /// <exception cref="ArgumentException">There are too few readings, or the target is not finite.</exception>
    public static TimeToValueInterval TimeToValue(
        in ExponentialDecayFit fit,
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double target,
        double confidence,
        double lowestFloor = 0
    )
    {
        Check(times, values, lowestFloor);
        Guard.Finite(target, "", nameof(target));
        Guard.OpenUnitInterval(confidence, nameof(confidence));
        if (fit.Status == ExponentialDecayStatus.TooFewReadings)
        {
            throw new ArgumentException("Too few readings were fitted; there is no time to a value.", nameof(fit));
        }

        var reaches = target > fit.Floor && target < fit.Start && fit.Rate > 0;
        var estimate = reaches
            ? fit.FirstTime + Math.Log((fit.Start - fit.Floor) / (target - fit.Floor)) / fit.Rate
            : 0;
        var f = FisherSnedecor.InvCDF(1, fit.Count - 3, confidence);
        var limit = fit.ResidualSumOfSquares * (1 + f / (fit.Count - 3));
        var envelope = new CrossingEnvelope(fit, limit, target, lowestFloor);
        var highest = Math.Log(12 * fit.Span / FirstGap(times));
        var lowest = Math.Log(LowestScaledRate) - 6 * Math.Log(2);
        const int Steps = 600;
        for (var i = 0; i <= Steps; i++)
        {
            envelope.Add(times, values, Math.Exp(lowest + (highest - lowest) * i / Steps));
        }

        if (fit.Rate > 0)
        {
            envelope.Add(times, values, fit.Rate * fit.Span);
        }

        return envelope.ToInterval(reaches, estimate);
    }

    /// <summary>exp(x) − 1 without loss of digits near 0 (Kahan's form).</summary>
    internal static double ExponentialMinusOne(double x)
    {
        var u = Math.Exp(x);
        if (u == 1)
        {
            return x;
        }

        var difference = u - 1;
        return difference == -1 ? -1 : difference * x / Math.Log(u);
    }

    /// <summary>The best curve for one rate, made dimensionless with the span.</summary>
    internal static DecayAtRate Project(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double span,
        double scaledRate,
        double lowestFloor
    )
    {
        var count = times.Length;
        double meanD = 0;
        double meanY = 0;
        for (var i = 0; i < count; i++)
        {
            meanD += Drop(times, i, span, scaledRate);
            meanY += values[i];
        }

        meanD /= count;
        meanY /= count;
        double v = 0;
        double c = 0;
        for (var i = 0; i < count; i++)
        {
            var d = Drop(times, i, span, scaledRate) - meanD;
            v += d * d;
            c += d * (values[i] - meanY);
        }

        var change = v > 0 ? c / v : 0;
        var start = meanY - change * meanD;
        var floor = start + change;
        var atBound = floor < lowestFloor;
        if (atBound)
        {
            double ee = 0;
            double ye = 0;
            for (var i = 0; i < count; i++)
            {
                var e = 1 - Drop(times, i, span, scaledRate);
                ee += e * e;
                ye += e * (values[i] - lowestFloor);
            }

            floor = lowestFloor;
            start = lowestFloor + ye / ee;
        }

        double rss = 0;
        for (var i = 0; i < count; i++)
        {
            var r = values[i] - start - (floor - start) * Drop(times, i, span, scaledRate);
            rss += r * r;
        }

        return new DecayAtRate(scaledRate, start, floor, rss, atBound);
    }

    internal static double Drop(ReadOnlySpan<double> times, int i, double span, double scaledRate) =>
        -ExponentialMinusOne(-scaledRate * ((times[i] - times[0]) / span));

    private static DecayAtRate Search(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double span,
        double lowestFloor,
        double lowest,
        double highest
    )
    {
        var levels = Math.Max(3, (int)Math.Ceiling((highest - lowest) / Math.Log(2)) + 1);
        var step = (highest - lowest) / (levels - 1);
        var scan = new DecayAtRate[levels];
        for (var i = 0; i < levels; i++)
        {
            scan[i] = Project(times, values, span, Math.Exp(lowest + i * step), lowestFloor);
        }

        var best = scan[0];
        for (var i = 0; i < levels; i++)
        {
            var lower = i == 0 || scan[i].ResidualSumOfSquares <= scan[i - 1].ResidualSumOfSquares;
            var upper = i == levels - 1 || scan[i].ResidualSumOfSquares <= scan[i + 1].ResidualSumOfSquares;
            if (lower && upper)
            {
                var from = lowest + Math.Max(0, i - 1) * step;
                var to = lowest + Math.Min(levels - 1, i + 1) * step;
                var refined = Refine(times, values, span, lowestFloor, from, to);
                best = Better(best, Better(scan[i], refined));
            }
        }

        return best;
    }

    private static DecayAtRate Refine(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        double span,
        double lowestFloor,
        double from,
        double to
    )
    {
        var golden = (Math.Sqrt(5) - 1) / 2;
        var u1 = to - golden * (to - from);
        var u2 = from + golden * (to - from);
        var p1 = Project(times, values, span, Math.Exp(u1), lowestFloor);
        var p2 = Project(times, values, span, Math.Exp(u2), lowestFloor);
        while (to - from > 1e-9)
        {
            if (p1.ResidualSumOfSquares <= p2.ResidualSumOfSquares)
            {
                to = u2;
                u2 = u1;
                p2 = p1;
                u1 = to - golden * (to - from);
                p1 = Project(times, values, span, Math.Exp(u1), lowestFloor);
            }
            else
            {
                from = u1;
                u1 = u2;
                p1 = p2;
                u2 = from + golden * (to - from);
                p2 = Project(times, values, span, Math.Exp(u2), lowestFloor);
            }
        }

        return Better(p1, p2);
    }

    private static DecayAtRate Better(DecayAtRate one, DecayAtRate other) =>
        other.ResidualSumOfSquares < one.ResidualSumOfSquares ? other : one;

    private static double FirstGap(ReadOnlySpan<double> times)
    {
        foreach (var time in times)
        {
            if (time > times[0])
            {
                return time - times[0];
            }
        }

        return 1;
    }

    private static void Check(ReadOnlySpan<double> times, ReadOnlySpan<double> values, double lowestFloor)
    {
        Guard.SameLength(values.Length, times.Length, nameof(values), nameof(times));
        Guard.Finite(lowestFloor, "", nameof(lowestFloor));
        for (var i = 0; i < times.Length; i++)
        {
            Guard.Finite(times[i], "", nameof(times));
            Guard.Finite(values[i], "", nameof(values));
            if (i > 0 && times[i] < times[i - 1])
            {
                throw new ArgumentException(
                    $"times must ascend; number {i} is {times[i]:G7} after {times[i - 1]:G7}.",
                    nameof(times)
                );
            }
        }
    }
}
