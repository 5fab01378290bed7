using System.Buffers;
using MathNet.Numerics.Distributions;
using OilCondition.Text;

namespace OilCondition.Statistics;

/// <summary>The Theil-Sen line: the median of the slopes between all pairs of readings, which single wild values do not move.</summary>
/// <remarks>
/// Theil 1950, Sen 1968. Pairs at one time have no slope and are left out. The interval holds the slopes against which the readings, taken along
/// that slope, pass the Mann-Kendall test: ranks interpolated (Gilbert 1987). Readings must be independent; a lag-1 correlation ρ
/// widens C by sqrt((1 + ρ)/(1 − ρ)). Half of the readings less about a fifth may be wild (breakdown point 29 %).
/// <para>
/// Censored readings (Akritas, Murphy and LaValley 1995): a pair with one reading '&lt; L' only says that the slope lies above, or below, the
/// slope to L. Such pairs count half, on one side. The slope is where the Kendall score of the readings taken along it changes sign.
/// </para>
/// </remarks>
public readonly partial record struct TheilSen
{
    /// <summary>Largest number of readings taken: the slopes go with its square.</summary>
    public const int LargestCount = 5000;

    /// <summary>Slopes that still fit the stack: those of 50 readings.</summary>
    private const int SlopesOnStack = 1225;

    /// <summary>Finds the line.</summary>
    /// <param name="times">When readings were taken; n values in any order.</param>
    /// <param name="values">What was read; n values. For a censored reading the figure after the sign.</param>
    /// <param name="censoring">Whether a reading is only known to lie below or above its value; empty if none is.</param>
    /// <param name="confidence">Two-sided confidence level of the interval, above 0 and below 1.</param>
    /// <param name="correlation">Lag-1 correlation of the residuals to be allowed for in the interval, 0 to 0.99.</param>
    /// <returns>The line, or the reason why there is none.</returns>
    /// <exception cref="ArgumentException">The spans differ in length, or there are more than 5000 readings.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is not finite or beyond 1e100, or a level out of range.</exception>
    public static TheilSen Fit(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<Censoring> censoring = default,
        double confidence = 0.95,
        double correlation = 0
    ) => Fit(times, values, censoring, confidence, TheilSenRankRule.Interpolated, correlation);

    /// <summary>The same with the rule stated by which the ends are read from the sorted slopes.</summary>
    internal static TheilSen Fit(
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        ReadOnlySpan<Censoring> censoring,
        double confidence,
        TheilSenRankRule rankRule,
        double correlation = 0
    )
    {
        MannKendall.Check(times, values, censoring, correlation, LargestCount);
        Guard.OpenUnitInterval(confidence);
        if (times.Length < 2)
        {
            return Without(LineStatus.TooFewReadings, times.Length, confidence, rankRule);
        }

        var sums = KendallSums.Of(times, values, censoring);
        if (sums.TimePairs < 1)
        {
            return Without(LineStatus.SamePosition, times.Length, confidence, rankRule);
        }

        if (rankRule == TheilSenRankRule.Exact && !MannKendall.IsExact(sums, correlation, MannKendallMethod.Exact))
        {
            rankRule = TheilSenRankRule.Interpolated;
        }

        if (AnyCensored(censoring))
        {
            return CensoredTheilSen.Fit(times, values, censoring, sums, confidence, correlation);
        }

        var count = (int)sums.TimePairs;
        var rented = count <= SlopesOnStack ? null : ArrayPool<double>.Shared.Rent(count);
        var slopes = rented is null ? stackalloc double[count] : rented.AsSpan(0, count);
        Slopes(times, values, slopes);
        var fit = OfSlopes(slopes, times, values, sums, confidence, rankRule, correlation);
        if (rented is not null)
        {
            ArrayPool<double>.Shared.Return(rented);
        }

        return fit;
    }

    /// <summary>The line of readings in order of time, without the interval of its slope.</summary>
    internal static TheilSen LineAlone(ReadOnlySpan<double> times, ReadOnlySpan<double> values)
    {
        var count = PairsApart(times);
        if (count < 1)
        {
            var why = times.Length < 2 ? LineStatus.TooFewReadings : LineStatus.SamePosition;
            return Without(why, times.Length, 0, TheilSenRankRule.Interpolated);
        }

        var rented = count <= SlopesOnStack ? null : ArrayPool<double>.Shared.Rent(count);
        var slopes = rented is null ? stackalloc double[count] : rented.AsSpan(0, count);
        Slopes(times, values, slopes);
#if NET
        // Spread of Kendall's score without ties.
        var n = (double)times.Length;
        var deviation = Math.Sqrt(n * (n - 1) * (2 * n + 5) / 18);
        var (lineSlope, standardError) = Line(times, values);
        var slope = new SlopeSearch(slopes, deviation / (2 * standardError)).AtRank((count + 1) / 2.0, lineSlope);
#else
        var slope = Selection.Median(slopes);
#endif
        if (rented is not null)
        {
            ArrayPool<double>.Shared.Return(rented);
        }

        return new TheilSen(
            LineStatus.Determined,
            times.Length,
            count,
            slope,
            Interval.Without(IntervalOutcome.NotDetermined, 0, IntervalSide.Both),
            Numbers.Median(times),
            Numbers.Median(values),
            TheilSenRankRule.Interpolated
        );
    }

    /// <summary>How many pairs of readings in order of time are not taken at one time.</summary>
    private static int PairsApart(ReadOnlySpan<double> times)
    {
        var (pairs, together) = (0, 0);
        for (var i = 1; i < times.Length; i++)
        {
            together = times[i] > times[i - 1] ? 0 : together + 1;
            pairs += i - together;
        }

        return pairs;
    }

    internal static bool AnyCensored(ReadOnlySpan<Censoring> censoring)
    {
        foreach (var reading in censoring)
        {
            if (reading != Censoring.None)
            {
                return true;
            }
        }

        return false;
    }

    internal static TheilSen Without(LineStatus status, int count, double confidence, TheilSenRankRule rankRule)
    {
        var outcome =
            status == LineStatus.TooFewReadings ? IntervalOutcome.TooFewReadings : IntervalOutcome.NotDetermined;
        var interval = Interval.Without(outcome, confidence, IntervalSide.Both);
        return new TheilSen(status, count, 0, 0, interval, 0, null, rankRule);
    }

    /// <summary>C = z sqrt(Var S), with the correlation allowed for.</summary>
    internal static double ScoreHalfWidth(KendallSums sums, double confidence, double correlation) =>
        Normal.InvCDF(0, 1, 0.5 + confidence / 2) * Math.Sqrt(sums.Variance * (1 + correlation) / (1 - correlation));

    private static TheilSen OfSlopes(
        Span<double> slopes,
        ReadOnlySpan<double> times,
        ReadOnlySpan<double> values,
        KendallSums sums,
        double confidence,
        TheilSenRankRule rankRule,
        double correlation
    )
    {
        var (lower, upper) = Ranks(slopes.Length, sums, confidence, rankRule, correlation);

        var median = (slopes.Length + 1) / 2.0;
#if NET
        var (lineSlope, standardError) = Line(times, values);
        var deviation = Math.Sqrt(sums.Variance);
        var search = new SlopeSearch(slopes, deviation / (2 * standardError));
        var slope = search.AtRank(median, lineSlope);
        var shift = standardError / deviation * 2;
        double? low = lower >= 1 ? search.AtRank(lower, slope - shift * (median - lower)) : null;
        double? high = upper <= slopes.Length ? search.AtRank(upper, slope + shift * (upper - median)) : null;
#else
        // In ascending order, so that each search starts where the one before it ended.
        double? low = lower >= 1 ? Selection.AtRank(slopes, lower) : null;
        var slope = Selection.AtRank(slopes, median, low.HasValue ? Index(lower) : 0);
        double? high = upper <= slopes.Length ? Selection.AtRank(slopes, upper, Index(median)) : null;
#endif
        return new TheilSen(
            LineStatus.Determined,
            times.Length,
            slopes.Length,
            slope,
            Interval.Between(low, high, confidence, IntervalSide.Both, coverageInDoubt: false),
            Numbers.Median(times),
            Numbers.Median(values),
            rankRule
        );
    }

#if NET
    /// <summary>Slope of the least-squares line and its standard error: guesses only, of which nothing remains in the result.</summary>
    private static (double Slope, double StandardError) Line(ReadOnlySpan<double> times, ReadOnlySpan<double> values)
    {
        double t = 0;
        double y = 0;
        double tt = 0;
        double ty = 0;
        double yy = 0;
        var n = times.Length;
        for (var i = 0; i < n; i++)
        {
            var dt = times[i] - times[0];
            var dy = values[i] - values[0];
            t += dt;
            y += dy;
            tt += dt * dt;
            ty += dt * dy;
            yy += dy * dy;
        }

        var spread = tt - t * t / n;
        var slope = (ty - t * y / n) / spread;
        return (slope, Math.Sqrt(Math.Max(0, (yy - y * y / n) / spread - slope * slope) / Math.Max(1, n - 2)));
    }
#else
    private static int Index(double rank) => Math.Max((int)Math.Floor(rank) - 1, 0);
#endif

    private static (double Lower, double Upper) Ranks(
        int count,
        KendallSums sums,
        double confidence,
        TheilSenRankRule rankRule,
        double correlation
    )
    {
        if (rankRule == TheilSenRankRule.Exact)
        {
            // The slope of rank r is above the true one when S, taken along the true slope, is N − 2r + 2 or more.
            var rank = 0;
            while (
                2 * (rank + 1) <= count + 1
                && KendallDistribution.AtLeast(sums.Count, count - 2 * rank) <= (1 - confidence) / 2
            )
            {
                rank++;
            }

            return (rank, count + 1 - rank);
        }

        var c = ScoreHalfWidth(sums, confidence, correlation);
        var lower = (count - c) / 2;
        var upper = (count + c) / 2;
        return rankRule == TheilSenRankRule.Rounded
            ? (Math.Round(lower, MidpointRounding.ToEven), Math.Round(upper, MidpointRounding.ToEven) + 1)
            : (lower, upper + 1);
    }

    private static void Slopes(ReadOnlySpan<double> times, ReadOnlySpan<double> values, Span<double> slopes)
    {
        var next = 0;
        for (var i = 0; i < times.Length; i++)
        {
            var j = i + 1;
#if NET
            // Four pairs at once where all pairs count; else one of them may have no slope.
            if (slopes.Length == times.Length * (times.Length - 1) / 2)
            {
                var (time, value) = (LaneMath.Of(times[i]), LaneMath.Of(values[i]));
                for (; j <= times.Length - LaneMath.Width; j += LaneMath.Width, next += LaneMath.Width)
                {
                    var rises = LaneMath.Load(values, j) - value;
                    LaneMath.Store(rises / (LaneMath.Load(times, j) - time), slopes, next);
                }
            }
#endif
            for (; j < times.Length; j++)
            {
                var span = times[j] - times[i];
                if (span != 0)
                {
                    slopes[next++] = (values[j] - values[i]) / span;
                }
            }
        }
    }
}
